import type { Rulebook } from '../link/rulebook.js';
import { dayNumber } from '../measure/day-number.js';
import { inBaseUnit, type Quantity } from '../measure/quantity.js';
import { checkCitations } from './check-citations.js';

/** Something that somebody has to look at. */
export interface DueItem {
  what: 'manual' | 'deviation' | 'citation' | 'owner' | 'source';
  /** The document's number, or the id of what is to be looked at. */
  about: string;
  /** In words. */
  because: string;
  /** The day by which, YYYY-MM-DD; absent where it is open at once. */
  by?: string;
  state: 'overdue' | 'due' | 'open';
}

/**
 * What falls due on a day (YYYY-MM-DD) or within a time after it: the review of the manual, deviations to look at again,
 * citations to compare with their source, sources that were withdrawn, and tasks that nobody answers for.
 */
export function dueItems(rulebook: Rulebook, today: string, within: Quantity): DueItem[] {
  const { clinic, changes } = rulebook;
  const horizon = (dayNumber(today) ?? 0) + inBaseUnit(within) / 86_400;
  const dated = (item: Omit<DueItem, 'state'> & { by: string }): DueItem[] => {
    const day = dayNumber(item.by) ?? 0;
    if (day > horizon) return [];
    return [{ ...item, state: item.by < today ? 'overdue' : 'due' }];
  };
  const { number, 'review-by': reviewBy } = clinic.document;
  return [
    ...dated({ what: 'manual', about: number, because: 'the manual is to be looked at again', by: reviewBy }),
    ...changes.flatMap(({ about, change, deviation }) =>
      deviation === undefined
        ? []
        : dated({ what: 'deviation', about, because: `deviation: ${change}`, by: deviation['review-by'] }),
    ),
    ...tasksWithoutOwner(rulebook),
    ...withdrawnSources(rulebook, today),
    ...citationsToCompare({ ...rulebook, on: today }),
  ];
}

/** Somebody holds the role of each task; a service engineer comes from outside, and there must be someone to call. */
function tasksWithoutOwner({ tasks, clinic }: Rulebook): DueItem[] {
  const held = new Set(['everyone', ...clinic.people.flatMap(({ roles }) => roles)]);
  if (clinic.contacts.some(({ id }) => id === 'service')) held.add('service-engineer');
  return [...tasks.values()].flatMap(({ id, role }): DueItem[] => {
    const because = role === 'service-engineer' ? 'there is no contact `service` to call' : `nobody holds the role \`${role}\``;
    return held.has(role) ? [] : [{ what: 'owner', about: id, because, state: 'open' }];
  });
}

/** Sources whose edition has ended and that values in force still cite. */
function withdrawnSources(rulebook: Rulebook, today: string): DueItem[] {
  const cited = new Set([...rulebook.limits.values()].map(({ source }) => source.id));
  return [...rulebook.sources.values()].flatMap(({ id, title, withdrawn }): DueItem[] =>
    withdrawn === undefined || withdrawn >= today || !cited.has(id)
      ? []
      : [
          {
            what: 'source',
            about: id,
            because: `${title} is no longer in force, and limits cite it`,
            by: withdrawn,
            state: 'overdue',
          },
        ],
  );
}

/** By source: how many values nobody has compared with it, ever or for too long. */
function citationsToCompare(rulebook: Rulebook): DueItem[] {
  const { never, due } = checkCitations(rulebook);
  const bySource = new Map<string, { never: number; due: number }>();
  const count = (source: string, key: 'never' | 'due') => {
    const counts = bySource.get(source) ?? { never: 0, due: 0 };
    bySource.set(source, { ...counts, [key]: counts[key] + 1 });
  };
  for (const { citation } of never) count(citation.id, 'never');
  for (const { citation } of due) count(citation.id, 'due');
  return [...bySource].map(([source, counts]): DueItem => {
    const parts = [
      ...(counts.never > 0 ? [`${counts.never} never compared with the text`] : []),
      ...(counts.due > 0 ? [`${counts.due} not compared for too long`] : []),
    ];
    return { what: 'citation', about: source, because: parts.join(', '), state: counts.due > 0 ? 'overdue' : 'open' };
  });
}
