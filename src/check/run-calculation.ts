import { calculations, type Given, runCalculation as run } from '../measure/calculations.js';
import { convertQuantity, dimensionOf, formatQuantity, inBaseUnit, type Quantity } from '../measure/quantity.js';
import { findUnit } from '../measure/units.js';
import { didYouMean } from '../read/nearest.js';
import { quoted, quotedList } from '../read/quoted.js';
import { FixtureError, type FixtureThat, known, readPublished, type Wrong } from './fixture-parts.js';

type Fixture = FixtureThat<'calculation'>;

/**
 * Works out what a fixture asks for and compares it with the published result: within `within` where it is stated, and
 * otherwise to the last digit that the source prints.
 */
export function runCalculation(fixture: Fixture): Wrong | undefined {
  const { calculation: name, result: text } = fixture;
  const calculation = known('E402', 'calculation', name, new Map(Object.entries(calculations)), ['calculation']);
  const result = resultOf(name, readGiven(fixture, calculation.inputs));
  const published = readPublished(text, calculation.result === 'same' ? dimensionOf(result) : calculation.result, ['result']);
  const actual = convertQuantity(result, published.unit);
  const within = fixture.within === undefined ? halfOfLastDigit(text) : readWithin(fixture.within, published);
  if (Math.abs(actual.value - published.value) <= within * (1 + 1e-9)) return undefined;
  const said = formatQuantity({ ...actual, value: Number(actual.value.toPrecision(9)) });
  return { code: 'E402', at: ['result'], message: `the calculation gives ${said}, published is ${formatQuantity(published)}` };
}

function readGiven({ calculation, given }: Fixture, inputs: (typeof calculations)[string]['inputs']): Given {
  const names = Object.keys(inputs);
  const stray = Object.keys(given).find((each) => !names.includes(each));
  if (stray !== undefined)
    throw new FixtureError({
      code: 'E402',
      at: ['given', stray],
      message: `\`${calculation}\` is not worked out from ${quoted(stray)}`,
      help: didYouMean(stray, names) ?? `it is worked out from ${quotedList(names)}`,
    });
  const missing = names.filter((each) => !inputs[each]?.optional && given[each] === undefined);
  if (missing.length > 0)
    throw new FixtureError({
      code: 'E402',
      at: ['given'],
      message: `\`${calculation}\` is also worked out from ${quotedList(missing)}`,
      help: 'give all of them',
    });
  return Object.fromEntries(
    Object.entries(given).map(([each, text]) => {
      const { dimension = 'any', many = false } = inputs[each] ?? {};
      const texts = many ? text.split(',').map((part) => part.trim()) : [text];
      return [each, texts.map((part) => readPublished(part, dimension, ['given', each]))];
    }),
  );
}

function resultOf(name: string, given: Given): Quantity {
  const calculation = calculations[name];
  try {
    if (calculation !== undefined) return run(calculation, given);
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    throw new FixtureError({ code: 'E402', at: ['given'], message: `nothing can be worked out: ${error.message}` });
  }
  throw new RangeError(`no calculation ${name}`);
}

/** How far a result may be from a number of which the source prints so many digits. */
function halfOfLastDigit(text: string): number {
  const [, decimals = '', exponent = '0'] = /\d(?:\.(\d+))?(?:e(-?\d+))?/.exec(text.replace(/^[AF]0 /, '')) ?? [];
  return 0.5 * 10 ** (Number(exponent) - decimals.length);
}

/** A tolerance as a number of the published unit. */
function readWithin(text: string, published: Quantity): number {
  const wanted = dimensionOf(published) === 'temperature' ? 'temperature difference' : dimensionOf(published);
  return inBaseUnit(readPublished(text, wanted, ['within'])) / (findUnit(published.unit)?.factor ?? 1);
}
