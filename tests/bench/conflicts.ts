import { Solver } from '../../src/analyse/solver.js';

/** What the searches of a stretch of work cost. */
export interface Cost {
  /** In milliseconds. */
  time: number;
  conflicts: number;
  searches: number;
}

const total = { conflicts: 0, searches: 0 };
const solve = Solver.prototype.solve;
Solver.prototype.solve = function counted(...args) {
  const before = this.conflicts;
  const found = solve.apply(this, args);
  total.conflicts += this.conflicts - before;
  total.searches += 1;
  return found;
};

/** Does the work, and counts. */
export function costOf<T>(work: () => T): Cost & { result: T } {
  const before = { ...total };
  const start = performance.now();
  const result = work();
  return {
    time: performance.now() - start,
    conflicts: total.conflicts - before.conflicts,
    searches: total.searches - before.searches,
    result,
  };
}

/** The median time of repeated work, and the cost of the first. */
export function usualCost<T>(work: () => T, times = 7): Cost & { result: T } {
  const costs = Array.from({ length: times }, () => costOf(work));
  const [first] = costs;
  const sorted = costs.map(({ time }) => time).sort((a, b) => a - b);
  if (first === undefined) throw new RangeError('nothing was done');
  return { ...first, time: sorted[Math.floor(times / 2)] ?? first.time };
}
