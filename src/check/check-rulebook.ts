import type { PacksAlone } from '../link/packs-alone.js';
import type { Rulebook } from '../link/rulebook.js';
import type { Finding } from '../read/finding.js';
import type { Located } from '../read/read-documents.js';
import type { FixtureDocument } from '../read/types.gen.js';
import { checkAnswers } from './check-answers.js';
import { type CitationReport, checkCitations } from './check-citations.js';
import { type Coverage, checkCoverage, coverageOf, sourcedValues } from './check-coverage.js';
import { checkExamples } from './check-examples.js';
import { checkFixtures } from './check-fixtures.js';
import { checkPrograms } from './check-programs.js';
import { checkRequirements } from './check-requirements.js';

/** What a check found, and what it counted. */
export interface CheckReport {
  findings: Finding[];
  fixtures: number;
  examples: number;
  coverage: Coverage;
  /** Sourced values of the packs, and those that no published value holds. */
  values: ReturnType<typeof sourcedValues>;
  citations: CitationReport;
}

/**
 * Proves a linked rulebook: runs the examples of its rules, looks for situations without a rule and rules without effect, compares what machine sheets claim with what their stages add
 * up to, and compares the packs it builds on, by themselves, with published values.
 */
export function checkRulebook(rulebook: Rulebook, fixtures: readonly Located<FixtureDocument>[], packs: PacksAlone): CheckReport {
  const run = checkFixtures(fixtures, packs);
  return {
    findings: [
      ...checkExamples(rulebook),
      ...run.findings,
      ...checkPrograms(rulebook),
      ...checkCoverage(rulebook),
      ...checkAnswers(rulebook),
      ...checkRequirements(rulebook),
    ],
    fixtures: run.run,
    examples: [...rulebook.decisions.values()].flatMap(({ rules }) => rules.flatMap(({ examples }) => examples)).length,
    coverage: coverageOf(rulebook, run.rulesReached),
    values: sourcedValues(packs.rulesOn(packs.on) ?? rulebook, fixtures),
    citations: checkCitations(rulebook),
  };
}
