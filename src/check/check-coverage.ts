import type { Rule, Rulebook } from '../link/rulebook.js';
import type { Finding } from '../read/finding.js';

/** How well rules are proved: by examples on both sides, and by fixtures with published values. */
export interface Coverage {
  rules: number;
  withoutExample: string[];
  withoutFixture: string[];
  withNeither: string[];
}

/** Counts the rules that no example and no fixture reaches. */
export function coverageOf(rulebook: Rulebook, reachedByFixtures: ReadonlySet<string>): Coverage {
  const rules = [...rulebook.decisions.values()].flatMap((decision) => decision.rules);
  const ids = (keep: (rule: Rule) => boolean) => rules.filter(keep).map(({ id }) => id);
  return {
    rules: rules.length,
    withoutExample: ids(({ examples }) => examples.length === 0),
    withoutFixture: ids(({ id }) => !reachedByFixtures.has(id)),
    withNeither: ids(({ id, examples }) => examples.length === 0 && !reachedByFixtures.has(id)),
  };
}

/** Warns of rules whose examples show only one side. */
export function checkCoverage(rulebook: Rulebook): Finding[] {
  return [...rulebook.decisions.values()].flatMap(({ rules }) =>
    rules.flatMap(({ id, examples, place }): Finding[] => {
      const missing = [true, false].filter((side) => !examples.some(({ applies }) => applies === side));
      if (missing.length === 0) return [];
      const what =
        missing.length === 2
          ? 'no example'
          : missing[0]
            ? 'no example in which it applies'
            : 'no example in which it does not apply';
      return [{ code: 'W503', message: `rule \`${id}\` has ${what}`, place, help: 'add a situation under `examples:`' }];
    }),
  );
}
