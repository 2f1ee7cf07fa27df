import { a0OfHold, a0OfReadings } from './a0.js';
import type { Counting } from './count-readings.js';
import { longestHold } from './hold.js';
import { leakRate } from './leak.js';
import { equivalentTime, f0OfHold, f0OfReadings, f0Reference, logReduction } from './lethality.js';
import { dimensionOf, inBaseUnit, type Quantity } from './quantity.js';
import { airPressureAt, saturationPressure, saturationTemperature } from './steam.js';
import type { Dimension } from './units.js';
import {
  conductivityAt,
  conductivityCoefficient,
  conductivityReference,
  cyclesOfContainer,
  cyclesOfSalt,
  cyclesPerRegeneration,
  detergentPerCycle,
} from './water.js';

/** What a calculation is given under one name. */
export interface Input {
  /** `any` takes every dimension. */
  dimension: Dimension | 'any';
  optional?: true;
  /** A list of quantities in the order of time, such as the readings of one sensor. */
  many?: true;
}

/** Quantities by the names of a calculation's inputs; one quantity is a list of one. */
export type Given = Readonly<Record<string, readonly Quantity[]>>;

/** One calculation, as fixtures and commands call it. Formula and source stand with the function behind it. */
export interface Calculation {
  /** What it gives, as the start of a sentence: `A0 of a hold at one temperature`. */
  about: string;
  inputs: Readonly<Record<string, Input>>;
  /** `same`: that of the quantity it is given. */
  result: Dimension | 'same';
  /** @throws RangeError for quantities from which nothing can be worked out. */
  run: (given: Given) => Quantity;
}

const reference: Input = { dimension: 'temperature', optional: true };
const readings: Calculation['inputs'] = { readings: { dimension: 'temperature', many: true }, interval: { dimension: 'time' } };
/** Two ways to say against which pressure a gauge measures. */
const air: Calculation['inputs'] = {
  altitude: { dimension: 'length', optional: true },
  air: { dimension: 'pressure', optional: true },
};

/** Every calculation by its name. `rules/schema/fixture.json` lists the same names. */
export const calculations: Readonly<Record<string, Calculation>> = {
  a0: {
    about: 'A0 of a hold at one temperature',
    inputs: { temperature: { dimension: 'temperature' }, time: { dimension: 'time' } },
    result: 'A0',
    run: (given) => a0OfHold(one(given, 'temperature'), one(given, 'time')),
  },
  'a0-lower': a0OfSteps('lower', 'A0 of readings, each step with the lower of its two'),
  'a0-held': a0OfSteps('held', 'A0 of readings, each held until the next one'),
  'a0-mean': a0OfSteps('mean', 'A0 of readings, each step with the mean of its two rates'),
  f0: {
    about: 'F0 of a hold in saturated steam',
    inputs: { temperature: { dimension: 'temperature' }, time: { dimension: 'time' }, reference },
    result: 'F0',
    run: (given) => f0OfHold(one(given, 'temperature'), one(given, 'time'), maybe(given, 'reference')),
  },
  'f0-lower': f0OfSteps('lower', 'F0 of readings, each step with the lower of its two'),
  'f0-held': f0OfSteps('held', 'F0 of readings, each held until the next one'),
  'f0-mean': f0OfSteps('mean', 'F0 of readings, each step with the mean of its two rates'),
  'equivalent-time': {
    about: 'time at a reference temperature with the same effect',
    inputs: {
      temperature: { dimension: 'temperature' },
      time: { dimension: 'time' },
      reference: { dimension: 'temperature' },
      z: { dimension: 'temperature difference' },
    },
    result: 'time',
    run: (given) => equivalentTime(one(given, 'temperature'), one(given, 'time'), one(given, 'reference'), one(given, 'z')),
  },
  'log-reduction': {
    about: 'powers of ten by which a population falls',
    inputs: { 'd-value': { dimension: 'time' }, time: { dimension: 'time' } },
    result: 'log reduction',
    run: (given) => logReduction(one(given, 'd-value'), one(given, 'time')),
  },
  hold: {
    about: 'longest time that readings stay within a band',
    inputs: { ...readings, from: { dimension: 'temperature' }, to: { dimension: 'temperature' } },
    result: 'time',
    run: (given) => {
      const band = { from: inBaseUnit(one(given, 'from')), to: inBaseUnit(one(given, 'to')) };
      const { seconds, celsius } = stepsOf(given);
      return { value: longestHold(seconds, [celsius], band)?.seconds ?? 0, unit: 's' };
    },
  },
  'steam-pressure': {
    about: 'absolute pressure of saturated steam',
    inputs: { temperature: { dimension: 'temperature' } },
    result: 'pressure',
    run: (given) => kilopascals(saturationPressure(inBaseUnit(one(given, 'temperature')))),
  },
  'steam-gauge': {
    about: 'gauge pressure of saturated steam',
    inputs: { temperature: { dimension: 'temperature' }, ...air },
    result: 'pressure',
    run: (given) => kilopascals(saturationPressure(inBaseUnit(one(given, 'temperature'))) - airPressure(given)),
  },
  'steam-temperature': {
    about: 'temperature of saturated steam at an absolute pressure',
    inputs: { pressure: { dimension: 'pressure' } },
    result: 'temperature',
    run: (given) => ({ value: saturationTemperature(inBaseUnit(one(given, 'pressure'))), unit: 'Cel' }),
  },
  'steam-temperature-of-gauge': {
    about: 'temperature of saturated steam at a gauge pressure',
    inputs: { pressure: { dimension: 'pressure' }, ...air },
    result: 'temperature',
    run: (given) => ({ value: saturationTemperature(inBaseUnit(one(given, 'pressure')) + airPressure(given)), unit: 'Cel' }),
  },
  'steam-difference': {
    about: 'measured temperature less that of saturated steam at the measured absolute pressure',
    inputs: { temperature: { dimension: 'temperature' }, pressure: { dimension: 'pressure' } },
    result: 'temperature difference',
    run: (given) => {
      const theoretical = saturationTemperature(inBaseUnit(one(given, 'pressure')));
      return { value: inBaseUnit(one(given, 'temperature')) - theoretical, unit: 'K' };
    },
  },
  'air-pressure': {
    about: 'pressure of the standard atmosphere at an altitude',
    inputs: { altitude: { dimension: 'length' } },
    result: 'pressure',
    run: (given) => kilopascals(airPressureAt(one(given, 'altitude'))),
  },
  'leak-rate': {
    about: 'mean rise of pressure in a leak test',
    inputs: { start: { dimension: 'pressure' }, end: { dimension: 'pressure' }, time: { dimension: 'time' } },
    result: 'pressure rate',
    run: (given) => leakRate(one(given, 'start'), one(given, 'end'), one(given, 'time')),
  },
  convert: {
    about: 'the same quantity in another unit',
    inputs: { quantity: { dimension: 'any' } },
    result: 'same',
    run: (given) => one(given, 'quantity'),
  },
  conductivity: {
    about: 'conductivity of dilute salt water at a reference temperature',
    inputs: {
      conductivity: { dimension: 'conductivity' },
      temperature: { dimension: 'temperature' },
      reference: { dimension: 'temperature', optional: true },
      coefficient: { dimension: 'temperature coefficient', optional: true },
    },
    result: 'conductivity',
    run: (given) =>
      conductivityAt(
        one(given, 'conductivity'),
        one(given, 'temperature'),
        maybe(given, 'reference') ?? conductivityReference,
        maybe(given, 'coefficient') ?? conductivityCoefficient,
      ),
  },
  softener: {
    about: 'cycles between two regenerations of a softener',
    inputs: {
      hardness: { dimension: 'water hardness' },
      left: { dimension: 'water hardness', optional: true },
      volume: { dimension: 'volume' },
      capacity: { dimension: 'mass' },
    },
    result: 'cycles',
    run: (given) =>
      cyclesPerRegeneration(
        one(given, 'hardness'),
        maybe(given, 'left') ?? { value: 0, unit: 'mg{CaCO3}/L' },
        one(given, 'volume'),
        one(given, 'capacity'),
      ),
  },
  'softener-salt': {
    about: 'cycles that a stock of salt lasts',
    inputs: { stock: { dimension: 'mass' }, salt: { dimension: 'mass' }, cycles: { dimension: 'cycles' } },
    result: 'cycles',
    run: (given) => cyclesOfSalt(one(given, 'stock'), one(given, 'salt'), one(given, 'cycles')),
  },
  'detergent-dose': {
    about: 'volume of a product that one cycle takes',
    inputs: { dose: { dimension: 'dose' }, volume: { dimension: 'volume' } },
    result: 'volume',
    run: (given) => detergentPerCycle(one(given, 'dose'), one(given, 'volume')),
  },
  'detergent-cycles': {
    about: 'cycles that a container lasts',
    inputs: { container: { dimension: 'volume' }, 'per-cycle': { dimension: 'volume' } },
    result: 'cycles',
    run: (given) => cyclesOfContainer(one(given, 'container'), one(given, 'per-cycle')),
  },
};

/**
 * Runs a calculation after a look at what it is given.
 *
 * @throws RangeError when a quantity is missing, of another dimension, or such that nothing can be worked out.
 */
export function runCalculation(calculation: Calculation, given: Given): Quantity {
  for (const [name, { dimension, optional, many }] of Object.entries(calculation.inputs)) {
    const quantities = given[name] ?? [];
    if (quantities.length === 0 && !optional) throw new RangeError(`${name} is missing`);
    if (quantities.length > 1 && !many) throw new RangeError(`${name} is given more than once`);
    for (const each of quantities)
      if (dimension !== 'any' && dimensionOf(each) !== dimension)
        throw new RangeError(`${name} is a ${dimensionOf(each)}, not a ${dimension}`);
  }
  const result = calculation.run(given);
  if (!Number.isFinite(result.value)) throw new RangeError('the result is beyond all bounds');
  return result;
}

function a0OfSteps(counting: Counting, about: string): Calculation {
  const run = (given: Given) => {
    const { seconds, celsius } = stepsOf(given);
    return a0OfReadings(seconds, celsius, counting);
  };
  return { about, inputs: readings, result: 'A0', run };
}

function f0OfSteps(counting: Counting, about: string): Calculation {
  const run = (given: Given) => {
    const { seconds, celsius } = stepsOf(given);
    return f0OfReadings(seconds, celsius, counting, maybe(given, 'reference') ?? f0Reference);
  };
  return { about, inputs: { ...readings, reference }, result: 'F0', run };
}

/** Readings at equal intervals, the first at the start. */
function stepsOf(given: Given): { seconds: number[]; celsius: number[] } {
  const interval = inBaseUnit(one(given, 'interval'));
  if (interval === 0) throw new RangeError('the interval between readings is above zero');
  const celsius = (given['readings'] ?? []).map(inBaseUnit);
  return { celsius, seconds: celsius.map((_, index) => index * interval) };
}

/** The pressure of the air in kPa: as stated, or that of the standard atmosphere at the altitude, or at sea level. */
function airPressure(given: Given): number {
  const stated = maybe(given, 'air');
  return stated === undefined ? airPressureAt(maybe(given, 'altitude') ?? { value: 0, unit: 'm' }) : inBaseUnit(stated);
}

function kilopascals(value: number): Quantity {
  return { value, unit: 'kPa' };
}

function one(given: Given, name: string): Quantity {
  const [first] = given[name] ?? [];
  if (first === undefined) throw new RangeError(`${name} is missing`);
  return first;
}

function maybe(given: Given, name: string): Quantity | undefined {
  return given[name]?.[0];
}
