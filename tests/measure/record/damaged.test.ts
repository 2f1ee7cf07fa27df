import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { measureRecord, type RecordMeasures } from '../../../src/measure/record/measure-record.js';
import { readCycleRecord } from '../../../src/measure/record/read-cycle-record.js';

const settings = {
  counting: 'lower',
  reference: { value: 121.1, unit: 'Cel' },
  band: { from: 134, to: 137 },
  air: 101.325,
} as const;

const files = ['washer.csv', 'small-sterilizer.csv'].map((name) => readFileSync(new URL(`../records/${name}`, import.meta.url)));
const file = fc.constantFrom(...files);
const undamaged = new Map(files.map((each) => [each, measure(each) ?? expect.fail('a sample is not read')]));

/** What a file comes to, or undefined where it is refused. A crash fails the test. */
function measure(bytes: Uint8Array): RecordMeasures | undefined {
  const read = readCycleRecord(bytes);
  if (read.ok) return measureRecord(read.record, settings);
  expect(read.problems.length).toBeGreaterThan(0);
  for (const { code, line, column } of read.problems) {
    expect(code).toMatch(/^E7\d\d$/);
    expect(line).toBeGreaterThan(0);
    expect(column).toBeGreaterThan(0);
  }
  return undefined;
}

const textOf = (bytes: Uint8Array) => new TextDecoder().decode(bytes);
const bytesOf = (text: string) => new TextEncoder().encode(text);
const linesOf = (bytes: Uint8Array) => textOf(bytes).trimEnd().split('\n');
const joined = (lines: readonly string[]) => bytesOf(`${lines.join('\n')}\n`);

/** Damage that leaves no whole record: every one must be refused. */
const fatal: Record<string, fc.Arbitrary<Uint8Array>> = {
  'cut off within a line': fc.tuple(file, fc.nat()).map(([bytes, at]) => {
    const end = 1 + (at % (bytes.length - 1));
    return bytes.subarray(0, bytes[end - 1] === 10 ? end - 1 : end);
  }),
  'a cell emptied': cells((row, at) => row.map((cell, index) => (index === at ? '' : cell))),
  'a cell left out': cells((row, at) => row.filter((_, index) => index !== at)),
  'a cell more': cells((row, at) => row.flatMap((cell, index) => (index === at ? [cell, cell] : [cell]))),
  'words in a cell': cells((row, at) => row.map((cell, index) => (index === at ? 'NaN' : cell))),
  'a unit in a cell': cells((row, at) => row.map((cell, index) => (index === at ? `${cell} °C` : cell))),
  'a reading far out': cells((row, at) => row.map((cell, index) => (index === Math.max(1, at) ? '99999' : cell))),
  'a unit left out': file.map((bytes) => bytesOf(textOf(bytes).replace(' (°C)', ''))),
  'another unit': file.map((bytes) => bytesOf(textOf(bytes).replace('°C', 'kPa'))),
  'no headings': file.map((bytes) => joined(linesOf(bytes).slice(1))),
  'headings twice': file.map((bytes) => joined(linesOf(bytes).flatMap((line, index) => (index === 0 ? [line, line] : [line])))),
  'a line twice': rows((lines, at) => lines.flatMap((line, index) => (index === at ? [line, line] : [line]))),
  'two lines swapped': rows((lines, at) =>
    lines.map((line, index) => lines[index === at ? at + 1 : index === at + 1 ? at : index] ?? line),
  ),
  'many lines lost': rows((lines, at) => lines.filter((_, index) => index < at || index > at + 3)),
  'another separator in one line': rows((lines, at) =>
    lines.map((line, index) => (index === at ? line.replaceAll(/[;,]/g, (each) => (each === ';' ? ',' : ';')) : line)),
  ),
  'another decimal mark in one line': file.chain((bytes) =>
    fc.nat().map((at) => {
      const lines = linesOf(bytes);
      const own = 1 + (at % (lines.length - 1));
      const [from, to] = textOf(bytes).includes(';') ? [',', '.'] : ['.', ','];
      return joined(lines.map((line, index) => (index === own ? line.replaceAll(from, to) : line)));
    }),
  ),
  'columns of time and temperature swapped': file.map((bytes) =>
    joined(
      linesOf(bytes).map((line, index) => {
        const mark = line.includes(';') ? ';' : ',';
        const [first = '', second = '', ...others] = line.split(mark);
        return index === 0 ? line : [second, first, ...others].join(mark);
      }),
    ),
  ),
  'another encoding': file.map((bytes) => new Uint8Array([0xff, 0xfe, ...bytes].flatMap((each) => [each, 0]))),
  'a byte of rubbish': fc
    .tuple(file, fc.nat(), fc.constantFrom(0, 1, 7, 0x1b, 0x7f, 0x80, 0xbf, 0xc0, 0xfe, 0xff))
    .map(([bytes, at, rubbish]) => bytes.map((each, index) => (index === at % bytes.length ? rubbish : each))),
};

/** What changes bytes but no reading: every one must give exactly the same. */
const harmless: Record<string, (text: string) => string> = {
  'a byte order mark': (text) => `\u{feff}${text}`,
  'lines ended as on Windows': (text) => text.replaceAll('\n', '\r\n'),
  'blank lines': (text) => text.replaceAll('\n', '\n \n'),
  'blanks around cells': (text) => text.replaceAll(';', ' ; '),
};

describe('a damaged record', () => {
  it.each(Object.keys(fatal))('with %s is refused', (name) => {
    fc.assert(
      fc.property(fatal[name] ?? expect.fail(name), (bytes) => {
        expect(measure(bytes)).toBeUndefined();
      }),
      { numRuns: 60 },
    );
  });

  it.each(Object.keys(harmless))('with %s gives the same', (name) => {
    for (const bytes of files) expect(measure(bytesOf(harmless[name]?.(textOf(bytes)) ?? ''))).toEqual(undamaged.get(bytes));
  });

  it('with any byte changed into what is no digit is refused, or gives the same', () => {
    const other = fc.integer({ min: 0, max: 255 }).filter((each) => each < 0x30 || each > 0x39);
    fc.assert(
      fc.property(file, fc.nat(), other, (bytes, at, byte) => {
        const place = at % bytes.length;
        const measured = measure(bytes.map((each, index) => (index === place ? byte : each)));
        if (measured === undefined) return;
        const changedName = place < textOf(bytes).indexOf('\n') + 2;
        const changedNumber = /[\d.,:TZ+-]/.test(String.fromCharCode(byte));
        if (!changedName && !changedNumber) expect(measured).toEqual(undamaged.get(bytes));
        expect(finite(measured)).toBe(true);
      }),
      { numRuns: 1500 },
    );
  });

  it('cut off between two lines never gives more than the whole one', () => {
    fc.assert(
      fc.property(file, fc.nat(), (bytes, at) => {
        const lines = linesOf(bytes);
        const measured = measure(joined(lines.slice(0, 1 + (at % (lines.length - 1)))));
        const whole = undamaged.get(bytes);
        if (measured === undefined || whole === undefined) return;
        expect(measured.worst.a0.a0.value).toBeLessThanOrEqual(whole.worst.a0.a0.value);
        expect(measured.worst.f0.f0.value).toBeLessThanOrEqual(whole.worst.f0.f0.value);
        expect(measured.hold?.seconds ?? 0).toBeLessThanOrEqual(whole.hold?.seconds ?? 0);
      }),
      { numRuns: 40 },
    );
  });

  it('of any bytes at all never crashes', () => {
    fc.assert(fc.property(fc.uint8Array({ maxLength: 400 }), (bytes) => void measure(bytes)));
    fc.assert(fc.property(fc.string({ unit: 'binary', maxLength: 400 }), (text) => void measure(bytesOf(text))));
  });
});

function finite({ worst, seconds }: RecordMeasures): boolean {
  return [worst.a0.a0.value, worst.f0.f0.value, seconds].every(Number.isFinite);
}

/** Changes one cell of one reading. */
function cells(change: (row: readonly string[], at: number) => readonly string[]): fc.Arbitrary<Uint8Array> {
  return fc.tuple(file, fc.nat(), fc.nat()).map(([bytes, line, cell]) => {
    const lines = linesOf(bytes);
    const own = 1 + (line % (lines.length - 1));
    return joined(
      lines.map((text, index) => {
        const mark = text.includes(';') ? ';' : ',';
        const row = text.split(mark);
        return index === own ? change(row, cell % row.length).join(mark) : text;
      }),
    );
  });
}

/** Changes the lines of readings; `at` is never the last but three. */
function rows(change: (lines: readonly string[], at: number) => readonly string[]): fc.Arbitrary<Uint8Array> {
  return fc.tuple(file, fc.nat()).map(([bytes, at]) => {
    const [headings = '', ...lines] = linesOf(bytes);
    return joined([headings, ...change(lines, 1 + (at % (lines.length - 6)))]);
  });
}
