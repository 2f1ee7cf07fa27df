import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { drawChart, sayLength } from '../../../src/measure/record/draw-chart.js';
import { measureRecord } from '../../../src/measure/record/measure-record.js';
import { readCycleRecord } from '../../../src/measure/record/read-cycle-record.js';

const band = { from: 134, to: 137 };

function sample() {
  const read = readCycleRecord(readFileSync(new URL('../records/small-sterilizer.csv', import.meta.url)));
  if (!read.ok) throw new Error('the sample is not read');
  return read.record;
}

describe('the chart', () => {
  const record = sample();
  const { hold } = measureRecord(record, { counting: 'lower', reference: { value: 121.1, unit: 'Cel' }, band });
  const chart = drawChart(record, 'Morning <1>', band, hold);

  it('says in words what it shows', () => {
    expect(chart).toContain('<title id="title">Morning &#x3C;1></title>');
    expect(chart).toContain('All temperatures stay between 134 and 137 °C for 3 min 40 s.');
    expect(chart).toContain('hold 3 min 40 s');
    expect(drawChart(record, 'x', { from: 150, to: 153 })).toContain('At no moment are all temperatures between 150 and 153 °C.');
    expect(drawChart(record, 'x')).not.toContain('hold');
  });

  it('has a line for each channel, told apart without color', () => {
    expect(chart).toContain('temperature 3');
    expect(chart).toContain('pressure, right axis');
    expect(new Set(chart.match(/stroke-dasharray="[^"]*"/g)).size).toBeGreaterThanOrEqual(2);
    const grey = /(?:fill|stroke)="(?!none|#(?:000|fff|ddd|bbb)")/;
    expect(chart).not.toMatch(grey);
  });

  it('is the same bytes every time, and whole', () => {
    expect(drawChart(record, 'Morning <1>', band, hold)).toBe(chart);
    expect(chart).not.toMatch(/NaN|undefined|Infinity/);
    const opened = chart.match(/<[a-z]+/g)?.length;
    expect((chart.match(/<\/[a-z]+>/g)?.length ?? 0) + (chart.match(/\/>/g)?.length ?? 0)).toBe(opened);
  });

  it('is drawn of readings that stand still', () => {
    const still = { seconds: [0, 1, 2], temperatures: [{ name: 'temperature', celsius: [20, 20, 20] }] as const };
    expect(drawChart(still, 'still')).not.toMatch(/NaN|Infinity/);
  });
});

describe('a length', () => {
  it.each([
    [0, '0 s'],
    [59.9, '59 s'],
    [60, '1 min'],
    [3725, '1 h 2 min 5 s'],
  ])('of %d s is %s', (seconds, said) => {
    expect(sayLength(seconds)).toBe(said);
  });
});
