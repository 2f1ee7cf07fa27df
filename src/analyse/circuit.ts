import { type Literal, Solver } from './solver.js';

/** Formulas as literals of a solver: `and` and `or` give a literal that is true exactly where the formula is. */
export class Circuit {
  readonly solver = new Solver();
  readonly always: Literal;
  private readonly gates = new Map<string, Literal>();

  constructor() {
    this.always = this.solver.add();
    this.solver.require([this.always]);
  }

  get never(): Literal {
    return -this.always;
  }

  /** True where all are. The same parts give the same literal, so that equal formulas are seen to be equal. */
  and(parts: readonly Literal[]): Literal {
    const kept = [...new Set(parts)].filter((each) => each !== this.always).sort((a, b) => a - b);
    const known = new Set(kept);
    if (kept.some((each) => each === this.never || known.has(-each))) return this.never;
    const [only] = kept;
    if (only === undefined) return this.always;
    if (kept.length === 1) return only;
    const key = kept.join(' ');
    const before = this.gates.get(key);
    if (before !== undefined) return before;
    const gate = this.solver.add();
    for (const each of kept) this.solver.require([-gate, each]);
    this.solver.require([gate, ...kept.map((each) => -each)]);
    this.gates.set(key, gate);
    return gate;
  }

  or(parts: readonly Literal[]): Literal {
    return -this.and(parts.map((each) => -each));
  }

  /** True where both are true or both false. */
  same(a: Literal, b: Literal): Literal {
    return this.or([this.and([a, b]), this.and([-a, -b])]);
  }

  /** Asks that at most one is true: a ladder of one helper each (Sinz 2005). */
  requireAtMostOne(parts: readonly Literal[]): void {
    let before: Literal | undefined;
    for (const each of parts) {
      if (before !== undefined) this.solver.require([-before, -each]);
      const sofar = this.solver.add();
      this.solver.require([-each, sofar]);
      if (before !== undefined) this.solver.require([-before, sofar]);
      before = sofar;
    }
  }
}
