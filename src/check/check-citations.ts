import { isPublished } from '../link/linking.js';
import type { Citation, Place, Rulebook } from '../link/rulebook.js';
import { dayNumber } from '../measure/day-number.js';
import { inBaseUnit } from '../measure/quantity.js';

/** One value, rule, step or task that cites a published source. */
export interface Cited {
  kind: 'limit' | 'task' | 'rule' | 'procedure' | 'step';
  /** Its id. */
  about: string;
  citation: Citation;
  place: Place;
  /** When somebody last looked at the source; absent where the value is recalled and nobody has. */
  checked?: string;
}

/** The citations of published sources in a rulebook, and those that are due for a look. */
export interface CitationReport {
  cited: number;
  /** Never compared with the source: recalled, or without a date. */
  never: Cited[];
  /** Not compared within the time that the packs state. */
  due: Cited[];
}

/** Which cited values nobody has compared with their source, ever or within the time that the packs state. */
export function checkCitations(rulebook: Rulebook): CitationReport {
  const all = citationsOf(rulebook);
  const seconds = rulebook.lookAgainAfter?.time === undefined ? Infinity : inBaseUnit(rulebook.lookAgainAfter.time);
  const today = dayNumber(rulebook.on) ?? 0;
  const age = ({ checked = '' }: Cited) => (today - (dayNumber(checked) ?? 0)) * 86_400;
  return {
    cited: all.length,
    never: all.filter(({ checked }) => checked === undefined),
    due: all.filter((each) => each.checked !== undefined && age(each) > seconds),
  };
}

/** Every citation of a published source, limits and tasks first, with the day on which it was last compared. */
export function citationsOf(rulebook: Rulebook): Cited[] {
  const { limits, tasks, decisions, procedures } = rulebook;
  const all: Omit<Cited, 'checked'>[] = [
    ...[...limits.values()].flatMap(({ id, chain }) =>
      chain.map(({ source, place }) => ({ kind: 'limit' as const, about: id, citation: source, place })),
    ),
    ...[...tasks.values()].flatMap(({ id, chain, source, place }) =>
      chain.length === 0
        ? [{ kind: 'task' as const, about: id, citation: source, place }]
        : chain.map((each) => ({ kind: 'task' as const, about: id, citation: each.source, place: each.place })),
    ),
    ...[...decisions.values()].flatMap(({ rules }) =>
      rules.map(({ id, source, place }) => ({ kind: 'rule' as const, about: id, citation: source, place })),
    ),
    ...[...procedures.values()].flatMap(({ id, source, place, steps }) => [
      { kind: 'procedure' as const, about: id, citation: source, place },
      ...steps.flatMap((step) =>
        step.source === undefined ? [] : [{ kind: 'step' as const, about: step.id, citation: step.source, place: step.place }],
      ),
    ]),
  ];
  return all.flatMap((each) => {
    const source = rulebook.sources.get(each.citation.id);
    if (source === undefined || !isPublished(source)) return [];
    const checked = each.citation.checked ?? (each.citation.evidence === 'recalled' ? undefined : source.checked);
    return [{ ...each, ...(checked !== undefined && { checked }) }];
  });
}
