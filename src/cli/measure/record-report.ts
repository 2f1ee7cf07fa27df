import { countings } from '../../measure/count-readings.js';
import { moistHeatZ } from '../../measure/lethality.js';
import type { Quantity } from '../../measure/quantity.js';
import type { CycleRecord } from '../../measure/record/cycle-record.js';
import { sayLength } from '../../measure/record/draw-chart.js';
import type { ChannelMeasures, RecordMeasures, Settings, SteamMatch } from '../../measure/record/measure-record.js';
import { steamTolerance } from '../../measure/steam.js';
import { asData, type Report, say } from './report.js';

const celsius = (value: number) => ({ value, unit: 'Cel' });
const kelvins = (value: number) => ({ value, unit: 'K' });

/** Everything that a record comes to. */
export function recordReport(record: CycleRecord, measures: RecordMeasures, settings: Settings): Report {
  const { readings, seconds, channels } = measures;
  return join(
    {
      rows: [
        [
          'record',
          `${readings} readings of ${channels.length === 1 ? 'one sensor' : `${channels.length} sensors`} in ${sayLength(seconds)}`,
        ],
        ...channels.map(({ name, lowest, highest }): [string, string] => [
          name,
          `${say(celsius(lowest), 1)} to ${say(celsius(highest), 1)}`,
        ]),
      ],
      data: {
        readings,
        length: { value: seconds, unit: 's' },
        channels: channels.map(({ name, lowest, highest, a0, f0 }) => ({
          name,
          lowest: asData(celsius(lowest)),
          highest: asData(celsius(highest)),
          a0: asData(a0),
          f0: asData(f0),
        })),
      },
    },
    a0Report(measures, settings),
    f0Report(measures, settings),
    holdReport(record, measures, settings),
    steamReport(measures),
    countingReport(settings),
  );
}

export function a0Report({ worst, channels }: RecordMeasures, _: Settings): Report {
  return {
    rows: [
      [
        'A0',
        `${sayA0(worst.a0.a0)}${ofWorst(worst.a0, channels)}; ISO 15883-1, z 10 K, from 65 °C; hot air while drying is counted too`,
      ],
    ],
    data: { a0: { ...asData(worst.a0.a0), channel: worst.a0.name, z: moistHeatZ, from: celsius(65), source: 'ISO 15883-1' } },
  };
}

export function f0Report({ worst, channels }: RecordMeasures, { reference }: Settings): Report {
  const at = say(reference, 2);
  return {
    rows: [
      ['F0', `${say(worst.f0.f0, 2, 'down')}${ofWorst(worst.f0, channels)}; at ${at}, z 10 K; counts only in saturated steam`],
    ],
    data: {
      f0: {
        ...asData(worst.f0.f0),
        channel: worst.f0.name,
        reference: asData(reference),
        z: moistHeatZ,
        source: 'Ph. Eur. 5.1.5',
      },
    },
  };
}

export function holdReport({ seconds }: CycleRecord, { hold, channels }: RecordMeasures, { band }: Settings): Report {
  if (band === undefined)
    return { rows: [['hold', 'not looked for: state its band, such as `--from "134 °C" --band "3 K"`']], data: {} };
  const inBand = `with ${channels.length === 1 ? 'its sensor' : 'every sensor'} from ${say(celsius(band.from), 2)} to ${say(celsius(band.to), 2)}`;
  const data = { band: { from: celsius(band.from), to: celsius(band.to) } };
  if (hold === undefined)
    return { rows: [['hold', `none ${inBand}`]], data: { hold: { ...data, time: { value: 0, unit: 's' } } } };
  const start = seconds[hold.first] ?? 0;
  const each = channels.map(({ name, hold: own }) => ({ name, time: { value: own?.seconds ?? 0, unit: 's' } }));
  return {
    rows: [
      ['hold', `${sayLength(hold.seconds)} ${inBand}, from ${sayLength(start)} after the first reading`],
      ['in the hold', `at least ${sayA0(hold.a0)}, ${say(hold.f0, 2, 'down')} for every sensor`],
      ...(each.length < 2 ? [] : each.map(({ name, time }): [string, string] => [`hold of ${name}`, sayLength(time.value)])),
    ],
    data: {
      hold: {
        ...data,
        time: { value: hold.seconds, unit: 's' },
        start: { value: start, unit: 's' },
        a0: asData(hold.a0),
        f0: asData(hold.f0),
        channels: each,
      },
    },
  };
}

export function steamReport({ steam }: RecordMeasures): Report {
  if (steam === undefined) return { rows: [], data: {} };
  const { lowest, highest, channels, matches } = steam;
  return {
    rows: [
      ['steam', `${saturated(steam)}; IAPWS-IF97`],
      ...channels.map(({ name, least, most }): [string, string] => [
        `${name} less steam`,
        `${say(kelvins(least), 2)} to ${say(kelvins(most), 2)}`,
      ]),
    ],
    data: {
      steam: {
        matches,
        tolerance: kelvins(steamTolerance),
        lowest: asData(celsius(lowest)),
        highest: asData(celsius(highest)),
        channels: channels.map(({ name, least, most }) => ({ name, least: asData(kelvins(least)), most: asData(kelvins(most)) })),
        source: 'IAPWS R7-97(2012)',
      },
    },
  };
}

export function countingReport({ counting }: Settings): Report {
  return { rows: [['counted', countings[counting]]], data: { counting, counted: countings[counting] } };
}

export function join(...reports: readonly Report[]): Report {
  return { rows: reports.flatMap(({ rows }) => rows), data: Object.assign({}, ...reports.map(({ data }) => data)) };
}

/** Rounded down; where it is large, to a whole number. */
function sayA0(a0: Quantity): string {
  return say(a0, a0.value < 100 ? 1 : 0, 'down');
}

function saturated({ lowest, highest, matches }: SteamMatch): string {
  const range = `${say(celsius(lowest), 2)} to ${say(celsius(highest), 2)} at the measured pressure in the hold`;
  return matches ? `matches within ${steamTolerance} K: ${range}` : `does not match within ${steamTolerance} K: ${range}`;
}

function ofWorst({ name }: ChannelMeasures, channels: readonly ChannelMeasures[]): string {
  return channels.length === 1 ? '' : ` at ${name}, the lowest of ${channels.length}`;
}
