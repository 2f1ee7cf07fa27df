import { convertQuantity, type Quantity } from '../../measure/quantity.js';
import { units } from '../../measure/units.js';
import { conductivityCoefficient, conductivityReference, hardnessClasses } from '../../measure/water.js';
import { BadUse } from '../bad-use.js';
import type { Measurement } from './measurement.js';
import { calculate, type Options, optionalQuantity, readQuantity, requiredQuantity } from './read-options.js';
import { asData, decimalsFor, type Report, say } from './report.js';

/** What water is like, and what it uses up: hardness, conductivity, salt, detergent. */
export const waterMeasurements: Readonly<Record<string, Measurement>> = {
  hardness: {
    about: 'hardness of water in every unit, and its class',
    args: ['<hardness>'],
    options: [],
    example: 'measure hardness "12 °dH"',
    run: ([text = '']) => measureHardness(readQuantity(text, 'water hardness', 'hardness')),
  },
  conductivity: {
    about: 'conductivity at a reference temperature',
    args: ['<conductivity>'],
    options: [
      ['--temperature <temperature>', 'temperature at which it was read'],
      ['--reference <temperature>', 'temperature for which it is wanted (default: 25 °C)'],
      ['--coefficient <coefficient>', 'change for each degree at 25 °C (default: 1.91 %/K)'],
    ],
    example: 'measure conductivity "12 µS/cm" --temperature "18 °C" --reference "20 °C"',
    run: ([text = ''], options) => {
      const reference = optionalQuantity(options, 'reference', 'temperature') ?? conductivityReference;
      const coefficient = optionalQuantity(options, 'coefficient', 'temperature coefficient') ?? conductivityCoefficient;
      const result = calculate('conductivity', {
        conductivity: readQuantity(text, 'conductivity', 'conductivity'),
        temperature: requiredQuantity(options, 'temperature', 'temperature'),
        reference,
        coefficient,
      });
      return {
        rows: [
          ['conductivity', `${say(result, decimalsFor(result.value))} at ${say(reference, 2)}`],
          ['formula', `linear, ${say(coefficient, 3)} at 25 °C; Standard Methods 2510 B; not for ultrapure water`],
        ],
        data: { conductivity: asData(result), reference: asData(reference), coefficient: asData(coefficient) },
      };
    },
  },
  softener: {
    about: 'cycles between regenerations of a softener, and how long its salt lasts',
    args: [],
    options: [
      ['--hardness <hardness>', 'hardness of the supply'],
      ['--left <hardness>', 'hardness behind the softener (default: none)'],
      ['--volume <volume>', 'softened water of one cycle'],
      ['--capacity <mass>', 'calcium carbonate that it takes up between regenerations'],
      ['--salt <mass>', 'salt of one regeneration'],
      ['--stock <mass>', 'salt in stock'],
    ],
    example: 'measure softener --hardness "14 gpg" --volume "6 gal" --capacity "8000 grains" --salt "2 lb" --stock "40 lb"',
    run: (_, options) => measureSoftener(options),
  },
  detergent: {
    about: 'dose of a product in one cycle, and how many cycles a container lasts',
    args: [],
    options: [
      ['--dose <dose>', 'dose in mL/L'],
      ['--volume <volume>', 'water that it is dosed into'],
      ['--container <volume>', 'what is in the container'],
    ],
    example: 'measure detergent --dose "5 mL/L" --volume "12 L" --container "5 L"',
    run: (_, options) => {
      const perCycle = calculate('detergent-dose', {
        dose: requiredQuantity(options, 'dose', 'dose'),
        volume: requiredQuantity(options, 'volume', 'volume'),
      });
      const container = optionalQuantity(options, 'container', 'volume');
      const cycles = container && calculate('detergent-cycles', { container, 'per-cycle': perCycle });
      return {
        rows: [
          ['one cycle', say(perCycle, 2)],
          ...(cycles === undefined ? [] : [['container', say(cycles, 0)] satisfies [string, string]]),
        ],
        data: { 'per-cycle': asData(perCycle), ...(cycles && { cycles: asData(cycles) }) },
      };
    },
  },
};

function measureHardness(hardness: Quantity): Report {
  const all = units
    .filter(({ dimension }) => dimension === 'water hardness')
    .map(({ ucum, many }) => ({ many, quantity: convertQuantity(calculate('convert', { quantity: hardness }), ucum) }));
  const classes = hardnessClasses(hardness);
  return {
    rows: [
      ...all.map(({ many, quantity }): [string, string] => [many, say(quantity, decimalsFor(quantity.value))]),
      ...classes.map(({ list, name }): [string, string] => ['class', `${name}, ${list}`]),
    ],
    data: { hardness: all.map(({ quantity }) => asData(quantity)), classes },
  };
}

function measureSoftener(options: Options): Report {
  const cycles = calculate('softener', {
    hardness: requiredQuantity(options, 'hardness', 'water hardness'),
    left: optionalQuantity(options, 'left', 'water hardness'),
    volume: requiredQuantity(options, 'volume', 'volume'),
    capacity: requiredQuantity(options, 'capacity', 'mass'),
  });
  const [salt, stock] = [optionalQuantity(options, 'salt', 'mass'), optionalQuantity(options, 'stock', 'mass')];
  if ((salt === undefined) !== (stock === undefined)) throw new BadUse('--salt and --stock go together');
  const lasts = salt && calculate('softener-salt', { stock, salt, cycles });
  return {
    rows: [
      ['regenerate', `every ${say(cycles, 0)} at the latest; the maker's reserve comes off`],
      ...(lasts === undefined ? [] : [['salt lasts', say(lasts, 0)] satisfies [string, string]]),
    ],
    data: { regenerate: asData(cycles), ...(lasts && { 'salt-lasts': asData(lasts) }) },
  };
}
