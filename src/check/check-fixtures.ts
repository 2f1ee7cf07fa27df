import { decide } from '../decide/decide.js';
import { isWithin } from '../link/choose-packs.js';
import { isHollow, readFactValue } from '../link/read-values.js';
import type { FactValue, Rulebook } from '../link/rulebook.js';
import { formatInterval, isAtLeastAsOften, parseInterval } from '../measure/interval.js';
import { compareQuantities, dimensionOf, formatQuantity } from '../measure/quantity.js';
import type { Finding } from '../read/finding.js';
import { quotedList } from '../read/quoted.js';
import type { Located } from '../read/read-documents.js';
import type { FixtureDocument } from '../read/types.gen.js';
import { FixtureError, known, quantity, type Wrong } from './fixture-error.js';
import { runCalculation } from './run-calculation.js';

type Fixture = FixtureDocument['fixtures'][string];

/** What running fixtures found: how many were run, what went wrong, and which rules they reached. */
export interface FixtureRun {
  run: number;
  findings: Finding[];
  /** Ids of rules that a fixture's situation made true. */
  rulesReached: Set<string>;
}

/**
 * Compares published values with the rules as the packs state them. `rulesOn` gives the packs' rulebook, without the
 * clinic's own changes, on the date a fixture asks for.
 */
export function checkFixtures(
  documents: readonly Located<FixtureDocument>[],
  region: string,
  rulesOn: (date: string | undefined) => Rulebook | undefined,
): FixtureRun {
  const result: FixtureRun = { run: 0, findings: [], rulesReached: new Set() };
  for (const document of documents)
    for (const [id, fixture] of Object.entries(document.data.fixtures)) {
      if (fixture.region !== undefined && !isWithin(region, fixture.region)) continue;
      const rulebook = rulesOn(fixture.on);
      result.run += 1;
      const wrong = rulebook === undefined ? noRules(fixture) : runFixture(fixture, rulebook, result.rulesReached);
      if (wrong === undefined) continue;
      const { code, at, message } = wrong;
      const help =
        wrong.help ?? (code === 'E402' && rulebook !== undefined ? `published in ${citation(fixture, rulebook)}` : undefined);
      result.findings.push({ code, message, place: document.at(['fixtures', id, ...at]), ...(help !== undefined && { help }) });
    }
  return result;
}

function noRules({ on = '' }: Fixture): Wrong {
  return { code: 'E402', at: ['on'], message: `the packs give no rules on ${on}`, help: `see \`rulebook check --on ${on}\`` };
}

function runFixture(fixture: Fixture, rulebook: Rulebook, reached: Set<string>): Wrong | undefined {
  try {
    const source = typeof fixture.source === 'string' ? fixture.source : fixture.source.id;
    known('E304', 'source', source, rulebook.sources, ['source']);
    switch (fixture.prove) {
      case 'limit':
        return runLimit(fixture, rulebook);
      case 'interval':
        return runInterval(fixture, rulebook);
      case 'situation':
        return runSituation(fixture, rulebook, reached);
      case 'calculation':
        return runCalculation(fixture);
    }
  } catch (error) {
    if (error instanceof FixtureError) return error.wrong;
    throw error;
  }
}

function runLimit(fixture: Extract<Fixture, { prove: 'limit' }>, rulebook: Rulebook): Wrong | undefined {
  const limit = known('E303', 'limit', fixture.limit, rulebook.limits, ['limit']);
  const tests = (['equals', 'at-most', 'at-least'] as const).flatMap((test) => {
    const text = fixture[test];
    return text === undefined ? [] : [{ test, published: quantity(text, dimensionOf(limit.value), [test]) }];
  });
  if (tests.length === 0)
    return { code: 'E402', at: [], message: 'it compares with nothing', help: 'add `equals`, `at-most` or `at-least`' };
  for (const { test, published } of tests) {
    const difference = compareQuantities(limit.value, published);
    const passes = test === 'equals' ? difference === 0 : test === 'at-most' ? difference <= 0 : difference >= 0;
    if (passes) continue;
    const word = test === 'equals' ? '' : `${test.replace('-', ' ')} `;
    const message = `limit \`${limit.id}\` is ${formatQuantity(limit.value)}, published is ${word}${formatQuantity(published)}`;
    return { code: 'E402', at: [test], message };
  }
  return undefined;
}

function runInterval(fixture: Extract<Fixture, { prove: 'interval' }>, rulebook: Rulebook): Wrong | undefined {
  if (rulebook.notHere.has(fixture.task)) return undefined;
  const task = known('E306', 'task', fixture.task, rulebook.tasks, ['task']);
  const published = parseInterval(fixture['at-most']);
  if (!published.ok)
    throw new FixtureError({
      code: 'E210',
      at: ['at-most'],
      message: published.problem,
      help: 'write it as `1 wk or 20 cycles`',
    });
  if (task.every !== undefined && isAtLeastAsOften(task.every, published.value)) return undefined;
  const actual = task.every === undefined ? 'only after events' : formatInterval(task.every);
  const message = `task \`${task.id}\` is due ${actual}, published is ${formatInterval(published.value)}`;
  return { code: 'E402', at: ['at-most'], message };
}

function runSituation(
  fixture: Extract<Fixture, { prove: 'situation' }>,
  rulebook: Rulebook,
  reached: Set<string>,
): Wrong | undefined {
  const decision = known('E306', 'decision', fixture.decision, rulebook.decisions, ['decision']);
  if (decision.kind === 'choice') {
    const message = `\`${decision.id}\` is a choice among a clinic's own programs`;
    return { code: 'E402', at: ['decision'], message, help: 'prove its limits instead' };
  }
  const given = readGiven(fixture.given, rulebook);
  const tests = (['outcome', 'at-least', 'not'] as const).flatMap((test) => {
    const outcome = fixture[test];
    return outcome === undefined ? [] : [{ test, outcome }];
  });
  if (tests.length === 0)
    return { code: 'E402', at: [], message: 'it expects nothing', help: 'add `outcome`, `at-least` or `not`' };
  const outcomes = new Map(decision.outcomes.map((outcome, rank) => [outcome, { rank }]));
  const rank = (outcome: string, at: string[] = []) => known('E311', 'outcome', outcome, outcomes, at).rank;
  const ranks = tests.map(({ test, outcome }) => rank(outcome, [test]));
  const answer = decide({ ...rulebook, clinic: { ...rulebook.clinic, facts: {} } }, decision.id, given);
  for (const { rule, certain } of answer.reasons) if (rule !== undefined && certain) reached.add(rule);
  const actual = rank(answer.outcome);
  const passes = {
    outcome: (published: number) => actual === published,
    'at-least': (published: number) => actual >= published,
    not: (published: number) => actual !== published,
  };
  const failed = tests.find(({ test }, index) => !passes[test](ranks[index] ?? -1));
  if (failed === undefined) return undefined;
  const words = { outcome: '', 'at-least': 'at least ', not: 'anything but ' };
  const waits = answer.needed.length > 0 ? `; it waits for ${quotedList(answer.needed)}` : '';
  const message = `\`${decision.id}\` answers \`${answer.outcome}\`, published is ${words[failed.test]}\`${failed.outcome}\`${waits}`;
  return { code: 'E402', at: [failed.test], message };
}

function readGiven(raw: Extract<Fixture, { prove: 'situation' }>['given'], rulebook: Rulebook): Record<string, FactValue> {
  const given: Record<string, FactValue> = {};
  for (const [id, value] of Object.entries(raw)) {
    const fact = known('E301', 'fact', id, rulebook.facts, ['given', id]);
    if (isHollow(fact)) continue;
    const read = readFactValue(fact, value);
    if (!('value' in read))
      throw new FixtureError({ code: read.code, message: read.message, help: read.help, at: ['given', id] });
    given[id] = read.value;
  }
  return given;
}

function citation(fixture: Fixture, rulebook: Rulebook): string {
  const source = typeof fixture.source === 'string' ? { id: fixture.source } : fixture.source;
  const title = rulebook.sources.get(source.id)?.title ?? source.id;
  return 'at' in source && source.at !== undefined ? `${title}, ${source.at}` : title;
}
