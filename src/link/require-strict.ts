import type { Place } from '../read/finding.js';
import type { Located, Path } from '../read/read-documents.js';
import type { Deviation } from '../read/types.gen.js';
import { cite, type Layer, type Linking, report } from './linking.js';
import type { Citation } from './rulebook.js';

/** A change as the strictness gate sees it. */
export interface ProposedChange {
  /** Whether it makes an answer, a limit or an interval less strict, as far as can be told. */
  looser: boolean;
  /** What it changes, in words. */
  what: string;
  /** Why it counts as less strict, or which way is stricter. */
  because: string;
  deviation: Deviation | undefined;
  /** The sources of the value as it was and as it would become, where it is a value. */
  sources?: readonly Citation[];
  place: Place;
  /** The document and the place in it of the whole change. */
  document: Located;
  path: Path;
}

/**
 * The one gate for "layers only tighten": a less strict change is refused unless the clinic recorded it as a deviation.
 * Returns whether the change may be made. Limits and intervals come with their declared direction, steps with a sufficient
 * condition, and changes of rules with a proof over all situations (`rule-changes.ts`).
 */
export function requireStrict(linking: Linking, layer: Layer, change: ProposedChange): boolean {
  const { looser, deviation, place, what, because, document, path } = change;
  const isClinic = layer.id === 'clinic';
  if (looser && deviation === undefined) {
    const titles = new Set(change.sources?.map(({ id }) => linking.sources.get(id)?.title ?? id));
    const compare = titles.size > 0 ? `, and compare it with ${[...titles].join(' and ')}` : '';
    const record = isClinic ? ', or record a `deviation:` with reason, source, approved-by and review-by' : compare;
    report(linking, 'E314', place, `changing ${what} is less strict (${because})`, `keep it as strict${record}`);
    return false;
  }
  if (deviation === undefined) return true;
  const atDeviation = document.atKey([...path, 'deviation']);
  if (!isClinic) {
    report(linking, 'E315', atDeviation, 'only a clinic can record a deviation', 'a region may only make things stricter');
    return false;
  }
  cite(linking, deviation.source, document.at([...path, 'deviation', 'source']));
  if (!looser)
    report(linking, 'W501', atDeviation, `changing ${what} is not less strict and needs no deviation`, 'take the deviation out');
  if (deviation['review-by'] < linking.on) {
    const message = `the deviation was to be looked at again by ${deviation['review-by']}`;
    const help = 'look at it again and set a new date, or take it out';
    report(linking, 'W502', document.at([...path, 'deviation', 'review-by']), message, help);
  }
  return true;
}
