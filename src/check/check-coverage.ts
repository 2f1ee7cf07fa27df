import { isFor } from '../link/choose-packs.js';
import { citationOf, isPublished } from '../link/linking.js';
import type { Rule, Rulebook } from '../link/rulebook.js';
import type { Finding } from '../read/finding.js';
import type { Located } from '../read/read-documents.js';
import type { FixtureDocument } from '../read/types.gen.js';

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

/** A value of a limit or task that a pack took from a published source. */
export interface SourcedValue {
  /** Id of the limit or task. */
  about: string;
  layer: string;
  source: string;
}

/** The sourced values of the packs, and those that no fixture holds to the very value that its source publishes. */
export function sourcedValues(
  rulebook: Rulebook,
  fixtures: readonly Located<FixtureDocument>[],
): { all: SourcedValue[]; unheld: SourcedValue[] } {
  const held = new Set(
    fixtures.flatMap(({ data }) =>
      Object.values(data.fixtures).flatMap((fixture) => {
        if (!isFor(data.region, rulebook.clinic.region)) return [];
        if (fixture.prove === 'limit' && fixture.equals !== undefined)
          return [`${fixture.limit} ${citationOf(fixture.source).id}`];
        if (fixture.prove === 'interval' && fixture.equals !== undefined)
          return [`${fixture.task} ${citationOf(fixture.source).id}`];
        return [];
      }),
    ),
  );
  const all = [...rulebook.limits.values(), ...rulebook.tasks.values()].flatMap(({ id, chain }) =>
    chain.flatMap(({ layer, source }): SourcedValue[] =>
      layer === 'clinic' || !isPublished(rulebook.sources.get(source.id)) ? [] : [{ about: id, layer, source: source.id }],
    ),
  );
  return { all, unheld: all.filter(({ about, source }) => !held.has(`${about} ${source}`)) };
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
