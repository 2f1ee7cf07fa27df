import { isFor } from '../link/choose-packs.js';
import { isFirst } from '../link/link-vocabulary.js';
import { citationOf } from '../link/linking.js';
import type { PacksAlone } from '../link/packs-alone.js';
import type { Rulebook, Source } from '../link/rulebook.js';
import type { Finding, Place } from '../read/finding.js';
import type { Located } from '../read/read-documents.js';
import type { FixtureDocument } from '../read/types.gen.js';
import { type Fixture, FixtureError, known, type Wrong } from './fixture-parts.js';
import { proveBoundary, proveProgram, proveSituation } from './prove-answer.js';
import { proveDisagreement } from './prove-disagreement.js';
import { proveValue } from './prove-value.js';
import { runCalculation } from './run-calculation.js';

/** What running fixtures found: how many were run, what went wrong, and which rules they reached. */
export interface FixtureRun {
  run: number;
  findings: Finding[];
  /** Ids of rules that a fixture's situation made true. */
  rulesReached: Set<string>;
}

/** Compares published values with what the packs of a region say, each on the day of its life nearest to the date asked for. */
export function checkFixtures(documents: readonly Located<FixtureDocument>[], packs: PacksAlone): FixtureRun {
  const result: FixtureRun = { run: 0, findings: [], rulesReached: new Set() };
  const placed = new Map<string, Place>();
  for (const document of documents)
    for (const [id, fixture] of Object.entries(document.data.fixtures)) {
      if (!isFirst(result, placed, 'fixture', id, document.atKey(['fixtures', id]))) continue;
      if (!isFor(document.data.region, packs.region)) continue;
      const day = dayFor(fixture, packs);
      if (day === undefined) continue;
      const rulebook = packs.rulesOn(day);
      result.run += 1;
      const wrong = rulebook === undefined ? noRules(day) : runFixture(fixture, rulebook, packs, result.rulesReached);
      if (wrong === undefined) continue;
      const { code, at, message } = wrong;
      const help = wrong.help ?? (code === 'E402' && rulebook !== undefined ? sayPublished(fixture, at, packs) : undefined);
      result.findings.push({ code, message, place: document.at(['fixtures', id, ...at]), ...(help !== undefined && { help }) });
    }
  return result;
}

/** The first and the last day on which a fixture holds: its own, or those of its source. */
export function lifeOf(fixture: Fixture, sources: ReadonlyMap<string, Source>): { from?: string; until?: string } {
  const source = 'source' in fixture ? sources.get(citationOf(fixture.source).id) : undefined;
  const from = fixture.from ?? (source?.year === undefined ? undefined : `${source.year}-01-01`);
  const until = fixture.until ?? source?.withdrawn;
  return { ...(from !== undefined && { from }), ...(until !== undefined && { until }) };
}

/**
 * The day on which a fixture is run: the day of its life nearest to the date asked for. A formula has no date, and what the
 * packs still cite holds although its edition was withdrawn; nothing else that ended before the packs took effect is run.
 */
function dayFor(fixture: Fixture, { on, effective, sources, cites }: PacksAlone): string | undefined {
  if (fixture.prove === 'calculation') return on;
  const { from, until } = lifeOf(fixture, sources);
  if (from !== undefined && on < from) return from;
  if (until === undefined || on <= until) return on;
  if (until >= effective) return until;
  return 'source' in fixture && fixture.until === undefined && cites.has(citationOf(fixture.source).id) ? on : undefined;
}

function noRules(on: string): Wrong {
  return { code: 'E402', at: [], message: `the packs give no rules on ${on}`, help: `see \`rulebook check --on ${on}\`` };
}

function runFixture(fixture: Fixture, rulebook: Rulebook, packs: PacksAlone, reached: Set<string>): Wrong | undefined {
  try {
    if ('source' in fixture) known('E304', 'source', citationOf(fixture.source).id, rulebook.sources, ['source']);
    switch (fixture.prove) {
      case 'limit':
      case 'interval':
        return proveValue(fixture, rulebook);
      case 'situation':
        return proveSituation(fixture, rulebook, reached);
      case 'boundary':
        return proveBoundary(fixture, rulebook, reached);
      case 'program':
        return proveProgram(fixture, rulebook, reached);
      case 'calculation':
        return runCalculation(fixture);
      case 'disagreement':
        return proveDisagreement(fixture, rulebook, packs.region, packs.sources);
    }
  } catch (error) {
    if (error instanceof FixtureError) return error.wrong;
    throw error;
  }
}

function sayPublished(fixture: Fixture, at: Wrong['at'], { sources }: PacksAlone): string | undefined {
  const source = 'source' in fixture ? fixture.source : fixture.positions[Number(at[1])]?.source;
  if (source === undefined) return undefined;
  const citation = citationOf(source);
  const title = sources.get(citation.id)?.title ?? citation.id;
  return `published in ${citation.at === undefined ? title : `${title}, ${citation.at}`}`;
}
