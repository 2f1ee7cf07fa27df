import { compareQuantities, describeDimension, dimensionOf, formatQuantity, type Quantity } from '../measure/quantity.js';
import type { Place } from '../read/finding.js';
import type { Deviation } from '../read/types.gen.js';
import { isFirst } from './link-vocabulary.js';
import { cite, eachOf, expectKnown, holdsOn, type Linking, passOver, report } from './linking.js';
import { readQuantity } from './read-values.js';
import type { LimitChange } from './rule-changes.js';
import type { Change, Limit } from './rulebook.js';

/** The limits of all layers with the value in force on the date, and the changes that regions and the clinic make. */
export function linkLimits(linking: Linking, changes: Change[]): { limits: Map<string, Limit>; limitChanges: LimitChange[] } {
  const limits = new Map<string, Limit>();
  const placed = new Map<string, Place>();
  for (const layer of linking.layers)
    for (const { document } of eachOf({ ...linking, layers: [layer] }, 'limits'))
      for (const [id, raw] of Object.entries(document.data.limits)) {
        const place = document.atKey(['limits', id]);
        if (!isFirst(linking, placed, 'limit', id, place)) continue;
        const values = raw.values.flatMap((value, index) => {
          const at = document.at(['limits', id, 'values', index, 'value']);
          const quantity = readQuantity(linking, value.value, at);
          const source = cite(linking, value.source, document.at(['limits', id, 'values', index, 'source']));
          return quantity === undefined ? [] : [{ quantity, source, from: value.from, place: at }];
        });
        const [first, ...others] = values;
        for (const other of others)
          if (first !== undefined && dimensionOf(other.quantity) !== dimensionOf(first.quantity))
            report(
              linking,
              'E308',
              other.place,
              differs(id, first.quantity, other.quantity),
              'give all values of a limit in one kind of unit',
            );
        values.forEach((value, index) => {
          if (values.findIndex(({ from }) => from === value.from) < index)
            report(
              linking,
              'E307',
              value.place,
              `limit \`${id}\` has two values ${value.from === undefined ? 'without a date' : `from ${value.from}`}`,
              'give each its own date, or keep one',
            );
        });
        const current = values
          .filter((value) => holdsOn(linking.on, value))
          .sort(byStart)
          .at(-1);
        if (current === undefined) {
          passOver(linking, 'limit', id);
          if (values.length > 0)
            report(
              linking,
              'E313',
              place,
              `limit \`${id}\` has no value on ${linking.on}`,
              'add a value that holds from an earlier date',
            );
          continue;
        }
        limits.set(id, {
          id,
          label: raw.label,
          stricter: raw.stricter,
          value: current.quantity,
          source: current.source,
          ...(raw.note !== undefined && { note: raw.note }),
          chain: [
            {
              layer: layer.id,
              value: formatQuantity(current.quantity),
              quantity: current.quantity,
              source: current.source,
              ...(current.from !== undefined && { from: current.from }),
              place: current.place,
            },
          ],
        });
      }
  return { limits, limitChanges: changeLimits(linking, limits, changes) };
}

function changeLimits(linking: Linking, limits: Map<string, Limit>, changes: Change[]): LimitChange[] {
  const limitChanges: LimitChange[] = [];
  for (const { layer, document } of eachOf(linking, 'overrides'))
    document.data.changes.forEach((change, index) => {
      if (change.change !== 'limit') return;
      const at = (key: string) => document.at(['changes', index, key]);
      if (!expectKnown(linking, 'E303', 'limit', change.limit, limits.keys(), at('limit'))) return;
      const limit = limits.get(change.limit);
      const source = cite(linking, change.source, at('source'));
      const value = limit && readQuantity(linking, change.value, at('value'), limit.value.unit);
      if (limit === undefined || value === undefined || !holdsOn(linking.on, change)) return;
      const before = limit.value;
      const [was, becomes] = [formatQuantity(before), formatQuantity(value)];
      limitChanges.push({
        limit: limit.id,
        was: before,
        becomes: value,
        layer,
        looser: isLooser(limit, value, limit.value),
        what: `\`${limit.id}\` from ${was} to ${becomes}`,
        because: `${limit.stricter} is stricter`,
        deviation: change.deviation,
        sources: [limit.source, source],
        place: at('value'),
        document,
        path: ['changes', index],
      });
      const words = { layer: layer.id, because: change.because, place: at('value'), ...deviationOf(change) };
      limit.chain.push({
        ...words,
        value: becomes,
        quantity: value,
        source,
        ...(change.from !== undefined && { from: change.from }),
      });
      limit.value = value;
      limit.source = source;
      changes.push({
        ...words,
        kind: 'limit',
        about: limit.id,
        change: `${was} becomes ${becomes}`,
        limit: { was: before, becomes: value },
        source,
      });
    });
  return limitChanges;
}

function differs(id: string, first: Quantity, other: Quantity): string {
  return `limit \`${id}\` is ${describeDimension(dimensionOf(first))}, this value is ${describeDimension(dimensionOf(other))}`;
}

/** A change's deviation as a part to spread. */
export function deviationOf(change: { deviation?: Deviation }): { deviation?: Deviation } {
  return change.deviation === undefined ? {} : { deviation: change.deviation };
}

/** Whether a value of a limit is less strict than another. */
export function isLooser({ stricter }: Pick<Limit, 'stricter'>, value: Quantity, than: Quantity): boolean {
  const difference = compareQuantities(value, than);
  return stricter === 'lower' ? difference > 0 : difference < 0;
}

function byStart(a: { from?: string | undefined }, b: { from?: string | undefined }): number {
  return (a.from ?? '').localeCompare(b.from ?? '');
}
