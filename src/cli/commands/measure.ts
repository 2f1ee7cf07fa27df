import type { Command } from 'commander';
import { dryHeatZ, f0Reference, moistHeatZ } from '../../measure/lethality.js';
import { inBaseUnit, type Quantity, writtenUnit } from '../../measure/quantity.js';
import { airPressureAt } from '../../measure/steam.js';
import { findUnit, unitNames, units } from '../../measure/units.js';
import { conductivityCoefficient, conductivityReference, hardnessClasses } from '../../measure/water.js';
import { didYouMean } from '../../read/nearest.js';
import { quoted, quotedList } from '../../read/quoted.js';
import { BadUse } from '../bad-use.js';
import { readAir } from '../measure/open-record.js';
import { calculate, type Options, optionalQuantity, readQuantity, requiredQuantity } from '../measure/read-options.js';
import { asData, decimalsFor, inUnit, type Report, say } from '../measure/report.js';

/** One thing to measure from quantities: how it is called, and what it answers. */
export interface Measurement {
  about: string;
  /** Positional arguments, as commander writes them. */
  args: string[];
  options: [flags: string, description: string][];
  example: string;
  run: (args: readonly string[], options: Options) => Report;
}

const air: Measurement['options'] = [
  ['--altitude <length>', 'altitude of the place, for a gauge (default: sea level)'],
  ['--air <pressure>', 'pressure of the air as a barometer shows it, instead of an altitude'],
];

/** Everything that `rulebook measure` works out from quantities, by name. */
export const measurements: Readonly<Record<string, Measurement>> = {
  a0: {
    about: 'A0 of a hold in hot water, or of a record',
    args: [],
    options: [
      ['--temperature <temperature>', 'temperature of the hold'],
      ['--time <time>', 'its length'],
    ],
    example: 'measure a0 --temperature "90 °C" --time "1 min"',
    run: (_, options) => {
      const a0 = calculate('a0', {
        temperature: requiredQuantity(options, 'temperature', 'temperature'),
        time: requiredQuantity(options, 'time', 'time'),
      });
      return {
        rows: [
          ['A0', say(a0, 1, 'down')],
          ['formula', 'seconds * 10^((T - 80) / 10), nothing below 65 °C; ISO 15883-1, Annex B'],
        ],
        data: { a0: { ...asData(a0), z: moistHeatZ, from: { value: 65, unit: 'Cel' }, source: 'ISO 15883-1' } },
      };
    },
  },
  f0: {
    about: 'F0 of a hold in saturated steam, or of a record',
    args: [],
    options: [
      ['--temperature <temperature>', 'temperature of the hold'],
      ['--time <time>', 'its length'],
      ['--z <difference>', 'another z than 10 K: gives F, the time at the reference'],
    ],
    example: 'measure f0 --temperature "134 °C" --time "3 min" --reference "121.1 °C"',
    run: (_, options) => measureF0(options),
  },
  steam: {
    about: 'saturated steam: pressure of a temperature, temperature of a pressure, or the match in a record',
    args: [],
    options: [
      ['--temperature <temperature>', 'gives the pressure, absolute and gauge'],
      ['--absolute <pressure>', 'gives the temperature of an absolute pressure'],
      ['--gauge <pressure>', 'gives the temperature of a gauge pressure'],
      ...air,
    ],
    example: 'measure steam --temperature "134 °C" --altitude "600 m"',
    run: (_, options) => measureSteam(options),
  },
  leak: {
    about: 'leak rate from two pressures',
    args: [],
    options: [
      ['--start <pressure>', 'pressure at the start of the test'],
      ['--end <pressure>', 'pressure at its end'],
      ['--time <time>', 'length of the test'],
    ],
    example: 'measure leak --start "50 mbar" --end "58 mbar" --time "10 min"',
    run: (_, options) => {
      const rate = calculate('leak-rate', {
        start: requiredQuantity(options, 'start', 'pressure'),
        end: requiredQuantity(options, 'end', 'pressure'),
        time: requiredQuantity(options, 'time', 'time'),
      });
      const [mbar, kpa] = [inUnit(rate, 'mbar/min'), rate];
      return {
        rows: [
          ['leak rate', `${say(mbar, 3)}, ${say(kpa, 4)}`],
          ['formula', '(end - start) / time; EN 285 allows 1.3 mbar/min, recalled'],
        ],
        data: { 'leak-rate': asData(mbar), formula: '(end - start) / time' },
      };
    },
  },
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
  reduction: {
    about: 'powers of ten by which germs fall, from their D value',
    args: [],
    options: [
      ['--d-value <time>', 'time for one power of ten at this temperature'],
      ['--time <time>', 'time at this temperature'],
    ],
    example: 'measure reduction --d-value "1.5 min" --time "18 min"',
    run: (_, options) => {
      const result = calculate('log-reduction', {
        'd-value': requiredQuantity(options, 'dValue', 'time'),
        time: requiredQuantity(options, 'time', 'time'),
      });
      return {
        rows: [
          ['reduction', say(result, 2, 'down')],
          ['formula', 'time / D value, survivors on a straight line; ISO 11138-1'],
        ],
        data: { reduction: asData(result) },
      };
    },
  },
  convert: {
    about: 'a quantity in another unit',
    args: ['<quantity>', '<unit>'],
    options: [],
    example: 'measure convert "30 psi" kPa',
    run: ([text = '', name = '']) => {
      const quantity = readQuantity(text, 'any', 'quantity');
      const unit = findUnit(name);
      if (unit === undefined) throw new BadUse(`unknown unit ${quoted(name)}`, didYouMean(name, unitNames()));
      const own = findUnit(quantity.unit)?.dimension;
      if (unit.dimension !== own) {
        const fitting = units.filter(({ dimension }) => dimension === own).map(({ ucum }) => writtenUnit(ucum));
        throw new BadUse(`${quoted(text)} is no ${unit.dimension}`, `units for it are ${quotedList(fitting)}`);
      }
      const result = inUnit(calculate('convert', { quantity }), unit.ucum);
      return {
        rows: [
          [text, say(result, decimalsFor(result.value) + 2)],
          ['UCUM', unit.ucum],
        ],
        data: { from: asData(quantity), to: asData(result) },
      };
    },
  },
};

/** The example of a measurement, for its help. */
export function addExample(command: Command, example: string): Command {
  return command.addHelpText('after', `\nExample:\n  rulebook ${example}`);
}

function measureF0(options: Options): Report {
  const temperature = requiredQuantity(options, 'temperature', 'temperature');
  const time = requiredQuantity(options, 'time', 'time');
  const z = optionalQuantity(options, 'z', 'temperature difference') ?? moistHeatZ;
  const reference = optionalQuantity(options, 'reference', 'temperature') ?? f0Reference;
  const formula = 'time * 10^((T - reference) / z); Ph. Eur. 5.1.5';
  if (inBaseUnit(z) === inBaseUnit(moistHeatZ)) {
    const f0 = calculate('f0', { temperature, time, reference });
    return {
      rows: [
        ['F0', `${say(f0, 2, 'down')} at ${say(reference, 2)}, z 10 K; counts only in saturated steam`],
        ['formula', formula],
      ],
      data: { f0: { ...asData(f0), reference: asData(reference), z: moistHeatZ, source: 'Ph. Eur. 5.1.5' } },
    };
  }
  const f = inUnit(calculate('equivalent-time', { temperature, time, reference, z }), 'min');
  const usual = inBaseUnit(z) === inBaseUnit(dryHeatZ) ? '; z of dry heat' : '';
  return {
    rows: [
      ['F', `${say(f, 2, 'down')} at ${say(reference, 2)}, z ${say(z, 2)}${usual}`],
      ['formula', formula],
    ],
    data: { f: { ...asData(f), reference: asData(reference), z: asData(z), source: 'Ph. Eur. 5.1.5' } },
  };
}

function measureSteam(options: Options): Report {
  const temperature = optionalQuantity(options, 'temperature', 'temperature');
  const [absolute, gauge] = [optionalQuantity(options, 'absolute', 'pressure'), optionalQuantity(options, 'gauge', 'pressure')];
  if ([temperature, absolute, gauge].filter((each) => each !== undefined).length !== 1)
    throw new BadUse('give one of --temperature, --absolute and --gauge', 'or --file for a record');
  const airPressure: Quantity = { value: readAir(options) ?? airPressureAt({ value: 0, unit: 'm' }), unit: 'kPa' };
  const against: Report = {
    rows: [
      ['air', say(airPressure, 2)],
      ['formula', 'saturation line of water, IAPWS-IF97 region 4'],
    ],
    data: { air: asData(airPressure), source: 'IAPWS R7-97(2012)' },
  };
  if (temperature !== undefined) {
    const pressure = calculate('steam-pressure', { temperature });
    const above = calculate('steam-gauge', { temperature, air: airPressure });
    const everyWay = (each: Quantity) => ['kPa', 'bar', '[psi]'].map((unit) => say(inUnit(each, unit), 2)).join(', ');
    return {
      rows: [['absolute', everyWay(pressure)], ['gauge', everyWay(above)], ...against.rows],
      data: { absolute: asData(pressure), gauge: asData(above), ...against.data },
    };
  }
  const result =
    absolute === undefined
      ? calculate('steam-temperature-of-gauge', { pressure: gauge, air: airPressure })
      : calculate('steam-temperature', { pressure: absolute });
  return {
    rows: [['temperature', `${say(result, 2)}, ${say(inUnit(result, '[degF]'), 1)}`], ...against.rows],
    data: { temperature: asData(result), ...against.data },
  };
}

function measureHardness(hardness: Quantity): Report {
  const all = units
    .filter(({ dimension }) => dimension === 'water hardness')
    .map(({ ucum, many }) => ({ many, quantity: inUnit(calculate('convert', { quantity: hardness }), ucum) }));
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
