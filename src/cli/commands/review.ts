import { type DueItem, dueItems } from '../../check/review.js';
import { dayNumber } from '../../measure/day-number.js';
import { dimensionOf, parseQuantity } from '../../measure/quantity.js';
import { BadUse } from '../bad-use.js';
import { colors } from '../colors.js';
import { type CommonOptions, type Context, openPacks, openSoundClinic } from '../context.js';
import { inColumns } from '../in-columns.js';
import { plural } from '../print-findings.js';

export interface ReviewOptions extends Pick<CommonOptions, 'rules'> {
  on?: string;
  within?: string;
  json?: boolean;
}

/**
 * `rulebook review`: what falls due on a day, today unless one is given, or within a time after it. The exit code is 1 when something
 * is overdue.
 */
export function runReview(context: Context, folder: string | undefined, options: ReviewOptions, today: string): number {
  const day = options.on ?? today;
  if (dayNumber(day) === undefined) throw new BadUse(`\`${day}\` is not a date`, 'write it as YYYY-MM-DD');
  const within = parseQuantity(options.within ?? '3 mo');
  if (!within.ok || dimensionOf(within.value) !== 'time')
    throw new BadUse(`\`${options.within ?? ''}\` is no time`, 'write it as `3 mo` or `30 d`');
  const { rules } = options;
  const common = rules === undefined ? {} : { rules };
  const open = openSoundClinic(context, folder, common, openPacks(context, common, 'rules'));
  if (open === undefined) return 1;
  const items = dueItems(open.rulebook, day, within.value);
  const overdue = items.filter(({ state }) => state === 'overdue').length;
  if (options.json) context.out(JSON.stringify({ clinic: open.rulebook.clinic.name, on: day, items }, undefined, 2));
  else {
    context.out(colors.bold(`${open.rulebook.clinic.name}, what falls due from ${day} within ${options.within ?? '3 mo'}`));
    for (const [heading, whats] of headings) {
      const own = items.filter(({ what }) => whats.includes(what));
      if (own.length === 0) continue;
      context.out(`\n${heading}`);
      for (const line of inColumns(
        own.map(({ state, by, about, because }) => [`  ${state}`, by ?? '', about, because]),
        40,
      ))
        context.out(line);
    }
    context.out(`\n${plural(items.length, 'item')}, ${overdue} overdue`);
  }
  return overdue > 0 ? 1 : 0;
}

const headings: readonly (readonly [string, readonly DueItem['what'][]])[] = [
  ['The manual', ['manual']],
  ['Deviations to look at again', ['deviation']],
  ['Tasks without an owner', ['owner']],
  ['Sources that ended', ['source']],
  ['Citations to compare with their source', ['citation']],
];
