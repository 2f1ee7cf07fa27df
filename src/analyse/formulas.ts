import { Circuit } from './circuit.js';
import type { Literal } from './solver.js';

/** Formulas that are not searched but filled in, value by value, until only true and false are left. */
export class Formulas extends Circuit {
  private readonly parts = new Map<Literal, readonly Literal[]>();
  private readonly byParts = new Map<string, Literal>();

  override and(parts: readonly Literal[]): Literal {
    const kept = [...new Set(parts)].filter((each) => each !== this.always).sort((a, b) => a - b);
    const known = new Set(kept);
    if (kept.some((each) => each === this.never || known.has(-each))) return this.never;
    const [only] = kept;
    if (only === undefined) return this.always;
    if (kept.length === 1) return only;
    const key = kept.join(' ');
    const before = this.byParts.get(key);
    if (before !== undefined) return before;
    const gate = this.solver.add();
    this.parts.set(gate, kept);
    this.byParts.set(key, gate);
    return gate;
  }

  /** What is left of formulas once some variables are true and others false. */
  fillIn(values: ReadonlyMap<Literal, boolean>): (formula: Literal) => Literal {
    const made = new Map<Literal, Literal>();
    const left = (formula: Literal): Literal => {
      const variable = Math.abs(formula);
      const before = made.get(variable);
      if (before !== undefined) return formula > 0 ? before : -before;
      const value = values.get(variable);
      const parts = this.parts.get(variable);
      const result =
        value !== undefined ? (value ? this.always : this.never) : parts === undefined ? variable : this.and(parts.map(left));
      made.set(variable, result);
      return formula > 0 ? result : -result;
    };
    return left;
  }
}
