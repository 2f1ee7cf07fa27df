import { sayNumber } from '../analyse/say-box.js';
import type { Fact, FactValue, Situation } from '../link/rulebook.js';
import { fromBaseUnit, writtenUnit } from '../measure/quantity.js';

/** A situation as arguments of `rulebook decide`: `load.wait="9 min" load.soil=light-soil`. */
export function asArguments(situation: Situation, facts: ReadonlyMap<string, Fact>): string {
  return Object.entries(situation)
    .map(([id, value]) => `${id}=${quotedForShell(writeValue(value, facts.get(id)))}`)
    .join(' ');
}

/** A value as it is written in a situation of a rules file or on the command line. */
export function writeValue(value: FactValue, fact: Fact | undefined): string {
  if (typeof value === 'object') return value.join(',');
  if (typeof value !== 'number' || fact === undefined) return String(value);
  if (fact.type !== 'quantity' || fact.unit === undefined) return sayNumber(value, fact);
  const quantity = fromBaseUnit(value, fact.unit);
  const unit = writtenUnit(fact.unit);
  if (unit === 'A0' || unit === 'pH') return `${unit} ${quantity.value}`;
  if (unit.endsWith(' F0')) return `F0 ${quantity.value} ${unit.slice(0, -3)}`;
  return `${quantity.value} ${unit}`;
}

function quotedForShell(text: string): string {
  return /^[\w.,:+-]*$/.test(text) ? text : `"${text}"`;
}
