import type { Limit, Rulebook } from '../../../link/rulebook.js';
import { dimensionOf, inBaseUnit, type Quantity } from '../../../measure/quantity.js';
import { labelOf } from '../../model/label-of.js';
import { phrase } from '../../text/phrase.js';
import { capitalize, uncapitalize } from '../../text/say-list.js';
import { sayQuantity } from '../../text/say-quantity.js';
import type { Figure } from '../figure.js';
import { sayRow } from '../say-row.js';
import { waymarks } from './waymarks.js';

/** How long things may take on the way, on an axis of time. */
export interface TimesDrawing {
  kind: 'times';
  groups: { title: string; bars: TimeBar[] }[];
  ticks: Tick[];
  words: { atMost: string; atLeast: string };
}

export interface TimeBar {
  label: string;
  value: string;
  seconds: number;
  /** Whether it may take this long at most, or takes as long at least. */
  sense: 'at-most' | 'at-least';
}

export interface Tick {
  seconds: number;
  label: string;
}

const ticks: Quantity[] = [
  { value: 1, unit: 'min' },
  { value: 1, unit: 'h' },
  { value: 1, unit: 'd' },
  { value: 1, unit: 'mo' },
  { value: 1, unit: 'a' },
];

/** The limits of time on the way of an instrument, in its order; nothing where the rulebook has none of them. */
export function modelTimes(rulebook: Rulebook): Figure | undefined {
  const groups = waymarks.flatMap(({ stage, marks }) => {
    const bars = marks.flatMap(({ limit: id, isHere }) => {
      const limit = rulebook.limits.get(id);
      if (limit === undefined || dimensionOf(limit.value) !== 'time' || isHere?.(rulebook) === false) return [];
      return [barOf(rulebook, limit)];
    });
    return bars.length === 0 ? [] : [{ title: capitalize(labelOf(rulebook, stage)), bars }];
  });
  if (groups.length === 0) return undefined;
  const drawing: TimesDrawing = {
    kind: 'times',
    groups,
    ticks: ticks.map((each) => ({ seconds: inBaseUnit(each), label: sayQuantity(rulebook, each) })),
    words: { atMost: phrase(rulebook, 'figure.times-at-most'), atLeast: phrase(rulebook, 'figure.times-at-least') },
  };
  const rows = groups.map(({ title, bars }) => {
    const said = bars.map(({ label, value }) => phrase(rulebook, 'figure.times-alt-limit', { what: uncapitalize(label), value }));
    return phrase(rulebook, 'figure.times-alt-group', { title, limits: sayRow(rulebook, said) });
  });
  const alt = [phrase(rulebook, 'figure.times-alt'), ...rows].join(' ');
  return { id: 'times', caption: phrase(rulebook, 'figure.times-caption'), alt, drawing };
}

function barOf(rulebook: Rulebook, { label, value, stricter }: Limit): TimeBar {
  return {
    label,
    value: sayQuantity(rulebook, value),
    seconds: inBaseUnit(value),
    sense: stricter === 'lower' ? 'at-most' : 'at-least',
  };
}
