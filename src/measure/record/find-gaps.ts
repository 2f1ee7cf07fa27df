import type { RecordProblem } from './cycle-record.js';

/** A step may be so many times as long as the usual one: a reading late, but none missing twice over. */
const longestStep = 2.5;

/**
 * Where times do not go forward (E708), or go forward by more than two and a half times the usual step (E709). The usual
 * step is the median. What happened in a gap is not known, so nothing is worked out across it.
 */
export function findGaps(seconds: readonly number[], places: readonly { line: number; column: number }[]): RecordProblem[] {
  const steps = seconds.slice(1).map((each, index) => each - (seconds[index] ?? each));
  const problem = (index: number, code: RecordProblem['code'], message: string, help: string) => {
    const { line, column } = places[index + 1] ?? { line: 1, column: 1 };
    return { code, line, column, message, help };
  };
  const backward = steps.flatMap((step, index) =>
    step > 0 ? [] : [problem(index, 'E708', step === 0 ? 'the same time twice' : 'this time is before the one above', later)],
  );
  if (backward.length > 0) return backward;
  const usual = median(steps);
  return steps.flatMap((step, index) => {
    if (step <= usual * longestStep * (1 + 1e-9)) return [];
    const message = `a gap of ${plain(step)} s, where readings are ${plain(usual)} s apart`;
    return [problem(index, 'E709', message, 'readings are missing: use the complete record')];
  });
}

const later = 'readings stand in the order of time; past midnight write the date too';

function median(numbers: readonly number[]): number {
  const sorted = [...numbers].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? 0;
}

function plain(seconds: number): string {
  return String(Number(seconds.toFixed(3)));
}
