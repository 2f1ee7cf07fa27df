import { decide } from '../../decide/decide.js';
import { factsOf } from '../../decide/facts-of.js';
import type { Choice, Fact, FactValue, Rulebook, Situation } from '../../link/rulebook.js';
import { groupBy } from '../text/group-by.js';

/** Situations that get the same programs: for each fact the values that do; a fact of which all do is left out. */
export interface TabulatedRow {
  when: { fact: Fact; values: readonly FactValue[] }[];
  /** Programs, best first; empty where none does. */
  programs: string[];
}

/** Most situations that are looked at, and most lines that a page can bear. */
const mostSituations = 800;
const mostRows = 16;

/**
 * Answers a choice for every situation there is, and draws together those with the same programs. Gives up where a fact
 * has no list of values, or where the table would not fit a page.
 */
export function tabulateChoice(rulebook: Rulebook, choice: Choice): TabulatedRow[] | undefined {
  const facts = [...new Set(choice.rules.flatMap((rule) => factsOf(rule.when, rulebook.facts)))]
    .filter((id) => rulebook.clinic.facts[id] === undefined)
    .flatMap((id) => rulebook.facts.get(id) ?? []);
  if (facts.some(({ type }) => type !== 'enum' && type !== 'boolean')) return undefined;
  if (facts.reduce((product, fact) => product * valuesOf(fact).length, 1) > mostSituations) return undefined;
  const cells = situationsOf(facts).map((given) => ({ given, programs: programsFor(rulebook, choice, given) }));
  const rows = drawTogether(
    facts,
    cells.map(({ given, programs }) => ({ values: facts.map(({ id }) => [given[id] ?? false]), programs })),
  );
  if (rows.length > mostRows) return undefined;
  return rows.map(({ values, programs }) => ({
    when: facts.flatMap((fact, index) => {
      const own = values[index] ?? [];
      return own.length === valuesOf(fact).length ? [] : [{ fact, values: own }];
    }),
    programs,
  }));
}

function valuesOf({ type, members }: Fact): readonly (string | boolean)[] {
  return type === 'boolean' ? [true, false] : members;
}

function situationsOf(facts: readonly Fact[]): Situation[] {
  return facts.reduce<Situation[]>(
    (situations, fact) => situations.flatMap((given) => valuesOf(fact).map((value) => ({ ...given, [fact.id]: value }))),
    [{}],
  );
}

function programsFor(rulebook: Rulebook, choice: Choice, given: Situation): string[] {
  return (decide(rulebook, choice.id, given).offers ?? []).filter(({ meets }) => meets).map(({ program }) => program);
}

interface Row {
  values: FactValue[][];
  programs: string[];
}

/** Merges lines that differ in one fact alone, until none is left to merge. */
function drawTogether(facts: readonly Fact[], rows: readonly Row[]): Row[] {
  const merged = facts.reduceRight<readonly Row[]>((lines, _, index) => mergeOver(lines, index), rows);
  return merged.length < rows.length ? drawTogether(facts, merged) : [...merged];
}

function mergeOver(rows: readonly Row[], index: number): Row[] {
  const others = ({ values, programs }: Row) => JSON.stringify([programs, values.toSpliced(index, 1)]);
  return [...groupBy(rows, others).values()].flatMap((same) => {
    const [first] = same;
    if (first === undefined) return [];
    const union = [...new Set(same.flatMap(({ values }) => values[index] ?? []))];
    return [{ ...first, values: first.values.with(index, union) }];
  });
}
