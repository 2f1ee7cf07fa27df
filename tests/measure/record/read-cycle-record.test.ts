import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readCycleRecord } from '../../../src/measure/record/read-cycle-record.js';

const records = new URL('../records/', import.meta.url);
const bytes = (text: string) => new TextEncoder().encode(text);
const read = (text: string) => readCycleRecord(bytes(text));

/** `line:column code message` of each problem. */
function problems(input: string | Uint8Array): string[] {
  const result = readCycleRecord(typeof input === 'string' ? bytes(input) : input);
  if (result.ok) throw new Error('it is read');
  return result.problems.map(({ line, column, code, message }) => `${line}:${column} ${code} ${message}`);
}

const head = 'time (s),temperature 1 (°C),pressure (kPa absolute)\n';
const good = `${head}0,100.5,101\n10,120,200.25\n20,134.1,304\n`;
const times = (...all: string[]) => `time,temperature 1 (°C)\n${all.map((each) => `${each},90\n`).join('')}`;

describe('a cycle record', () => {
  it('is read as it stands', () => {
    expect(read(good)).toEqual({
      ok: true,
      record: {
        seconds: [0, 10, 20],
        temperatures: [{ name: 'temperature 1', celsius: [100.5, 120, 134.1] }],
        pressure: { name: 'pressure', against: 'vacuum', kilopascals: [101, 200.25, 304] },
      },
    });
  });

  it.each([
    ['a byte order mark', `\u{feff}${good}`],
    ['lines ended as on Windows', good.replaceAll('\n', '\r\n')],
    ['lines ended as on an old Mac', good.replaceAll('\n', '\r')],
    ['blank lines', good.replaceAll('\n', '\n\n')],
    ['blanks around cells', good.replaceAll(',', ' , ')],
    ['quotes', good.replaceAll(/(\d+\.\d+)/g, '"$1"')],
    ['semicolons', good.replaceAll(',', ';')],
    ['semicolons and decimal commas', good.replaceAll(',', ';').replaceAll('.', ',')],
    ['capitals', good.replace('time', 'Time').replace('temperature', 'Temperature')],
    [
      'times in minutes that do not start at zero',
      good.replace('time (s)', 'time (min)').replace(/^(\d+),/gm, (_, s) => `${7 + Number(s) / 60},`),
    ],
  ])('is the same with %s', (_, text) => {
    const rounded = text.replace(/^7\.1666\d*/m, '7.166667').replace(/^7\.3333\d*/m, '7.333333');
    const result = read(rounded);
    expect(result.ok && result.record.seconds.map((each) => Math.round(each))).toEqual([0, 10, 20]);
    expect(result).toMatchObject({ ok: true, record: { temperatures: [{ celsius: [100.5, 120, 134.1] }] } });
  });

  it('is read in other units', () => {
    const result = read('time (s);temperature (°F);pressure chamber (psi gauge)\n0;212;0\n5;250;15\n10;273,2;30\n');
    expect(result).toMatchObject({
      ok: true,
      record: { temperatures: [{ name: 'temperature', celsius: [100, 121.111111111, 134] }], pressure: { against: 'air' } },
    });
  });

  it.each([
    ['clock times', times('14:05:30', '14:05:40', '14:05:50.5'), [0, 10, 20.5]],
    ['dates across midnight', times('2026-03-01T23:59:55', '2026-03-02T00:00:05', '2026-03-02 00:00:15'), [0, 10, 20]],
    ['zones', times('2026-03-01T12:00:00Z', '2026-03-01T14:00:10+02:00', '2026-03-01T07:00:20-05:00'), [0, 10, 20]],
  ])('has %s', (_, text, seconds) => {
    expect(read(text)).toMatchObject({ ok: true, record: { seconds } });
  });

  it.each(['washer.csv', 'small-sterilizer.csv'])('such as %s', (name) => {
    expect(readCycleRecord(readFileSync(new URL(name, records)))).toMatchObject({ ok: true });
  });
});

describe('a file that is no cycle record', () => {
  it.each<[string, string | Uint8Array, string[]]>([
    ['is too large', new Uint8Array(2_000_001), ['1:1 E701 the file has 2000001 bytes, at most 2000000 are read']],
    ['has too many lines', `${head}${'\n'.repeat(50_001)}`, ['50000:1 E701 the file has more than 50000 lines']],
    ['is not UTF-8', new Uint8Array([...bytes(head), 0x30, 0x2c, 0xff, 0x0a]), ['2:1 E702 these bytes are not UTF-8']],
    ['was saved in another encoding', new Uint8Array([0xff, 0xfe, 0x74, 0x00]), ['1:1 E702 these bytes are not UTF-8']],
    ['has a control character', good.replace('134', '1\u{0}4'), ['4:5 E702 a control character']],
    ['is empty', '', ['1:1 E703 the file is empty']],
    ['is blank', ' \n\n', ['1:1 E703 the file is empty']],
    ['was cut off', good.slice(0, -3), ['4:11 E703 the last line is not finished']],
    ['has a cell too few', good.replace(',200.25', ''), ['3:1 E703 this line has 2 cells, the headings have 3']],
    ['has decimal commas between commas', good.replace('120', '120,5'), ['3:1 E703 this line has 4 cells, the headings have 3']],
    ['has an open quote', good.replace('120', '"120'), ['3:4 E703 a quote is not closed on its line']],
    ['has a quote inside a cell', good.replace('120', '1"2"0'), ['3:5 E703 a quote in the middle of a cell']],
    [
      'has no headings',
      good.slice(head.length),
      ['1:1 E704 unknown column `0`', '1:3 E704 unknown column `100.5`', '1:9 E704 unknown column `101`'],
    ],
    ['has a column of its own', good.replace('pressure (kPa absolute)', 'door'), ['1:29 E704 unknown column `door`']],
    ['has no time', good.replace('time (s)', 'temperature 2 (°C)'), ['1:1 E704 there is no column `time`']],
    [
      'has no temperature',
      good.replace('temperature 1 (°C),pressure (kPa absolute)', 'pressure (kPa absolute)').replace(/,[\d.]+(?=,)/g, ''),
      ['1:1 E704 there is no column `temperature`'],
    ],
    ['has a channel twice', 'time (s),temperature 1 (°C),temperature 1 (°C)\n', ['1:29 E704 a second column `temperature 1`']],
    ['has two times', 'time (s),time,temperature (°C)\n', ['1:10 E704 a second column `time`']],
    [
      'has two pressures',
      'time (s),pressure a (kPa absolute),pressure b (kPa gauge),temperature (°C)\n',
      ['1:36 E704 a second column `pressure`'],
    ],
    ['has no unit of temperature', good.replace(' (°C)', ''), ['1:10 E705 `temperature 1` has no unit']],
    ['has a wrong unit of temperature', good.replace('°C', 'K'), ['1:10 E705 `K` is no unit of temperature']],
    ['has a wrong unit of pressure', good.replace('kPa', 'min'), ['1:29 E705 `min` is no unit of pressure']],
    [
      'does not say what a gauge is',
      good.replace(' absolute', ''),
      ['1:29 E705 `pressure (kPa)` does not say `absolute` or `gauge`'],
    ],
    ['has a wrong unit of time', good.replace('(s)', '(h)'), ['1:1 E705 `h` is not `s` or `min`']],
    [
      'has numbers without a unit of time',
      good.replace(' (s)', ''),
      ['2:1 E705 `time` has no unit', '3:1 E705 `time` has no unit', '4:1 E705 `time` has no unit'],
    ],
    ['lacks a reading', good.replace('120', ''), ['3:4 E706 a reading is missing']],
    [
      'has words for a reading',
      good.replace('120', 'NaN').replace('134.1', '1e2'),
      ['3:4 E707 `NaN` is no number', '4:4 E707 `1e2` is no number'],
    ],
    ['has a unit in a cell', good.replace('120', '120 °C'), ['3:4 E707 `120 °C` is no number']],
    ['has a quoted decimal comma between commas', good.replace('120', '"120,5"'), ['3:4 E707 a decimal comma in `120,5`']],
    ['mixes decimal marks', good.replaceAll(',', ';').replace('200.25', '200,25'), ['3:8 E707 another decimal mark in `200,25`']],
    ['has thousands', good.replaceAll(',', ';').replace('200.25', '1.200,25'), ['3:8 E707 `1.200,25` is no number']],
    [
      'has hours and minutes only',
      times('14:05', '14:06', '14:07'),
      ['2:1 E707 `14:05` is no time', '3:1 E707 `14:06` is no time', '4:1 E707 `14:07` is no time'],
    ],
    [
      'has a day that is none',
      times('2026-02-30T10:00:00', '2026-03-01T10:00:00', '2026-03-02T10:00:00'),
      ['2:1 E707 `2026-02-30T10:00:00` is no time'],
    ],
    [
      'mixes ways to write times',
      times('10:00:00', '2026-03-01T10:00:10', '10:00:20'),
      ['3:1 E707 `2026-03-01T10:00:10` is not written like the first time'],
    ],
    ['has a time twice', good.replace('\n20,', '\n10,'), ['4:1 E708 the same time twice']],
    ['goes back in time', good.replace('\n20,', '\n5,'), ['4:1 E708 this time is before the one above']],
    ['passes midnight without a date', times('23:59:50', '23:59:59', '00:00:09'), ['4:1 E708 this time is before the one above']],
    ['has a gap', `${good}30,134,304\n60,134,304\n`, ['6:1 E709 a gap of 30 s, where readings are 10 s apart']],
    ['has a temperature that cannot be', good.replace('134.1', '1341'), ['4:4 E710 `1341` cannot be']],
    ['is colder than cold', good.replace('134.1', '-50.1'), ['4:4 E710 `-50.1` cannot be']],
    ['has an absolute pressure below zero', good.replace('304', '-1'), ['4:10 E710 `-1` cannot be']],
    [
      'has a gauge pressure below a vacuum',
      good.replace('absolute', 'gauge').replace('304', '-111'),
      ['4:10 E710 `-111` cannot be'],
    ],
    ['is too short', good.replace('20,134.1,304\n', ''), ['3:1 E711 there are 2 readings, a record has at least 3']],
    ['has headings only', head, ['1:1 E711 there are 0 readings, a record has at least 3']],
  ])('%s', (_, input, expected) => {
    expect(problems(input)).toEqual(expected);
  });

  it('is not read as hours where a step is two and a half times the usual one, just about', () => {
    expect(read(`${good}45,134,304\n`).ok).toBe(true);
    expect(read(`${good}45.1,134,304\n`).ok).toBe(false);
  });

  it('names at most twenty places', () => {
    const bad = `${head}${Array.from({ length: 30 }, (_, index) => `${index},x,1\n`).join('')}`;
    expect(problems(bad)).toHaveLength(20);
  });
});
