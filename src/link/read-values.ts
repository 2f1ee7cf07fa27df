import { type Interval, parseInterval } from '../measure/interval.js';
import { dimensionOf, inBaseUnit, type Parsed, parseQuantity, type Quantity } from '../measure/quantity.js';
import { findUnit, unitNames } from '../measure/units.js';
import type { Place } from '../read/finding.js';
import { didYouMean } from '../read/nearest.js';
import { type Linking, report } from './linking.js';
import type { Fact, FactValue } from './rulebook.js';

/** Reads a quantity; reports one that cannot be read or does not measure what `like` (a UCUM code) measures. */
export function readQuantity(linking: Linking, text: string, place: Place, like?: string): Quantity | undefined {
  const quantity = parsed(linking, parseQuantity(text), place);
  if (quantity === undefined || like === undefined) return quantity;
  const [got, wanted] = [dimensionOf(quantity), dimensionOf({ value: 0, unit: like })];
  if (got === wanted) return quantity;
  report(
    linking,
    'E308',
    place,
    `unexpected unit in \`${text}\`, expected a ${wanted}`,
    `it is a ${got}; write it in \`${like}\``,
  );
  return undefined;
}

/** Reads an interval; reports one that cannot be read. */
export function readInterval(linking: Linking, text: string, place: Place): Interval | undefined {
  return parsed(linking, parseInterval(text), place);
}

/** The UCUM code of a unit; reports one that is not known. */
export function readUnit(linking: Linking, name: string, place: Place): string | undefined {
  const unit = findUnit(name);
  if (unit === undefined) report(linking, 'E210', place, `unknown unit \`${name}\``, didYouMean(name, unitNames()));
  return unit?.ucum;
}

function parsed<T>(linking: Linking, result: Parsed<T>, place: Place): T | undefined {
  if (result.ok) return result.value;
  const help =
    result.unknownUnit === undefined
      ? 'write a number, a space and a unit: `10 min`'
      : didYouMean(result.unknownUnit, unitNames());
  report(linking, 'E210', place, result.problem, help);
  return undefined;
}

/** The number of a calendar day since 1970-01-01, or undefined when there is no such day. */
export function dayNumber(date: string): number | undefined {
  const time = Date.parse(`${date}T00:00:00Z`);
  if (!/^\d{4}-\d\d-\d\d$/.test(date) || Number.isNaN(time) || new Date(time).toISOString().slice(0, 10) !== date)
    return undefined;
  return time / 86_400_000;
}

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
      return typeof raw === 'number' && Number.isInteger(raw) && raw >= 0 ? { value: raw } : misfit(fact, raw, 'a whole number');
    case 'date': {
      const day = typeof raw === 'string' ? dayNumber(raw) : undefined;
      return day === undefined ? misfit(fact, raw, 'a date', 'write it as YYYY-MM-DD') : { value: day };
    }
    case 'quantity':
      return readFactQuantity(fact, raw);
  }
}

function readFactQuantity(fact: Fact, raw: unknown): { value: FactValue } | Misfit {
  const unit = fact.unit ?? '1';
  if (typeof raw !== 'string' && (typeof raw !== 'number' || !Number.isFinite(raw)))
    return misfit(fact, raw, `a number and a unit, such as \`5 ${unit}\``);
  const result: Parsed<Quantity> = typeof raw === 'number' ? { ok: true, value: { value: raw, unit } } : parseQuantity(raw);
  if (!result.ok)
    return {
      code: 'E210',
      message: result.problem,
      help: didYouMean(result.unknownUnit ?? '', unitNames()) ?? `it is measured in \`${unit}\``,
    };
  const wanted = dimensionOf({ value: 0, unit });
  if (dimensionOf(result.value) !== wanted)
    return {
      code: 'E308',
      message: `unexpected unit in \`${String(raw)}\` for \`${fact.id}\`, expected a ${wanted}`,
      help: `it is measured in \`${unit}\``,
    };
  const value = inBaseUnit(result.value);
  if (fact.minimum !== undefined && value < inBaseUnit(fact.minimum))
    return { code: 'E318', message: `\`${String(raw)}\` is below the least possible value of \`${fact.id}\`` };
  if (fact.maximum !== undefined && value > inBaseUnit(fact.maximum))
    return { code: 'E318', message: `\`${String(raw)}\` is above the greatest possible value of \`${fact.id}\`` };
  return { value };
}

function unknownMember(fact: Fact, member: string): Misfit | undefined {
  if (fact.members.includes(member)) return undefined;
  return {
    code: 'E302',
    message: `\`${member}\` is not a member of \`${fact.id}\``,
    help: didYouMean(member, fact.members) ?? `members are ${fact.members.map((each) => `\`${each}\``).join(', ')}`,
  };
}

function misfit(fact: Fact, raw: unknown, expected: string, help?: string): Misfit {
  const got = Array.isArray(raw) ? 'a list' : `\`${String(raw)}\``;
  return { code: 'E309', message: `expected ${expected} for \`${fact.id}\`, got ${got}`, help: help ?? fact.question };
}
