/** Readings of one temperature sensor. */
export interface TemperatureChannel {
  /** As its column is called: `temperature 1`. */
  name: string;
  celsius: readonly number[];
}

/** Readings of the chamber's pressure. */
export interface PressureChannel {
  name: string;
  /** A gauge counts from the pressure of the air around it. */
  against: 'vacuum' | 'air';
  kilopascals: readonly number[];
}

/** What a machine or a logger wrote down during one cycle. Every channel has one reading a moment. */
export interface CycleRecord {
  /** Moments in seconds after the first reading, ascending. */
  seconds: readonly number[];
  /** At least one. */
  temperatures: readonly [TemperatureChannel, ...TemperatureChannel[]];
  pressure?: PressureChannel;
}

/** Why a file is no cycle record. Codes are listed in the contributor guide. */
export interface RecordProblem {
  code: `E${number}`;
  /** From 1. */
  line: number;
  column: number;
  message: string;
  help: string;
}

/** Ends the reading of a file with what is wrong in it. */
export class RecordRefused extends Error {
  constructor(readonly problems: readonly RecordProblem[]) {
    super(problems[0]?.message ?? 'no cycle record');
  }
}

/** Somebody's own words in backticks, cut where they are long. Control characters never come this far. */
export function inTicks(words: string): string {
  return words.length <= 40 ? `\`${words}\`` : `\`${[...words].slice(0, 39).join('')}…\``;
}
