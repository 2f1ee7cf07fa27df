import type { Place } from '../read/finding.js';
import type { Deviation } from '../read/types.gen.js';
import { type Layer, type Linking, report } from './linking.js';

/** A change as the strictness gate sees it. */
export interface ProposedChange {
  /** Whether it makes an answer, a limit or an interval less strict, as far as can be told. */
  looser: boolean;
  /** What it changes, in words. */
  what: string;
  /** Why it counts as less strict, or which way is stricter. */
  because: string;
  deviation: Deviation | undefined;
  place: Place;
}

/**
 * The one gate for "layers only tighten": a less strict change is refused unless the clinic recorded it as a deviation.
 * Returns whether the change may be made. Limits and intervals come with their declared direction; for rules and steps
 * the callers give a sufficient condition, and an exact proof over all situations will take its place here.
 */
export function requireStrict(linking: Linking, layer: Layer, change: ProposedChange): boolean {
  const { looser, deviation, place } = change;
  if (looser && deviation === undefined) {
    report(
      linking,
      'E314',
      place,
      `changing ${change.what} is less strict (${change.because})`,
      'keep it as strict, or record a `deviation:` with reason, source, approved-by and review-by',
    );
    return false;
  }
  if (deviation === undefined) return true;
  if (layer.id !== 'clinic') {
    report(linking, 'E315', place, 'only a clinic can record a deviation', 'a region pack may only make things stricter');
    return false;
  }
  if (!looser)
    report(linking, 'W501', place, `changing ${change.what} is not less strict and needs no deviation`, 'take the deviation out');
  if (deviation['review-by'] < linking.on)
    report(
      linking,
      'W502',
      place,
      `the deviation was to be looked at again by ${deviation['review-by']}`,
      'look at it again and set a new date, or take it out',
    );
  return true;
}
