import { knownFacts, needsOf, programsOf } from '../../decide/decide.js';
import { truthOf } from '../../decide/truth.js';
import type { Choice, Decision, Fact, Rule, Rulebook, Verdict } from '../../link/rulebook.js';
import { inBaseUnit, leastOf } from '../../measure/quantity.js';
import { boundOf, inOrderOfAnswers, readsOf, statable, toContract } from '../contract.js';
import { headOf } from '../head.js';
import { conditionToSql, joined, numberLiteral, possibleColumn } from './condition-to-sql.js';
import { comment, identifier, literal } from './quote.js';

/** Name of the table of situations, of its key, and of the view that answers a decision. */
export const factsTable = 'facts';
export const keyColumn = 'situation id';
export function viewOf(decision: string): string {
  return `decide ${decision}`;
}

/** The rulebook for a database: a table of situations, and a view a decision that answers it for each of them. */
export function rulebookToSql(rulebook: Rulebook): string {
  const { title, clinic, version, on, digest } = headOf(rulebook);
  const decisions = inOrderOfAnswers(rulebook);
  return `${[
    `-- ${comment(`${clinic}: ${title}, version ${version}, rules of ${on}`)}`,
    `-- digest ${comment(digest)}`,
    '--',
    '-- Put one row a situation into "facts": NULL where a fact is not stated, a set as its members with commas between them, a quantity in',
    '-- the unit that stands behind it. Then ask the view of a decision:',
    `--   SELECT * FROM ${comment(identifier(viewOf(decisions[0]?.id ?? '')))};`,
    '-- It gives the outcome, the outcomes still possible, whether no missing fact can change it, and the rules that apply and may apply.',
    '-- A value that cannot be is refused when it is put in. The column of an answer is for callers who know it already.',
    '',
    tableOf(rulebook),
    ...decisions.map((decision) => viewFor(decision, rulebook)),
  ].join('\n')}\n`;
}

function tableOf({ facts }: Rulebook): string {
  const columns = [...facts.values()].map((fact) => {
    const unit = fact.unit === undefined || fact.type !== 'quantity' ? '' : ` in ${fact.unit}`;
    return { text: `  ${identifier(fact.id)} ${columnType(fact)}`, note: comment(`${fact.question}${unit}`) };
  });
  const lines = columns.map(({ text, note }, index) => `${text}${index === columns.length - 1 ? '' : ','} -- ${note}`);
  return [`CREATE TABLE ${identifier(factsTable)} (`, `  ${identifier(keyColumn)} BIGINT NOT NULL,`, ...lines, ');'].join('\n');
}

function columnType(fact: Fact): string {
  const column = identifier(fact.id);
  const check = (type: string, condition: string) => `${type} CHECK (${condition})`;
  switch (fact.type) {
    case 'boolean':
      return 'BOOLEAN';
    case 'date':
      return 'DATE';
    case 'enum':
    case 'answer':
      return check('VARCHAR(200)', `${column} IN (${fact.members.map(literal).join(', ')})`);
    case 'set': {
      // Each member is taken out with its commas; nothing may be left.
      const left = fact.members.reduce(
        (text, member) => `REPLACE(${text}, ${literal(`,${member},`)}, '')`,
        `',' || REPLACE(${column}, ',', ',,') || ','`,
      );
      return check('VARCHAR(4000)', `${column} = '' OR ${left} = ''`);
    }
    case 'count':
      return check(
        'DOUBLE PRECISION',
        `${column} >= 0 AND ${column} <= ${Number.MAX_SAFE_INTEGER} AND ${column} = FLOOR(${column})`,
      );
    case 'quantity': {
      const { unit = '1', minimum, maximum } = fact;
      const least = minimum === undefined ? leastOf(unit) : inBaseUnit(minimum);
      const low = Number.isFinite(least) ? boundOf(least, fact) : -largest;
      const high = maximum === undefined ? largest : boundOf(inBaseUnit(maximum), fact);
      return check('DOUBLE PRECISION', `${column} >= ${numberLiteral(low)} AND ${column} <= ${numberLiteral(high)}`);
    }
  }
}

/** No quantity is larger: see `whyImpossible`. */
const largest = 1e9;

function viewFor(decision: Decision, rulebook: Rulebook): string {
  const key = identifier(keyColumn);
  const given = `${identifier('given')} AS (\n  SELECT ${[key, ...statable(rulebook, decision.id).map((fact) => columnOf(fact, rulebook))].join(', ')}\n  FROM ${identifier(factsTable)}\n)`;
  const asked = askedBy(decision, rulebook);
  const parts = [
    given,
    ...asked.flatMap((other) => [rulesPart(other, rulebook, plainOf), possiblePart(other, rulebook)]),
    ...readsOf(decision, rulebook.facts).answers.map(toldPart),
    rulesPart(decision, rulebook, toldOf),
    possiblePart(decision, rulebook),
  ];
  const rules = identifier(rulesOf(decision.id));
  const possible = identifier(possibleOf(decision.id));
  const { outcome, settled, outcomes } = answersOf(decision, rulebook);
  const list = (entries: readonly { when: string; text: string }[]) =>
    entries.length === 0
      ? "''"
      : `TRIM(LEADING ',' FROM ${entries.map(({ when, text }) => `CASE WHEN ${when} THEN ${literal(`,${text}`)} ELSE '' END`).join(' || ')})`;
  return [
    '',
    `-- ${comment(decision.question)}`,
    `CREATE VIEW ${identifier(viewOf(decision.id))} AS WITH ${parts.join(',\n')}`,
    `SELECT ${[
      `${rules}.${key}`,
      `${outcome} AS ${identifier('outcome')}`,
      `${list(outcomes.map((each) => ({ when: mayBe(each), text: each })))} AS ${identifier('possible')}`,
      `${settled} AS ${identifier('settled')}`,
      `${list(decision.rules.map(({ id }) => ({ when: `${identifier(id)} IS TRUE`, text: id })))} AS ${identifier('certain')}`,
      `${list(decision.rules.map(({ id }) => ({ when: `${identifier(id)} IS NULL`, text: id })))} AS ${identifier('open')}`,
    ].join(',\n  ')}`,
    `FROM ${rules} JOIN ${possible} ON ${possible}.${key} = ${rules}.${key};`,
  ].join('\n');
}

/** A fact's column, with what the clinic states where the row does not. */
function columnOf(fact: Fact, { clinic }: Rulebook): string {
  const column = identifier(fact.id);
  const value = clinic.facts[fact.id];
  return value === undefined ? column : `COALESCE(${column}, ${valueLiteral(toContract(value, fact), fact)}) AS ${column}`;
}

function valueLiteral(value: unknown, { type }: Fact): string {
  if (typeof value === 'boolean') return value ? 'TRUE' : 'FALSE';
  if (typeof value === 'number') return numberLiteral(value);
  if (Array.isArray(value)) return literal(value.join(','));
  return type === 'date' ? `DATE ${literal(String(value))}` : literal(String(value));
}

/** The decisions whose answers a decision looks at, each after those it looks at itself. */
function askedBy(decision: Decision, rulebook: Rulebook): Decision[] {
  const needed = new Set<string>();
  const walk = (each: Decision): void => {
    for (const { decision: asked = '' } of readsOf(each, rulebook.facts).answers) {
      const other = rulebook.decisions.get(asked);
      if (other === undefined || needed.has(asked)) continue;
      needed.add(asked);
      walk(other);
    }
  };
  walk(decision);
  return inOrderOfAnswers(rulebook).filter(({ id }) => needed.has(id));
}

function rulesOf(id: string): string {
  return `rules of ${id}`;
}

function possibleOf(id: string): string {
  return `possible of ${id}`;
}

/** Where the columns of an answer come from: its decision's own, or narrowed by what the caller states. */
function plainOf({ decision = '' }: Fact): string {
  return possibleOf(decision);
}

function toldOf({ id }: Fact): string {
  return `stated ${id}`;
}

/** Each rule as a column: true, false, or NULL where it is unknown. */
function rulesPart(decision: Decision, rulebook: Rulebook, from: (answer: Fact) => string): string {
  const key = identifier(keyColumn);
  const given = identifier('given');
  const { answers } = readsOf(decision, rulebook.facts);
  const sources = answers.map((answer) => {
    // Each answer's columns carry its fact's name, whichever decision gives it.
    const columns = answer.members.map((member) => `${mayBe(member)} AS ${possibleColumn(answer, member)}`);
    const name = identifier(`answer ${answer.id}`);
    return ` JOIN (SELECT ${key} AS ${identifier(`key ${answer.id}`)}, ${columns.join(', ')} FROM ${identifier(from(answer))}) AS ${name} ON ${name}.${identifier(`key ${answer.id}`)} = ${given}.${key}`;
  });
  const columns = decision.rules.map(({ id, when }) => `${conditionToSql(when, rulebook.facts)} AS ${identifier(id)}`);
  return `${identifier(rulesOf(decision.id))} AS (\n  SELECT ${[`${given}.${key}`, ...columns].join(',\n    ')}\n  FROM ${given}${sources.join('')}\n)`;
}

/** The possible outcomes as columns, always true or false. */
function possiblePart(decision: Decision, rulebook: Rulebook): string {
  const columns = answersOf(decision, rulebook).possible.map(({ outcome, holds }) => `${holds} AS ${mayBe(outcome)}`);
  return `${identifier(possibleOf(decision.id))} AS (\n  SELECT ${[identifier(keyColumn), ...columns].join(',\n    ')}\n  FROM ${identifier(rulesOf(decision.id))}\n)`;
}

/** What a caller states of an answer, where it is among the possible ones. */
function toldPart(answer: Fact): string {
  const [key, given, possible] = [keyColumn, 'given', possibleOf(answer.decision ?? '')].map(identifier);
  const column = `${given}.${identifier(answer.id)}`;
  const isPossible = joined(
    answer.members.map((member) => `(${column} = ${literal(member)} AND ${mayBe(member)})`),
    'any',
  );
  const columns = answer.members.map(
    (member) => `CASE WHEN ${isPossible} THEN ${column} = ${literal(member)} ELSE ${mayBe(member)} END AS ${mayBe(member)}`,
  );
  return `${identifier(toldOf(answer))} AS (\n  SELECT ${[`${given}.${key}`, ...columns].join(',\n    ')}\n  FROM ${given} JOIN ${possible} ON ${possible}.${key} = ${given}.${key}\n)`;
}

function mayBe(outcome: string): string {
  return identifier(`may be ${outcome}`);
}

interface Answers {
  outcomes: string[];
  possible: { outcome: string; holds: string }[];
  outcome: string;
  settled: string;
}

const isCertain = ({ id }: Rule) => `${identifier(id)} IS TRUE`;
const isNotCertain = ({ id }: Rule) => `${identifier(id)} IS NOT TRUE`;
const mayApply = ({ id }: Rule) => `${identifier(id)} IS NOT FALSE`;
const mayNotApply = ({ id }: Rule) => `${identifier(id)} IS FALSE`;

function answersOf(decision: Decision, rulebook: Rulebook): Answers {
  return decision.kind === 'verdict' ? verdict(decision) : choice(decision, rulebook);
}

function verdict({ outcomes, otherwise, rules }: Verdict): Answers {
  const giving = (outcome: string) => rules.filter((rule) => rule.outcome === outcome);
  const silent = joined(rules.map(isNotCertain), 'all');
  const possible = outcomes.map((outcome, rank) => ({
    outcome,
    holds: joined(
      [
        joined([...giving(outcome).map(mayApply), ...(outcome === otherwise ? [silent] : [])], 'any'),
        ...outcomes
          .slice(rank + 1)
          .flatMap(giving)
          .map(isNotCertain),
      ],
      'all',
    ),
  }));
  return {
    outcomes,
    possible,
    outcome: firstOf(
      [...outcomes].reverse().map((outcome) => ({ outcome, when: mayBe(outcome) })),
      otherwise,
    ),
    settled: `(${outcomes.map((outcome) => `CASE WHEN ${mayBe(outcome)} THEN 1 ELSE 0 END`).join(' + ')}) = 1`,
  };
}

function choice(decision: Choice, rulebook: Rulebook): Answers {
  const { rules } = decision;
  const speaking = rules.filter(({ addsOnly }) => !addsOnly);
  const programs = programsOf(decision, rulebook).map(({ id, facts }) => {
    const stated = knownFacts(rulebook, facts);
    const lacking = rules.filter((rule) => truthOf(needsOf(rule), stated) !== true);
    return {
      outcome: id,
      meets: joined([joined(speaking.map(isCertain), 'any'), ...lacking.map(mayNotApply)], 'all'),
      holds: joined([joined(speaking.map(mayApply), 'any'), ...lacking.map(isNotCertain)], 'all'),
    };
  });
  return {
    outcomes: [...programs.map(({ outcome }) => outcome), 'none'],
    possible: [
      ...programs,
      {
        outcome: 'none',
        holds: joined(
          programs.map(({ meets }) => `NOT ${meets}`),
          'all',
        ),
      },
    ],
    outcome: firstOf(
      programs.map(({ outcome, meets }) => ({ outcome, when: meets })),
      'none',
    ),
    settled: joined(
      programs.map(({ meets, outcome }) => `(${meets} OR NOT ${mayBe(outcome)})`),
      'all',
    ),
  };
}

function firstOf(options: readonly { outcome: string; when: string }[], otherwise: string): string {
  if (options.length === 0) return literal(otherwise);
  return `CASE ${options.map(({ outcome, when }) => `WHEN ${when} THEN ${literal(outcome)}`).join(' ')} ELSE ${literal(otherwise)} END`;
}
