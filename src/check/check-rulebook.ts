import type { Rulebook } from '../link/rulebook.js';
import type { Finding } from '../read/finding.js';
import type { Located } from '../read/read-documents.js';
import type { FixtureDocument } from '../read/types.gen.js';
import { type Coverage, checkCoverage, coverageOf } from './check-coverage.js';
import { checkExamples } from './check-examples.js';
import { checkFixtures } from './check-fixtures.js';
import { checkPrograms } from './check-programs.js';

/** What a check found, and what it counted. */
export interface CheckReport {
  findings: Finding[];
  fixtures: number;
  examples: number;
  coverage: Coverage;
}

/**
 * Proves a linked rulebook: runs the examples of its rules, the fixtures with published values, and compares what machine
 * sheets claim with what their stages add up to.
 */
export function checkRulebook(
  rulebook: Rulebook,
  fixtures: readonly Located<FixtureDocument>[],
  packsOn: (date: string) => Rulebook | undefined,
): CheckReport {
  const onDates = new Map<string, Rulebook | undefined>();
  const rulesOn = (date = rulebook.on) => {
    if (!onDates.has(date)) onDates.set(date, packsOn(date));
    return onDates.get(date);
  };
  const run = checkFixtures(fixtures, rulebook.clinic.region, rulesOn);
  return {
    findings: [...checkExamples(rulebook), ...run.findings, ...checkPrograms(rulebook), ...checkCoverage(rulebook)],
    fixtures: run.run,
    examples: [...rulebook.decisions.values()].flatMap(({ rules }) => rules.flatMap(({ examples }) => examples)).length,
    coverage: coverageOf(rulebook, run.rulesReached),
  };
}
