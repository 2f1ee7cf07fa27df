import { describe, expect, it } from 'vitest';
import type { CycleRecord } from '../../../src/measure/record/cycle-record.js';
import { measureRecord, onlyChannels, type Settings } from '../../../src/measure/record/measure-record.js';
import { saturationPressure } from '../../../src/measure/steam.js';

const settings: Settings = { counting: 'lower', reference: { value: 121, unit: 'Cel' }, band: { from: 134, to: 137 } };
const warm = [100, 134, 135, 136, 134, 100];
const record: CycleRecord = {
  seconds: [0, 60, 120, 180, 240, 300],
  temperatures: [
    { name: 'temperature 1', celsius: warm.map((each) => each + 1) },
    { name: 'temperature 2', celsius: warm },
  ],
  pressure: { name: 'pressure', against: 'vacuum', kilopascals: warm.map((each) => saturationPressure(each + 0.5)) },
};

describe('a record', () => {
  it('is judged by its worst sensor', () => {
    const { worst, channels, hold, readings, seconds } = measureRecord(record, settings);
    expect([readings, seconds]).toEqual([6, 300]);
    expect(worst.a0).toBe(channels[1]);
    expect(worst.f0).toBe(channels[1]);
    expect(hold).toMatchObject({ first: 1, last: 4, seconds: 180 });
    expect(hold?.f0.value).toBeCloseTo(10 ** 1.3 + 10 ** 1.4 + 10 ** 1.3, 9);
    expect(channels.map((each) => each.hold?.seconds)).toEqual([180, 180]);
  });

  it('matches saturated steam, or does not', () => {
    const { steam } = measureRecord(record, settings);
    expect(steam?.matches).toBe(true);
    expect(steam?.channels.map(({ least }) => Math.round(least * 1e4) / 1e4)).toEqual([0.5, -0.5]);
    const air = record.pressure?.kilopascals.map((each) => each + 30) ?? [];
    const withAir = { ...record, pressure: { name: 'pressure', against: 'vacuum' as const, kilopascals: air } };
    expect(measureRecord(withAir, settings).steam?.matches).toBe(false);
    const empty = { name: 'pressure', against: 'vacuum' as const, kilopascals: warm.map(() => 0) };
    expect(measureRecord({ ...record, pressure: empty }, settings).steam).toMatchObject({ matches: false, lowest: 0 });
  });

  it('with a gauge needs the pressure of the air', () => {
    const gauge = record.pressure?.kilopascals.map((each) => each - 90) ?? [];
    const high = { ...record, pressure: { name: 'pressure', against: 'air' as const, kilopascals: gauge } };
    expect(measureRecord(high, settings).steam).toBeUndefined();
    expect(measureRecord(high, { ...settings, air: 90 }).steam?.matches).toBe(true);
  });

  it('has no hold where none is looked for, or none is there', () => {
    const { band: _, ...without } = settings;
    expect(measureRecord(record, without).hold).toBeUndefined();
    expect(measureRecord(record, { ...settings, band: { from: 150, to: 153 } })).not.toHaveProperty('hold');
  });

  it('is cut down to some channels', () => {
    expect(onlyChannels(record, ['temperature 2'])?.temperatures).toEqual([record.temperatures[1]]);
    expect(onlyChannels(record, [])).toBeUndefined();
  });
});
