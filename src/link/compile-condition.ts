import { dayNumber } from '../measure/day-number.js';
import { describeDimension, dimensionOf, formatQuantity, inBaseUnit, type Quantity, writtenUnit } from '../measure/quantity.js';
import type { Place } from '../read/finding.js';
import { quoted } from '../read/quoted.js';
import type { Located, Path } from '../read/read-documents.js';
import type { Operand, Condition as RawCondition, Test as RawTest } from '../read/types.gen.js';
import { expectKnown, type Linking, report } from './linking.js';
import { isHollow, readQuantity, unknownMember } from './read-values.js';
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

  if (isHollow(fact)) return undefined;
  if (typeof raw !== 'object') {
    if (fact.type === 'set') return misuse(document.at(path), 'use `any-of`, `all-of` or `none-of` with a list');
    if (isNumeric(fact)) return misuse(document.at(path), 'use `at-least`, `at-most`, `above`, `below` or `between`');
    return isMember(linking, fact, raw, document.at(path)) ? test({ kind: 'one-of', members: [raw] }) : undefined;
  }
  const parts: (Condition | undefined)[] = [];
  for (const [key, value] of Object.entries(raw)) {
    const here = [...path, key];
    const compares = !['one-of', 'any-of', 'all-of', 'none-of'].includes(key);
    if (compares && !isNumeric(fact)) {
      parts.push(misuse(document.atKey(here), 'comparisons are for quantities, counts and dates'));
      continue;
    }
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
      case 'between':
        parts.push(compileBetween(linking, vocabulary, fact, value as Operand[], document, here));
        break;
      default:
        parts.push(compileComparison(linking, vocabulary, fact, key as Comparison, value as Operand, document, here));
    }
  }
  return whole(parts, (of) => (of.length === 1 && of[0] !== undefined ? of[0] : { kind: 'all', of }));
}

function compileBetween(
  linking: Linking,
  vocabulary: Vocabulary,
  fact: Fact,
  [least, most]: readonly Operand[],
  document: Located,
  path: Path,
): Condition | undefined {
  if (least === undefined || most === undefined) return undefined;
  const low = compileComparison(linking, vocabulary, fact, 'at-least', least, document, [...path, 0]);
  const high = compileComparison(linking, vocabulary, fact, 'at-most', most, document, [...path, 1]);
  if (low === undefined || high === undefined) return undefined;
  if (low.test.value > high.test.value) {
    const message = `nothing is between ${quoted(low.test.shown)} and ${quoted(high.test.shown)}`;
    report(linking, 'E309', document.at(path), message, 'write the smaller one first');
    return undefined;
  }
  return { kind: 'all', of: [low, high] };
}

interface Compared {
  kind: 'test';
  fact: string;
  test: Extract<Test, { kind: 'compare' }>;
}

function compileComparison(
  linking: Linking,
  vocabulary: Vocabulary,
  fact: Fact,
  op: Comparison,
  operand: Operand,
  document: Located,
  path: Path,
): Compared | undefined {
  const place = document.at(path);
  const compare = (value: number, shown: string): Compared => ({
    kind: 'test',
    fact: fact.id,
    test: { kind: 'compare', op, value, shown },
  });
  const compareQuantity = (quantity: Quantity, limit?: string): Compared => ({
    kind: 'test',
    fact: fact.id,
    test: {
      kind: 'compare',
      op,
      value: inBaseUnit(quantity),
      shown: formatQuantity(quantity),
      unit: quantity.unit,
      ...(limit !== undefined && { limit }),
    },
  });
  if (fact.type === 'date') {
    const day = typeof operand === 'string' ? dayNumber(operand) : undefined;
    if (day !== undefined) return compare(day, String(operand));
    const got = typeof operand === 'object' ? 'a limit' : quoted(String(operand));
    report(linking, 'E309', place, `expected a date for \`${fact.id}\`, got ${got}`, 'write it as YYYY-MM-DD');
    return undefined;
  }
  if (typeof operand === 'object') {
    const at = document.at([...path, 'limit']);
    if (!expectKnown(linking, 'E303', 'limit', operand.limit, vocabulary.limits.keys(), at)) return undefined;
    const quantity = vocabulary.limits.get(operand.limit)?.value;
    if (quantity === undefined || !fits(linking, fact, `limit \`${operand.limit}\``, quantity, at)) return undefined;
    return compareQuantity(quantity, operand.limit);
  }
  if (typeof operand === 'number') {
    if (fact.type === 'count') return compare(operand, String(operand));
    const message = `expected a number and a unit for \`${fact.id}\`, got \`${operand}\``;
    report(linking, 'E210', place, message, `write it in \`${writtenUnit(unitOf(fact))}\``);
    return undefined;
  }
  const quantity = readQuantity(linking, operand, place);
  if (quantity === undefined || !fits(linking, fact, quoted(operand), quantity, place)) return undefined;
  return compareQuantity(quantity);
}

function fits(linking: Linking, fact: Fact, what: string, quantity: Quantity, place: Place): boolean {
  const [got, wanted] = [dimensionOf(quantity), dimensionOf({ value: 0, unit: unitOf(fact) })];
  if (got === wanted) return true;
  const message = `${what} is ${describeDimension(got)}, expected ${describeDimension(wanted)} for \`${fact.id}\``;
  report(linking, 'E308', place, message, `it is measured in \`${writtenUnit(unitOf(fact))}\``);
  return false;
}

/** A count is compared in times. */
function unitOf(fact: Fact): string {
  return fact.unit ?? '1';
}

function isMember(linking: Linking, fact: Fact, member: string | boolean, place: Place): boolean {
  if (fact.type === 'boolean') {
    if (typeof member === 'boolean') return true;
    report(linking, 'E309', place, `expected true or false for \`${fact.id}\`, got ${quoted(member)}`, fact.question);
    return false;
  }
  const misfit = unknownMember(fact, String(member));
  if (misfit !== undefined) report(linking, misfit.code, place, misfit.message, misfit.help);
  return misfit === undefined;
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
