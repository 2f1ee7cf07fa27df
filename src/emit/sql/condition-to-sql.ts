import type { Condition, Fact, Test } from '../../link/rulebook.js';
import { calendarDay } from '../../measure/day-number.js';
import { answerPasses, boundOf } from '../contract.js';
import { identifier, literal } from './quote.js';

/**
 * A condition in SQL. Its logic with NULL is strong Kleene logic, so a condition is said once: true, false, or NULL where it is
 * unknown. Facts are columns; of an answer, each outcome that is still possible is a column that is true.
 */
export function conditionToSql(condition: Condition, facts: ReadonlyMap<string, Fact>): string {
  switch (condition.kind) {
    case 'all':
    case 'any':
      return joined(
        condition.of.map((part) => conditionToSql(part, facts)),
        condition.kind,
      );
    case 'not':
      return `NOT (${conditionToSql(condition.of, facts)})`;
    case 'test': {
      const fact = facts.get(condition.fact);
      if (fact === undefined) throw new RangeError(`unknown fact ${condition.fact}`);
      const itself = fact.type === 'answer' ? answerToSql(fact, condition.test) : testToSql(fact, condition.test);
      return fact.onlyWhen === undefined ? itself : joined([conditionToSql(fact.onlyWhen, facts), itself], 'all');
    }
  }
}

/** All or any of some conditions. */
export function joined(parts: readonly string[], kind: 'all' | 'any'): string {
  const [only] = parts;
  if (only === undefined) return kind === 'all' ? 'TRUE' : 'FALSE';
  return parts.length === 1 ? only : `(${parts.join(kind === 'all' ? ' AND ' : ' OR ')})`;
}

/** The column that says whether an outcome of an answer is still possible. */
export function possibleColumn(fact: Fact, outcome: string): string {
  return identifier(`${fact.id} may be ${outcome}`);
}

function answerToSql(fact: Fact, test: Test): string {
  const [passing, others] = [true, false].map((passes) =>
    joined(
      fact.members.filter((member) => answerPasses(member, test) === passes).map((member) => possibleColumn(fact, member)),
      'any',
    ),
  );
  return `CASE WHEN NOT ${others ?? 'FALSE'} THEN TRUE WHEN NOT ${passing ?? 'FALSE'} THEN FALSE END`;
}

function testToSql(fact: Fact, test: Test): string {
  const column = identifier(fact.id);
  if (test.kind === 'compare') {
    const bound = fact.type === 'date' ? `DATE ${literal(calendarDay(test.value))}` : numberLiteral(boundOf(test.value, fact));
    return `${column} ${operators[test.op]} ${bound}`;
  }
  if (fact.type === 'boolean')
    return joined(
      test.members.map((member) => `${column} = ${member === true ? 'TRUE' : 'FALSE'}`),
      'any',
    );
  if (fact.type !== 'set') {
    const list = test.members.map((member) => literal(String(member))).join(', ');
    return `${column} ${test.kind === 'none-of' ? 'NOT IN' : 'IN'} (${list})`;
  }
  const members = test.members.map((member) => `POSITION(${literal(`,${String(member)},`)} IN ',' || ${column} || ',') > 0`);
  if (test.kind === 'all-of') return joined(members, 'all');
  return test.kind === 'none-of' ? `NOT ${joined(members, 'any')}` : joined(members, 'any');
}

/** A number that every engine reads as a double. */
export function numberLiteral(value: number): string {
  const text = value.toExponential();
  return value < 0 ? `(${text})` : text;
}

const operators = { 'at-least': '>=', 'at-most': '<=', above: '>', below: '<' } as const;
