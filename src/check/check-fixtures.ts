import { decide } from '../decide/decide.js';
import { readFactValue } from '../link/read-values.js';
import type { FactValue, Rulebook } from '../link/rulebook.js';
import { a0OfHold } from '../measure/a0.js';
import { formatInterval, isAtLeastAsOften, parseInterval } from '../measure/interval.js';
import { compareQuantities, dimensionOf, formatQuantity, inBaseUnit, parseQuantity, type Quantity } from '../measure/quantity.js';
import type { Finding } from '../read/finding.js';
import { didYouMean } from '../read/nearest.js';
import type { Located } from '../read/read-documents.js';
import type { FixtureDocument } from '../read/types.gen.js';

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
      if (fixture.region !== undefined && fixture.region !== region) continue;
      const rulebook = rulesOn(fixture.on);
      if (rulebook === undefined) continue;
      result.run += 1;
      const wrong = runFixture(fixture, rulebook, result.rulesReached);
      if (wrong === undefined) continue;
      const place = document.atKey(['fixtures', id]);
      result.findings.push({
        code: wrong.code,
        message: `fixture \`${id}\`: ${wrong.message}`,
        place,
        help: wrong.help ?? `published in ${citation(fixture, rulebook)}`,
      });
    }
  return result;
}

interface Wrong {
  code: 'E402' | 'E306' | 'E210';
  message: string;
  help?: string | undefined;
}

function runFixture(fixture: Fixture, rulebook: Rulebook, reached: Set<string>): Wrong | undefined {
  const source = typeof fixture.source === 'string' ? fixture.source : fixture.source.id;
  if (!rulebook.sources.has(source))
    return { code: 'E306', message: `unknown source \`${source}\``, help: didYouMean(source, rulebook.sources.keys()) };
  try {
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
  const limit = rulebook.limits.get(fixture.limit);
  if (limit === undefined)
    return {
      code: 'E306',
      message: `unknown limit \`${fixture.limit}\``,
      help: didYouMean(fixture.limit, rulebook.limits.keys()),
    };
  const tests = (['equals', 'at-most', 'at-least'] as const).flatMap((test) =>
    fixture[test] === undefined ? [] : [{ test, published: quantity(fixture[test]) }],
  );
  if (tests.length === 0)
    return { code: 'E402', message: 'it compares with nothing', help: 'add `equals`, `at-most` or `at-least`' };
  for (const { test, published } of tests) {
    if (dimensionOf(published) !== dimensionOf(limit.value))
      return { code: 'E402', message: `${formatQuantity(published)} cannot be compared with ${formatQuantity(limit.value)}` };
    const difference = compareQuantities(limit.value, published);
    const passes = test === 'equals' ? difference === 0 : test === 'at-most' ? difference <= 0 : difference >= 0;
    if (!passes)
      return {
        code: 'E402',
        message: `limit \`${limit.id}\` is ${formatQuantity(limit.value)}, published ${test.replace('-', ' ')} ${formatQuantity(published)}`,
      };
  }
  return undefined;
}

function runInterval(fixture: Extract<Fixture, { prove: 'interval' }>, rulebook: Rulebook): Wrong | undefined {
  const task = rulebook.tasks.get(fixture.task);
  if (task === undefined && rulebook.notHere.has(fixture.task)) return undefined;
  if (task === undefined)
    return { code: 'E306', message: `unknown task \`${fixture.task}\``, help: didYouMean(fixture.task, rulebook.tasks.keys()) };
  const published = parseInterval(fixture['at-most']);
  if (!published.ok) return { code: 'E210', message: published.problem };
  if (task.every !== undefined && isAtLeastAsOften(task.every, published.value)) return undefined;
  const actual = task.every === undefined ? 'only after events' : formatInterval(task.every);
  return { code: 'E402', message: `task \`${task.id}\` is due ${actual}, published ${formatInterval(published.value)}` };
}

function runSituation(
  fixture: Extract<Fixture, { prove: 'situation' }>,
  rulebook: Rulebook,
  reached: Set<string>,
): Wrong | undefined {
  const decision = rulebook.decisions.get(fixture.decision);
  if (decision === undefined)
    return {
      code: 'E306',
      message: `unknown decision \`${fixture.decision}\``,
      help: didYouMean(fixture.decision, rulebook.decisions.keys()),
    };
  if (decision.kind === 'choice')
    return {
      code: 'E402',
      message: `\`${decision.id}\` is a choice among a clinic's own programs`,
      help: 'prove its limits instead',
    };
  const given: Record<string, FactValue> = {};
  for (const [id, raw] of Object.entries(fixture.given)) {
    const fact = rulebook.facts.get(id);
    if (fact === undefined)
      return { code: 'E306', message: `unknown fact \`${id}\``, help: didYouMean(id, rulebook.facts.keys()) };
    const read = readFactValue(fact, raw);
    if (!('value' in read)) return { code: 'E402', message: read.message, help: read.help };
    given[id] = read.value;
  }
  const rank = (outcome: string) => decision.outcomes.indexOf(outcome);
  const expected = [fixture.outcome, fixture['at-least'], fixture.not].filter((each) => each !== undefined);
  if (expected.length === 0) return { code: 'E402', message: 'it expects nothing', help: 'add `outcome`, `at-least` or `not`' };
  const unknown = expected.find((each) => rank(each) < 0);
  if (unknown !== undefined)
    return {
      code: 'E306',
      message: `unknown outcome \`${unknown}\` of \`${decision.id}\``,
      help: didYouMean(unknown, decision.outcomes),
    };
  const answer = decide({ ...rulebook, clinic: { ...rulebook.clinic, facts: {} } }, decision.id, given);
  for (const { rule, certain } of answer.reasons) if (rule !== undefined && certain) reached.add(rule);
  const passes =
    (fixture.outcome === undefined || answer.outcome === fixture.outcome) &&
    (fixture['at-least'] === undefined || rank(answer.outcome) >= rank(fixture['at-least'])) &&
    (fixture.not === undefined || answer.outcome !== fixture.not);
  if (passes) return undefined;
  const wanted =
    fixture.outcome ?? (fixture['at-least'] === undefined ? `not ${fixture.not ?? ''}` : `at least ${fixture['at-least']}`);
  const waits = answer.needed.length > 0 ? `; it waits for ${answer.needed.map((fact) => `\`${fact}\``).join(', ')}` : '';
  return { code: 'E402', message: `\`${decision.id}\` answers \`${answer.outcome}\`, published \`${wanted}\`${waits}` };
}

function runCalculation(fixture: Extract<Fixture, { prove: 'calculation' }>): Wrong | undefined {
  const { temperature, time } = fixture.given;
  if (temperature === undefined || time === undefined)
    return { code: 'E402', message: 'A0 is worked out from `temperature` and `time`', help: 'give both' };
  const [result, published] = [a0OfHold(quantity(temperature), quantity(time)), quantity(fixture.result)];
  const within = fixture.within === undefined ? 0 : inBaseUnit(quantity(fixture.within));
  if (dimensionOf(published) !== 'A0')
    return { code: 'E402', message: `expected an A0 for the result, got ${formatQuantity(published)}` };
  if (Math.abs(inBaseUnit(result) - inBaseUnit(published)) <= within) return undefined;
  return { code: 'E402', message: `the calculation gives ${formatQuantity(result)}, published ${formatQuantity(published)}` };
}

class FixtureError extends Error {
  constructor(readonly wrong: Wrong) {
    super(wrong.message);
  }
}

function quantity(text: string): Quantity {
  const parsed = parseQuantity(text);
  if (parsed.ok) return parsed.value;
  throw new FixtureError({ code: 'E210', message: parsed.problem });
}

function citation(fixture: Fixture, rulebook: Rulebook): string {
  const source = typeof fixture.source === 'string' ? { id: fixture.source } : fixture.source;
  const title = rulebook.sources.get(source.id)?.title ?? source.id;
  return 'at' in source && source.at !== undefined ? `${title}, ${source.at}` : title;
}
