import { a0OfReadings } from '../a0.js';
import type { Counting } from '../count-readings.js';
import { type Band, type Hold, longestHold } from '../hold.js';
import { f0OfReadings } from '../lethality.js';
import type { Quantity } from '../quantity.js';
import { lowestSaturationPressure, saturationTemperature, steamTolerance } from '../steam.js';
import type { CycleRecord, PressureChannel, TemperatureChannel } from './cycle-record.js';

export interface Settings {
  counting: Counting;
  /** Reference temperature of F0. */
  reference: Quantity;
  /** The band of the hold; without it no hold is looked for. */
  band?: Band;
  /** Pressure of the air in kPa; a gauge pressure is worth nothing without it. */
  air?: number;
}

/** What one sensor measured. */
export interface ChannelMeasures {
  name: string;
  lowest: number;
  highest: number;
  a0: Quantity;
  f0: Quantity;
  /** Its own longest time within the band. */
  hold?: Hold;
}

/** Measured temperatures against that of saturated steam at the measured pressure, during the hold. */
export interface SteamMatch {
  /** Theoretical temperatures in °C. */
  lowest: number;
  highest: number;
  /** Measured less theoretical temperature of each channel, in K. */
  channels: { name: string; least: number; most: number }[];
  matches: boolean;
}

/** What a record comes to. */
export interface RecordMeasures {
  readings: number;
  /** From the first reading to the last, in seconds. */
  seconds: number;
  channels: readonly ChannelMeasures[];
  /** The channel with the lowest A0; that with the lowest F0. */
  worst: { a0: ChannelMeasures; f0: ChannelMeasures };
  /** The longest time in which every channel is within the band, with the lowest A0 and F0 of any channel in it. */
  hold?: Hold & { a0: Quantity; f0: Quantity };
  /** Only where pressure and a hold are there. */
  steam?: SteamMatch;
}

/** Works out everything at once. The worst sensor counts: what a load got is what its coldest place got. */
export function measureRecord(record: CycleRecord, settings: Settings): RecordMeasures {
  const { seconds, temperatures, pressure } = record;
  const [first, ...others] = temperatures;
  const ofFirst = measureChannel(seconds, first, settings);
  const channels = [ofFirst, ...others.map((channel) => measureChannel(seconds, channel, settings))];
  const worst = (value: (channel: ChannelMeasures) => number) =>
    channels.reduce((sofar, each) => (value(each) < value(sofar) ? each : sofar), ofFirst);
  const hold =
    settings.band &&
    longestHold(
      seconds,
      temperatures.map(({ celsius }) => celsius),
      settings.band,
    );
  const absolute = pressure && absolutePressure(pressure, settings.air);
  return {
    readings: seconds.length,
    seconds: seconds.at(-1) ?? 0,
    channels,
    worst: { a0: worst(({ a0 }) => a0.value), f0: worst(({ f0 }) => f0.value) },
    ...(hold && { hold: { ...hold, ...measureHold(record, settings, hold) } }),
    ...(hold && absolute && { steam: matchSteam(temperatures, absolute, hold) }),
  };
}

/** Leaves the channels out that nobody asks for; those named stand in the order of the file. */
export function onlyChannels(record: CycleRecord, names: readonly string[]): CycleRecord | undefined {
  const [first, ...others] = record.temperatures.filter(({ name }) => names.includes(name));
  return first && { ...record, temperatures: [first, ...others] };
}

function measureChannel(seconds: readonly number[], channel: TemperatureChannel, settings: Settings): ChannelMeasures {
  const { name, celsius } = channel;
  const hold = settings.band && longestHold(seconds, [celsius], settings.band);
  return {
    name,
    lowest: Math.min(...celsius),
    highest: Math.max(...celsius),
    a0: a0OfReadings(seconds, celsius, settings.counting),
    f0: f0OfReadings(seconds, celsius, settings.counting, settings.reference),
    ...(hold && { hold }),
  };
}

function measureHold({ seconds, temperatures }: CycleRecord, settings: Settings, hold: Hold): { a0: Quantity; f0: Quantity } {
  const during = within(hold);
  const lowest = (values: Quantity[]) => values.reduce((sofar, each) => (each.value < sofar.value ? each : sofar));
  const all = temperatures.map(({ celsius }) => during(celsius));
  return {
    a0: lowest(all.map((celsius) => a0OfReadings(during(seconds), celsius, settings.counting))),
    f0: lowest(all.map((celsius) => f0OfReadings(during(seconds), celsius, settings.counting, settings.reference))),
  };
}

/** Takes the readings of a hold out of all. */
function within({ first, last }: Hold): <T>(all: readonly T[]) => T[] {
  return (all) => all.slice(first, last + 1);
}

function absolutePressure({ against, kilopascals }: PressureChannel, air: number | undefined): number[] | undefined {
  if (against === 'vacuum') return [...kilopascals];
  return air === undefined ? undefined : kilopascals.map((each) => each + air);
}

function matchSteam(temperatures: readonly TemperatureChannel[], kilopascals: readonly number[], hold: Hold): SteamMatch {
  const during = within(hold);
  const theoretical = during(kilopascals).map(theoreticalTemperature);
  const channels = temperatures.map(({ name, celsius }) => {
    const differences = during(celsius).map((each, index) => each - (theoretical[index] ?? each));
    return { name, least: Math.min(...differences), most: Math.max(...differences) };
  });
  const matches = channels.every(({ least, most }) => least >= -steamTolerance - tiny && most <= steamTolerance + tiny);
  return { lowest: Math.min(...theoretical), highest: Math.max(...theoretical), channels, matches };
}

/** Binary fractions, not rounding. */
const tiny = 1e-9;

/** Below the pressure of the triple point there is no saturated steam: 0 °C, which no hold comes near. */
function theoreticalTemperature(kilopascals: number): number {
  return kilopascals < lowestSaturationPressure ? 0 : saturationTemperature(kilopascals);
}
