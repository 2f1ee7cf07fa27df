import type { Program, Rulebook, Stage, StagePressure } from '../link/rulebook.js';
import { a0OfHold } from '../measure/a0.js';
import { formatQuantity, inBaseUnit } from '../measure/quantity.js';
import { airPressureAt, saturationTemperature, steamTolerance } from '../measure/steam.js';
import type { Finding } from '../read/finding.js';

/** Compares what machine sheets claim of a program with what its stages add up to, A0 and duration, and pressures with steam tables. */
export function checkPrograms(rulebook: Rulebook): Finding[] {
  return [...rulebook.machines.values()].flatMap((machine) => machine.programs.flatMap(checkProgram));
}

const help = "compare temperatures and times with the maker's sheet";
/** What a claim may differ by: binary fractions, not rounding. */
const leeway = 1 + 1e-9;

function checkProgram({ id, stages, facts, place }: Program): Finding[] {
  const findings: Finding[] = [];
  const [claimedA0, claimedSeconds] = [facts['program.a0'], facts['program.duration']];
  const a0 = sum(stages.map(({ temperature, time }) => (temperature && time ? inBaseUnit(a0OfHold(temperature, time)) : 0)));
  if (typeof claimedA0 === 'number' && claimedA0 > a0 * leeway) {
    const message = `program \`${id}\` claims ${say(claimedA0, '{A0}')}, its stages add up to ${say(Math.floor(a0), '{A0}')}`;
    findings.push({ code: 'E403', message, place, help });
  }
  const seconds = sum(stages.map(({ time }) => (time === undefined ? 0 : inBaseUnit(time))));
  if (typeof claimedSeconds === 'number' && seconds > claimedSeconds * leeway) {
    const message = `program \`${id}\` claims ${say(claimedSeconds / 60, 'min')}, its stages add up to ${say(seconds / 60, 'min')}`;
    findings.push({ code: 'E404', message, place, help });
  }
  for (const stage of stages) {
    const steam = steamAgainst(stage);
    if (steam === undefined) continue;
    const message = `program \`${id}\` has stage \`${stage.name}\` at ${steam.stated}, ${steam.tables}`;
    findings.push({
      code: 'E405',
      message,
      place,
      help: 'a gauge pressure is read at sea level unless its `altitude` is stated',
    });
  }
  return findings;
}

/** What a stage of 100 °C or more states and steam tables say, where the two are further apart than that. */
function steamAgainst({ temperature, pressure }: Stage): { stated: string; tables: string } | undefined {
  if (temperature === undefined || pressure === undefined || inBaseUnit(temperature) < 100) return undefined;
  const stated = `${formatQuantity(temperature)} and ${sayPressure(pressure)}`;
  const kilopascals = absoluteOf(pressure);
  if (kilopascals < 1 || kilopascals > 20_000) return { stated, tables: 'where there is no such steam' };
  const saturated = saturationTemperature(kilopascals);
  if (Math.abs(saturated - inBaseUnit(temperature)) <= steamTolerance) return undefined;
  return { stated, tables: `where saturated steam has ${say(saturated, 'Cel')}` };
}

function absoluteOf(pressure: StagePressure): number {
  if ('absolute' in pressure) return inBaseUnit(pressure.absolute);
  return inBaseUnit(pressure.gauge) + airPressureAt(pressure.altitude);
}

function sayPressure(pressure: StagePressure): string {
  if ('absolute' in pressure) return `${formatQuantity(pressure.absolute)} absolute`;
  const { altitude, gauge } = pressure;
  return `${formatQuantity(gauge)} gauge${altitude.value === 0 ? '' : ` at ${formatQuantity(altitude)}`}`;
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((sofar, each) => sofar + each, 0);
}

function say(value: number, unit: string): string {
  return formatQuantity({ value: Number(value.toFixed(1)), unit });
}
