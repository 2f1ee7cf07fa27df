import { dayNumber } from '../measure/day-number.js';
import { type Interval, parseInterval } from '../measure/interval.js';
import {
  describeDimension,
  dimensionOf,
  formatQuantity,
  inBaseUnit,
  type Parsed,
  parseQuantity,
  type Quantity,
  whyImpossible,
  writtenUnit,
} from '../measure/quantity.js';
import { findUnit, unitNames, units } from '../measure/units.js';
import type { Place } from '../read/finding.js';
import { didYouMean } from '../read/nearest.js';
import { quoted, quotedList } from '../read/quoted.js';
import { type Linking, report } from './linking.js';
import type { Fact, FactValue } from './rulebook.js';

/** Reads a quantity; reports one that cannot be read or does not measure what `like` (a UCUM code) measures. */
export function readQuantity(linking: Linking, text: string, place: Place, like?: string): Quantity | undefined {
  const result = parseQuantity(text);
  if (!result.ok) {
    report(
      linking,
      'E210',
      place,
      result.problem,
      result.unknownUnit === undefined ? undefined : unitHelp(result.unknownUnit, like),
    );
    return undefined;
  }
  const quantity = result.value;
  if (like === undefined) return quantity;
  const [got, wanted] = [dimensionOf(quantity), dimensionOf({ value: 0, unit: like })];
  if (got === wanted) return quantity;
  const message = `${quoted(text)} is ${describeDimension(got)}, expected ${describeDimension(wanted)}`;
  report(linking, 'E308', place, message, `write it in \`${writtenUnit(like)}\``);
  return undefined;
}

/** Reads an interval; reports one that cannot be read. */
export function readInterval(linking: Linking, text: string, place: Place): Interval | undefined {
  const result = parseInterval(text);
  if (result.ok) return result.value;
  const near = result.unknownUnit === undefined ? undefined : didYouMean(result.unknownUnit, unitNames());
  report(linking, 'E210', place, result.problem, near ?? 'write `1 wk`, `20 cycles` or `1 wk or 20 cycles`');
  return undefined;
}

/** The UCUM code of a unit; reports one that is not known. */
export function readUnit(linking: Linking, name: string, place: Place): string | undefined {
  const unit = findUnit(name);
  if (unit === undefined) report(linking, 'E210', place, `unknown unit ${quoted(name)}`, unitHelp(name, undefined));
  return unit?.ucum;
}

/** What to write instead: the unit most like an unknown one, the one asked for, or any of them. */
function unitHelp(unknownUnit: string, like: string | undefined): string {
  const instead = like === undefined ? `units are ${quotedList(writtenUnits)}` : `write it in \`${writtenUnit(like)}\``;
  return didYouMean(unknownUnit, unitNames()) ?? instead;
}

const writtenUnits = units.map(({ ucum }) => writtenUnit(ucum));

/** A value that does not fit its fact: what was expected, in words. */
export interface Misfit {
  code: 'E210' | 'E302' | 'E308' | 'E309' | 'E318';
  message: string;
  help?: string | undefined;
}

/** Turns what somebody wrote into a fact's value (quantities in the base unit), or says why it cannot be. */
export function readFactValue(fact: Fact, raw: unknown): { value: FactValue } | Misfit {
  switch (fact.type) {
    case 'boolean':
      return typeof raw === 'boolean' ? { value: raw } : misfit(fact, raw, 'true or false');
    case 'enum':
    case 'answer':
      return typeof raw === 'string' ? (unknownMember(fact, raw) ?? { value: raw }) : misfit(fact, raw, 'one word');
    case 'set': {
      if (!Array.isArray(raw)) return misfit(fact, raw, 'a list', 'write it as a list: `[a, b]`');
      const members = raw.map(String);
      return (
        members.map((member) => unknownMember(fact, member)).find((each) => each !== undefined) ?? {
          value: [...new Set(members)].sort(),
        }
      );
    }
    case 'count':
      return typeof raw === 'number' && Number.isSafeInteger(raw) && raw >= 0
        ? { value: raw }
        : misfit(fact, raw, 'a whole number of 0 or more');
    case 'date': {
      const day = typeof raw === 'string' ? dayNumber(raw) : undefined;
      return day === undefined ? misfit(fact, raw, 'a date', 'write it as YYYY-MM-DD') : { value: day };
    }
    case 'quantity':
      return readFactQuantity(fact, raw);
  }
}

/** No quantity takes more characters. */
const longestQuantity = 60;

function readFactQuantity(fact: Fact, raw: unknown): { value: FactValue } | Misfit {
  const unit = fact.unit ?? '1';
  const help = `it is measured in \`${writtenUnit(unit)}\``;
  if ((typeof raw !== 'string' || raw.length > longestQuantity) && typeof raw !== 'number')
    return misfit(fact, raw, 'a number and a unit', help);
  const result = typeof raw === 'number' ? plainNumber(raw, unit) : parseQuantity(raw);
  if (!result.ok)
    return {
      code: 'E210',
      message: `\`${fact.id}\`: ${result.problem}`,
      help: didYouMean(result.unknownUnit ?? '', unitNames()) ?? help,
    };
  const [got, wanted] = [dimensionOf(result.value), dimensionOf({ value: 0, unit })];
  const written = quoted(String(raw));
  if (got !== wanted)
    return {
      code: 'E308',
      message: `${written} is ${describeDimension(got)}, expected ${describeDimension(wanted)} for \`${fact.id}\``,
      help,
    };
  const value = inBaseUnit(result.value);
  if (fact.minimum !== undefined && value < inBaseUnit(fact.minimum)) return outOfBounds(fact, `${written} is less`);
  if (fact.maximum !== undefined && value > inBaseUnit(fact.maximum)) return outOfBounds(fact, `${written} is more`);
  return { value };
}

function outOfBounds({ id, minimum, maximum }: Fact, isLess: string): Misfit {
  const bounds = [
    ...(minimum === undefined ? [] : [`at least ${formatQuantity(minimum)}`]),
    ...(maximum === undefined ? [] : [`at most ${formatQuantity(maximum)}`]),
  ];
  return { code: 'E318', message: `${isLess} than \`${id}\` can be`, help: bounds.join(', ') };
}

function plainNumber(value: number, unit: string): Parsed<Quantity> {
  const problem = whyImpossible({ value, unit });
  return problem === undefined ? { ok: true, value: { value, unit } } : { ok: false, problem: `\`${value}\` ${problem}` };
}

/** Says that a word is not a member of an enumeration, set or answer, if it is not. */
export function unknownMember(fact: Fact, member: string): Misfit | undefined {
  if (fact.members.includes(member)) return undefined;
  return {
    code: 'E302',
    message: `${quoted(member)} is not a member of \`${fact.id}\``,
    help: didYouMean(member, fact.members) ?? `members are ${quotedList(fact.members)}`,
  };
}

/** Whether a fact was itself written wrongly, so that nothing more can be said about its values. */
export function isHollow({ type, members, unit }: Fact): boolean {
  if (type === 'quantity') return unit === undefined;
  return (type === 'enum' || type === 'set' || type === 'answer') && members.length === 0;
}

function misfit(fact: Fact, raw: unknown, expected: string, help?: string): Misfit {
  const got = Array.isArray(raw) ? 'a list' : raw === null ? 'nothing' : typeof raw === 'object' ? 'a map' : quoted(String(raw));
  return { code: 'E309', message: `expected ${expected} for \`${fact.id}\`, got ${got}`, help: help ?? fact.question };
}
