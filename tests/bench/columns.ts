import type { Rulebook } from '../../src/link/rulebook.js';
import type { Facts } from './workload.js';

/** The situations as typed columns: places of members, bit masks of sets, numbers. */
export function columnsOf(rulebook: Rulebook, situations: readonly Facts[]): Record<string, ArrayLike<number>> {
  const columns: Record<string, ArrayLike<number>> = {};
  for (const { id, type, members } of rulebook.facts.values()) {
    const values = situations.map((each) => each[id]);
    if (type === 'quantity' || type === 'count')
      columns[id] = Float64Array.from(values, (value) => (value === undefined ? Number.NaN : Number(value)));
    else if (type === 'set')
      columns[id] = Int32Array.from(values, (value) =>
        Array.isArray(value) ? value.reduce((bits, member) => bits | (1 << members.indexOf(member)), 0) : -1,
      );
    else if (type === 'boolean') columns[id] = Uint8Array.from(values, (value) => (value === undefined ? 255 : Number(value)));
    else columns[id] = Uint16Array.from(values, (value) => (value === undefined ? 65_535 : members.indexOf(String(value))));
  }
  return columns;
}
