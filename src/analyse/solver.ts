/** A literal: a variable's number, negative where it is meant to be false. Variables count from 1. */
export type Literal = number;

/** What a search found: an answer, or `undefined` where it was given up at its limit. */
export type Found = boolean | undefined;

/**
 * A search for truth values that make all clauses true: conflict-driven clause learning with two watched literals, activities that
 * decay, saved phases and restarts by the Luby sequence (Marques-Silva and Sakallah 1996, GRASP; Moskewicz et al. 2001, Chaff; Eén
 * and Sörensson 2003, MiniSat). Complete: an answer is exact, and past the limit of conflicts there is none.
 */
export class Solver {
  /** Value of a literal by `index`: 1 true, 0 false, -1 open. */
  private values = new Int8Array(64).fill(-1);
  private levels = new Int32Array(32);
  private reasons: (Int32Array | undefined)[] = [undefined];
  private watches: Int32Array[][] = [[], []];
  private activities = new Float64Array(32);
  private phases = new Int8Array(32);
  private seen = new Uint8Array(32);
  private readonly heap: number[] = [];
  private positions = new Int32Array(32).fill(-1);
  private readonly trail: Literal[] = [];
  private readonly marks: number[] = [];
  private head = 0;
  private bump = 1;
  private contradicted = false;
  /** How many conflicts all searches took, and how many truth values were guessed. */
  conflicts = 0;
  decisions = 0;
  /** How many searches found truth values. */
  found = 0;
  /** Literals of the last search's assumptions that cannot hold together. */
  core: Literal[] = [];
  private count = 0;
  private assumed: readonly Literal[] = [];

  get variables(): number {
    return this.count;
  }

  /** A new variable. One that others follow from is guessed first, as long as no conflict says otherwise. */
  add(isGuessedFirst = false): Literal {
    this.count += 1;
    const variable = this.count;
    if (2 * variable + 1 >= this.values.length) this.grow();
    this.reasons.push(undefined);
    this.watches.push([], []);
    this.activities[variable] = isGuessedFirst ? slightly * this.bump : 0;
    this.insert(variable);
    return variable;
  }

  /** Asks that one of the literals is true. */
  require(clause: readonly Literal[]): void {
    if (this.contradicted) return;
    this.cancelTo(0);
    const kept = new Set<Literal>();
    for (const literal of clause) {
      const value = this.valueOf(literal);
      if (value === 1 || kept.has(-literal)) return;
      if (value === -1) kept.add(literal);
    }
    const [first] = kept;
    if (first === undefined) this.contradicted = true;
    else if (kept.size === 1) {
      this.assign(first, undefined);
      if (this.propagate() !== undefined) this.contradicted = true;
    } else this.watch(Int32Array.from(kept));
  }

  /** Whether all clauses and all assumptions can be true together. */
  solve(assumptions: readonly Literal[] = [], mostConflicts = Number.POSITIVE_INFINITY): Found {
    this.core = [];
    if (this.contradicted) return false;
    this.cancelTo(this.levelsKept(assumptions));
    this.assumed = [...assumptions];
    let allowed = mostConflicts;
    for (let round = 1; ; round += 1) {
      const budget = Math.min(allowed, 100 * luby(round));
      const found = this.search(assumptions, budget);
      if (found !== undefined) return found;
      allowed -= budget;
      if (allowed <= 0) {
        this.cancelTo(0);
        return undefined;
      }
      this.cancelTo(0);
    }
  }

  /** What the last search assumed first and this one does too need not be worked out again: each assumption is a level. */
  private levelsKept(assumptions: readonly Literal[]): number {
    const most = Math.min(this.marks.length, assumptions.length, this.assumed.length);
    let kept = 0;
    while (kept < most && this.assumed[kept] === assumptions[kept]) kept += 1;
    return kept;
  }

  /** After a search that found truth values: whether a literal is true in them. */
  isTrue(literal: Literal): boolean {
    return this.valueOf(literal) === 1;
  }

  private search(assumptions: readonly Literal[], budget: number): Found {
    let left = budget;
    for (;;) {
      const conflict = this.propagate();
      if (conflict !== undefined) {
        this.conflicts += 1;
        left -= 1;
        if (this.marks.length === 0) {
          this.contradicted = true;
          return false;
        }
        this.learnFrom(conflict);
        continue;
      }
      if (left <= 0) return undefined;
      const next = this.next(assumptions);
      if (next === 'refuted') return false;
      if (next === undefined) {
        this.found += 1;
        return true;
      }
      this.marks.push(this.trail.length);
      if (next !== 0) this.assign(next, undefined);
    }
  }

  /** The next assumption or guess; 0 where an assumption holds already, `undefined` where nothing is open. */
  private next(assumptions: readonly Literal[]): Literal | undefined | 'refuted' {
    const assumption = assumptions[this.marks.length];
    if (assumption !== undefined) {
      const value = this.valueOf(assumption);
      if (value === 1) return 0;
      if (value === -1) return assumption;
      this.core = this.whyFalse(assumption);
      return 'refuted';
    }
    while (this.trail.length < this.count) {
      const variable = this.popMost();
      if (variable === undefined) return undefined;
      if (this.valueOf(variable) !== -1) continue;
      this.decisions += 1;
      return this.phases[variable] === 1 ? variable : -variable;
    }
    return undefined;
  }

  /** Assigns what follows; returns a clause that cannot be true any more. */
  private propagate(): Int32Array | undefined {
    while (this.head < this.trail.length) {
      const falsified = -(this.trail[this.head] ?? 0);
      this.head += 1;
      const list = this.watches[index(falsified)] ?? [];
      let kept = 0;
      for (let at = 0; at < list.length; at += 1) {
        const clause = list[at] as Int32Array;
        if (clause[0] === falsified) {
          clause[0] = clause[1] as number;
          clause[1] = falsified;
        }
        const first = clause[0] as number;
        if (this.valueOf(first) === 1) {
          list[kept++] = clause;
          continue;
        }
        let moved = false;
        for (let other = 2; other < clause.length; other += 1) {
          const literal = clause[other] as number;
          if (this.valueOf(literal) === 0) continue;
          clause[1] = literal;
          clause[other] = falsified;
          this.watches[index(literal)]?.push(clause);
          moved = true;
          break;
        }
        if (moved) continue;
        list[kept++] = clause;
        if (this.valueOf(first) === 0) {
          for (let rest = at + 1; rest < list.length; rest += 1) list[kept++] = list[rest] as Int32Array;
          list.length = kept;
          this.head = this.trail.length;
          return clause;
        }
        this.assign(first, clause);
      }
      list.length = kept;
    }
    return undefined;
  }

  /** Learns the clause of the first unique implication point and goes back to where it asks for something. */
  private learnFrom(conflict: Int32Array): void {
    const level = this.marks.length;
    const learnt: Literal[] = [0];
    let open = 0;
    let at = this.trail.length - 1;
    let reason: Int32Array | undefined = conflict;
    let asserted: Literal = 0;
    do {
      for (const literal of reason ?? []) {
        const variable = Math.abs(literal);
        if (literal === asserted || this.seen[variable] === 1 || this.levels[variable] === 0) continue;
        this.seen[variable] = 1;
        this.raise(variable);
        if (this.levels[variable] === level) open += 1;
        else learnt.push(literal);
      }
      while (this.seen[Math.abs(this.trail[at] ?? 0)] !== 1) at -= 1;
      asserted = this.trail[at] ?? 0;
      reason = this.reasons[Math.abs(asserted)];
      this.seen[Math.abs(asserted)] = 0;
      open -= 1;
      at -= 1;
    } while (open > 0);
    learnt[0] = -asserted;
    for (const literal of learnt) this.seen[Math.abs(literal)] = 0;
    const byLevel = learnt.slice(1).sort((a, b) => (this.levels[Math.abs(b)] ?? 0) - (this.levels[Math.abs(a)] ?? 0));
    const clause = Int32Array.from([learnt[0], ...byLevel]);
    this.bump /= 0.95;
    this.cancelTo(byLevel[0] === undefined ? 0 : (this.levels[Math.abs(byLevel[0])] ?? 0));
    if (clause.length > 1) this.watch(clause);
    this.assign(learnt[0], clause.length > 1 ? clause : undefined);
  }

  /** The assumptions, this one among them, that make it false. */
  private whyFalse(assumption: Literal): Literal[] {
    const core = [assumption];
    const marked = new Set([Math.abs(assumption)]);
    for (let at = this.trail.length - 1; at >= (this.marks[0] ?? this.trail.length); at -= 1) {
      const literal = this.trail[at] ?? 0;
      if (!marked.has(Math.abs(literal))) continue;
      const reason = this.reasons[Math.abs(literal)];
      if (reason === undefined) core.push(literal);
      else for (const each of reason) if ((this.levels[Math.abs(each)] ?? 0) > 0) marked.add(Math.abs(each));
    }
    return core;
  }

  private watch(clause: Int32Array): void {
    this.watches[index(clause[0] as number)]?.push(clause);
    this.watches[index(clause[1] as number)]?.push(clause);
  }

  private assign(literal: Literal, reason: Int32Array | undefined): void {
    const variable = Math.abs(literal);
    this.values[index(literal)] = 1;
    this.values[index(-literal)] = 0;
    this.levels[variable] = this.marks.length;
    this.reasons[variable] = reason;
    this.trail.push(literal);
  }

  private cancelTo(level: number): void {
    const start = this.marks[level];
    if (start === undefined) return;
    for (let at = this.trail.length - 1; at >= start; at -= 1) {
      const literal = this.trail[at] ?? 0;
      const variable = Math.abs(literal);
      this.values[index(literal)] = -1;
      this.values[index(-literal)] = -1;
      this.phases[variable] = literal > 0 ? 1 : 0;
      this.reasons[variable] = undefined;
      if (this.positions[variable] === -1) this.insert(variable);
    }
    this.trail.length = start;
    this.marks.length = level;
    this.head = start;
  }

  private valueOf(literal: Literal): number {
    return this.values[index(literal)] as number;
  }

  private raise(variable: number): void {
    const activity = (this.activities[variable] as number) + this.bump;
    this.activities[variable] = activity;
    if (activity > 1e100) {
      for (let each = 0; each < this.activities.length; each += 1)
        this.activities[each] = (this.activities[each] as number) * 1e-100;
      this.bump *= 1e-100;
    }
    const at = this.positions[variable] as number;
    if (at !== -1) this.siftUp(at);
  }

  private insert(variable: number): void {
    this.heap.push(variable);
    this.positions[variable] = this.heap.length - 1;
    this.siftUp(this.heap.length - 1);
  }

  private popMost(): number | undefined {
    const [top] = this.heap;
    const last = this.heap.pop();
    if (top === undefined || last === undefined) return undefined;
    this.positions[top] = -1;
    if (this.heap.length > 0) {
      this.heap[0] = last;
      this.positions[last] = 0;
      this.siftDown(0);
    }
    return top;
  }

  private siftUp(start: number): void {
    let at = start;
    const variable = this.heap[at] as number;
    while (at > 0) {
      const parent = (at - 1) >> 1;
      const above = this.heap[parent] as number;
      if ((this.activities[above] as number) >= (this.activities[variable] as number)) break;
      this.heap[at] = above;
      this.positions[above] = at;
      at = parent;
    }
    this.heap[at] = variable;
    this.positions[variable] = at;
  }

  private siftDown(start: number): void {
    let at = start;
    const variable = this.heap[at] as number;
    for (;;) {
      let child = 2 * at + 1;
      if (child >= this.heap.length) break;
      const right = this.heap[child + 1];
      if (right !== undefined && (this.activities[right] as number) > (this.activities[this.heap[child] as number] as number))
        child += 1;
      const below = this.heap[child] as number;
      if ((this.activities[below] as number) <= (this.activities[variable] as number)) break;
      this.heap[at] = below;
      this.positions[below] = at;
      at = child;
    }
    this.heap[at] = variable;
    this.positions[variable] = at;
  }

  private grow(): void {
    const size = this.values.length;
    const wider = <T extends Int8Array | Int32Array | Uint8Array | Float64Array>(old: T, make: T): T => {
      make.set(old);
      return make;
    };
    this.values = wider(this.values, new Int8Array(2 * size).fill(-1));
    this.levels = wider(this.levels, new Int32Array(size));
    this.activities = wider(this.activities, new Float64Array(size));
    this.phases = wider(this.phases, new Int8Array(size));
    this.seen = wider(this.seen, new Uint8Array(size));
    this.positions = wider(this.positions, new Int32Array(size).fill(-1));
  }
}

/** Less than one conflict counts. */
const slightly = 1e-6;

function index(literal: Literal): number {
  return literal > 0 ? 2 * literal : -2 * literal + 1;
}

/** The Luby sequence: 1, 1, 2, 1, 1, 2, 4 … (Luby, Sinclair and Zuckerman 1993). */
function luby(round: number): number {
  let size = 1;
  while (size < round + 1) size *= 2;
  let at = round;
  for (let power = size / 2; power >= 1; power /= 2) {
    if (at === 2 * power - 1) return power;
    if (at >= power) at -= power - 1;
  }
  return 1;
}
