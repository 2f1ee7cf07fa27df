import { dimensionOf, formatQuantity, inBaseUnit, type Quantity } from '../measure/quantity.js';
import type { Place } from '../read/finding.js';
import type { Located, Path } from '../read/read-documents.js';
import type { Operand, Condition as RawCondition, Test as RawTest } from '../read/types.gen.js';
import { expectKnown, type Linking, report } from './linking.js';
import { dayNumber, readQuantity } from './read-values.js';
import type { Comparison, Condition, Fact, Test } from './rulebook.js';

/** What conditions may speak of. */
export interface Vocabulary {
  facts: ReadonlyMap<string, Fact>;
  limits: ReadonlyMap<string, { value: Quantity }>;
}

/**
 * Turns a condition as written into its typed tree. Reports unknown facts, members and limits with the nearest name,
 * tests that don't fit the type of the fact, and quantities of the wrong dimension; `undefined` when anything was wrong.
 */
export function compileCondition(
  linking: Linking,
  vocabulary: Vocabulary,
  raw: RawCondition,
  document: Located,
  path: Path,
): Condition | undefined {
  const parts: (Condition | undefined)[] = [];
  for (const [key, value] of Object.entries(raw)) {
    const here = [...path, key];
    if (key === 'all' || key === 'any') {
      const of = Array.isArray(value)
        ? value.map((each, index) => compileCondition(linking, vocabulary, each, document, [...here, index]))
        : [];
      parts.push(whole(of, (conditions) => ({ kind: key, of: conditions })));
    } else if (key === 'not') {
      const inner = isCondition(value) ? compileCondition(linking, vocabulary, value, document, here) : undefined;
      parts.push(inner && { kind: 'not', of: inner });
    } else if (expectKnown(linking, 'E301', 'fact', key, vocabulary.facts.keys(), document.atKey(here))) {
      const fact = vocabulary.facts.get(key);
      if (fact !== undefined && isTest(value)) parts.push(compileTest(linking, vocabulary, fact, value, document, here));
    } else parts.push(undefined);
  }
  return whole(parts, (of) => (of.length === 1 && of[0] !== undefined ? of[0] : { kind: 'all', of }));
}

function compileTest(
  linking: Linking,
  vocabulary: Vocabulary,
  fact: Fact,
  raw: RawTest,
  document: Located,
  path: Path,
): Condition | undefined {
  const misuse = (place: Place, help: string): undefined => {
    report(linking, 'E309', place, `this test does not fit \`${fact.id}\`, which is ${typeInWords(fact)}`, help);
    return undefined;
  };
  const test = (each: Test): Condition => ({ kind: 'test', fact: fact.id, test: each });
  const memberList = (members: readonly (string | boolean)[], at: Path): boolean =>
    members.map((member, index) => isMember(linking, fact, member, document.at([...at, index]))).every(Boolean);

  if (typeof raw !== 'object') {
    if (fact.type === 'set') return misuse(document.at(path), 'use `any-of`, `all-of` or `none-of` with a list');
    if (isNumeric(fact)) return misuse(document.at(path), 'use `at-least`, `at-most`, `above`, `below` or `between`');
    return isMember(linking, fact, raw, document.at(path)) ? test({ kind: 'one-of', members: [raw] }) : undefined;
  }
  const parts: (Condition | undefined)[] = [];
  for (const [key, value] of Object.entries(raw)) {
    const here = [...path, key];
    switch (key) {
      case 'one-of':
        if (fact.type === 'set' || isNumeric(fact))
          parts.push(misuse(document.atKey(here), fact.type === 'set' ? 'use `any-of`' : 'use `between`'));
        else
          parts.push(
            memberList(value as string[], here) ? test({ kind: 'one-of', members: value as (string | boolean)[] }) : undefined,
          );
        break;
      case 'any-of':
      case 'all-of':
        if (fact.type !== 'set') parts.push(misuse(document.atKey(here), 'use `one-of`'));
        else parts.push(memberList(value as string[], here) ? test({ kind: key, members: value as string[] }) : undefined);
        break;
      case 'none-of':
        if (fact.type === 'boolean' || isNumeric(fact)) parts.push(misuse(document.atKey(here), 'use a plain value'));
        else parts.push(memberList(value as string[], here) ? test({ kind: key, members: value as string[] }) : undefined);
        break;
      case 'between': {
        const [low, high] = value as Operand[];
        for (const [op, operand, index] of [
          ['at-least', low, 0],
          ['at-most', high, 1],
        ] as const)
          parts.push(
            operand === undefined
              ? undefined
              : compileComparison(linking, vocabulary, fact, op, operand, document, [...here, index]),
          );
        break;
      }
      default:
        parts.push(compileComparison(linking, vocabulary, fact, key as Comparison, value as Operand, document, here));
    }
  }
  return whole(parts, (of) => (of.length === 1 && of[0] !== undefined ? of[0] : { kind: 'all', of }));
}

function compileComparison(
  linking: Linking,
  vocabulary: Vocabulary,
  fact: Fact,
  op: Comparison,
  operand: Operand,
  document: Located,
  path: Path,
): Condition | undefined {
  const place = document.at(path);
  if (!isNumeric(fact)) {
    report(
      linking,
      'E309',
      place,
      `this test does not fit \`${fact.id}\`, which is ${typeInWords(fact)}`,
      'comparisons are for quantities, counts and dates',
    );
    return undefined;
  }
  const compare = (value: number, shown: string, limit?: string): Condition => ({
    kind: 'test',
    fact: fact.id,
    test: { kind: 'compare', op, value, shown, ...(limit !== undefined && { limit }) },
  });
  if (typeof operand === 'object') {
    if (!expectKnown(linking, 'E303', 'limit', operand.limit, vocabulary.limits.keys(), document.at([...path, 'limit'])))
      return undefined;
    const quantity = vocabulary.limits.get(operand.limit)?.value;
    return quantity && fits(linking, fact, quantity, place)
      ? compare(inBaseUnit(quantity), formatQuantity(quantity), operand.limit)
      : undefined;
  }
  if (fact.type === 'date') {
    const day = dayNumber(String(operand));
    if (day === undefined)
      report(linking, 'E309', place, `expected a date for \`${fact.id}\`, got \`${operand}\``, 'write it as YYYY-MM-DD');
    return day === undefined ? undefined : compare(day, String(operand));
  }
  if (typeof operand === 'number') {
    if (fact.type === 'count') return compare(operand, String(operand));
    report(
      linking,
      'E210',
      place,
      `expected a number and a unit for \`${fact.id}\`, got \`${operand}\``,
      `write it in \`${fact.unit ?? ''}\``,
    );
    return undefined;
  }
  const quantity = readQuantity(linking, operand, place);
  return quantity && fits(linking, fact, quantity, place) ? compare(inBaseUnit(quantity), formatQuantity(quantity)) : undefined;
}

function fits(linking: Linking, fact: Fact, quantity: Quantity, place: Place): boolean {
  const wanted = fact.type === 'count' ? 'count' : dimensionOf({ value: 0, unit: fact.unit ?? '1' });
  const got = dimensionOf(quantity);
  if (got === wanted) return true;
  report(
    linking,
    'E308',
    place,
    `unexpected ${got} for \`${fact.id}\`, expected a ${wanted}`,
    `\`${fact.id}\` is measured in \`${fact.unit ?? 'times'}\``,
  );
  return false;
}

function isMember(linking: Linking, fact: Fact, member: string | boolean, place: Place): boolean {
  if (fact.type === 'boolean') {
    if (typeof member === 'boolean') return true;
    report(linking, 'E309', place, `expected true or false for \`${fact.id}\`, got \`${member}\``, fact.question);
    return false;
  }
  return expectKnown(linking, 'E302', `member of \`${fact.id}\``, String(member), fact.members, place);
}

function isNumeric(fact: Fact): boolean {
  return fact.type === 'quantity' || fact.type === 'count' || fact.type === 'date';
}

function typeInWords(fact: Fact): string {
  const words = {
    enum: 'one of several words',
    set: 'a set',
    boolean: 'true or false',
    quantity: 'a quantity',
    count: 'a count',
    date: 'a date',
    answer: 'the answer of a decision',
  };
  return words[fact.type];
}

function whole<T>(parts: readonly (T | undefined)[], make: (parts: T[]) => T): T | undefined {
  const complete = parts.filter((part): part is T => part !== undefined);
  return complete.length === parts.length ? make(complete) : undefined;
}

function isCondition(value: RawCondition[string]): value is RawCondition {
  return typeof value === 'object' && !Array.isArray(value);
}

function isTest(value: RawCondition[string]): value is RawTest {
  return value !== undefined && !Array.isArray(value);
}
