import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Circuit } from '../../src/analyse/circuit.js';
import { Solver } from '../../src/analyse/solver.js';

const variables = 9;
const literal = fc.tuple(fc.integer({ min: 1, max: variables }), fc.boolean()).map(([each, sign]) => (sign ? each : -each));
const clause = fc.array(literal, { minLength: 1, maxLength: 4 });

/** Tries every assignment. */
function canHold(clauses: readonly (readonly number[])[], assumptions: readonly number[]): boolean {
  for (let bits = 0; bits < 2 ** variables; bits += 1) {
    const holds = (each: number) => ((bits >> (Math.abs(each) - 1)) & 1) === (each > 0 ? 1 : 0);
    if (assumptions.every(holds) && clauses.every((all) => all.some(holds))) return true;
  }
  return false;
}

function solverOf(clauses: readonly (readonly number[])[]): Solver {
  const solver = new Solver();
  for (let each = 0; each < variables; each += 1) solver.add();
  for (const each of clauses) solver.require(each);
  return solver;
}

describe('the search', () => {
  it('finds truth values exactly where there are some, question after question', () => {
    fc.assert(
      fc.property(
        fc.array(clause, { maxLength: 45 }),
        fc.array(fc.array(literal, { maxLength: 4 }), { minLength: 4, maxLength: 4 }),
        (clauses, questions) => {
          const solver = solverOf(clauses);
          for (const assumptions of questions) {
            const found = solver.solve(assumptions);
            expect(found).toBe(canHold(clauses, assumptions));
            if (!found) continue;
            for (const each of assumptions) expect(solver.isTrue(each)).toBe(true);
            for (const each of clauses) expect(each.some((one) => solver.isTrue(one))).toBe(true);
          }
        },
      ),
      { numRuns: 400 },
    );
  });

  it('names assumptions that cannot hold together, and no others', () => {
    fc.assert(
      fc.property(fc.array(clause, { maxLength: 45 }), fc.array(literal, { maxLength: 6 }), (clauses, assumptions) => {
        const solver = solverOf(clauses);
        if (solver.solve(assumptions) !== false) return;
        for (const each of solver.core) expect(assumptions).toContain(each);
        expect(canHold(clauses, solver.core)).toBe(false);
      }),
      { numRuns: 400 },
    );
  });

  it('gives no answer where it may not search for one', () => {
    // Six pigeons do not fit into five holes, and that is not seen without conflicts.
    const solver = new Solver();
    const at = Array.from({ length: 6 }, () => Array.from({ length: 5 }, () => solver.add()));
    for (const pigeon of at) solver.require(pigeon);
    for (let hole = 0; hole < 5; hole += 1)
      for (let one = 0; one < 6; one += 1)
        for (let other = 0; other < one; other += 1) solver.require([-(at[one]?.[hole] ?? 0), -(at[other]?.[hole] ?? 0)]);
    expect(solver.solve([], 3)).toBe(undefined);
    expect(solver.solve()).toBe(false);
  });
});

describe('a circuit', () => {
  it('gives a literal that is true exactly where the formula is', () => {
    const parts = fc.array(fc.tuple(fc.integer({ min: 0, max: 4 }), fc.boolean()), { minLength: 0, maxLength: 4 });
    fc.assert(
      fc.property(parts, parts, fc.array(fc.boolean(), { minLength: 5, maxLength: 5 }), (left, right, values) => {
        const circuit = new Circuit();
        const inputs = values.map(() => circuit.solver.add());
        const pick = (all: typeof left) => all.map(([index, sign]) => (sign ? (inputs[index] ?? 0) : -(inputs[index] ?? 0)));
        const is = (all: typeof left) => all.map(([index, sign]) => values[index] === sign);
        const [both, either] = [circuit.and(pick(left)), circuit.or(pick(right))];
        const same = circuit.same(both, either);
        expect(circuit.solver.solve(inputs.map((each, index) => (values[index] ? each : -each)))).toBe(true);
        const [all, some] = [is(left).every(Boolean), is(right).some(Boolean)];
        expect(circuit.solver.isTrue(both)).toBe(all);
        expect(circuit.solver.isTrue(either)).toBe(some);
        expect(circuit.solver.isTrue(same)).toBe(all === some);
      }),
      { numRuns: 300 },
    );
  });
});
