import { dryHeatZ, f0Reference, moistHeatZ } from '../../measure/lethality.js';
import { convertQuantity, inBaseUnit, type Quantity } from '../../measure/quantity.js';
import { airPressureAt } from '../../measure/steam.js';
import { BadUse } from '../bad-use.js';
import type { Measurement } from './measurement.js';
import { readAir } from './open-record.js';
import { calculate, type Options, optionalQuantity, requiredQuantity } from './read-options.js';
import { asData, type Report, say } from './report.js';

const air: Measurement['options'] = [
  ['--altitude <length>', 'altitude of the place, for a gauge (default: sea level)'],
  ['--air <pressure>', 'pressure of the air as a barometer shows it, instead of an altitude'],
];

/** What heat and steam do: A0, F0, pressure, leaks, reductions. */
export const heatMeasurements: Readonly<Record<string, Measurement>> = {
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
      const [mbar, kpa] = [convertQuantity(rate, 'mbar/min'), rate];
      return {
        rows: [
          ['leak rate', `${say(mbar, 3)}, ${say(kpa, 4)}`],
          ['formula', '(end - start) / time; EN 285 allows 1.3 mbar/min, recalled'],
        ],
        data: { 'leak-rate': asData(mbar), formula: '(end - start) / time' },
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
};

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
  const f = convertQuantity(calculate('equivalent-time', { temperature, time, reference, z }), 'min');
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
    const everyWay = (each: Quantity) => ['kPa', 'bar', '[psi]'].map((unit) => say(convertQuantity(each, unit), 2)).join(', ');
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
    rows: [['temperature', `${say(result, 2)}, ${say(convertQuantity(result, '[degF]'), 1)}`], ...against.rows],
    data: { temperature: asData(result), ...against.data },
  };
}
