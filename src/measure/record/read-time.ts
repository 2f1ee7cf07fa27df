import { dayNumber } from '../day-number.js';

/** A moment as a cell gives it. Times of one file must all be written the same way. */
export interface Moment {
  way: 'clock' | 'date' | 'date with zone';
  seconds: number;
}

/** Reads `14:05:30`, `2026-03-02T14:05:30` or `2026-03-02 14:05:30Z`; undefined for anything else, `14:05` above all. */
export function readMoment(text: string): Moment | undefined {
  const [, date, hours = '', minutes = '', seconds = '', zone] =
    /^(?:(\d{4}-\d\d-\d\d)[T ])?(\d{1,3}):([0-5]\d):([0-5]\d(?:\.\d{1,6})?)(Z|[+-]\d\d:[0-5]\d)?$/.exec(text) ?? [];
  if (hours === '') return undefined;
  const ofDay = Number(hours) * 3600 + Number(minutes) * 60 + Number(seconds);
  if (date === undefined) return zone === undefined ? { way: 'clock', seconds: ofDay } : undefined;
  const day = dayNumber(date);
  if (day === undefined || hours.length !== 2 || Number(hours) > 23) return undefined;
  const way = zone === undefined ? 'date' : 'date with zone';
  return { way, seconds: day * 86_400 + ofDay - offsetOf(zone) };
}

function offsetOf(zone: string | undefined): number {
  if (zone === undefined || zone === 'Z') return 0;
  const [hours = 0, minutes = 0] = zone.slice(1).split(':').map(Number);
  return (zone.startsWith('-') ? -1 : 1) * (hours * 3600 + minutes * 60);
}
