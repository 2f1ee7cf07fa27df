import type { Literal } from './solver.js';
import { type Box, boxFound, literalsOf, type Space } from './space.js';

/** How much a search may cost before it is given up: what is not decided is said to be so, never guessed. */
export interface Effort {
  /** Conflicts of one question. */
  conflicts: number;
  /** Regions of one question. */
  regions: number;
}

export const usualEffort: Effort = { conflicts: 20_000, regions: 12 };

/** The regions of a question. */
export interface Regions {
  /** Largest boxes that lie wholly within what was asked for; they may overlap, and together they are all of it when `complete`. */
  boxes: Box[];
  /** False where the search was given up, or there are more regions than are listed. */
  complete: boolean;
  /** True where the search ran into its limit before it knew. */
  givenUp: boolean;
}

/**
 * The regions of a space where a formula holds, as few and large boxes: a point is found, each of its facts is set free as long as
 * the formula still holds in the whole box, and the search goes on outside.
 *
 * @param among where points are looked for; the boxes around them may reach beyond
 */
export function regionsOf(space: Space, formula: Literal, effort: Effort = usualEffort, among: readonly Literal[] = []): Regions {
  const { solver } = space.circuit;
  const boxes: Box[] = [];
  const limit = solver.conflicts + effort.conflicts;
  const left = () => Math.max(0, limit - solver.conflicts);
  // One literal turns on all that is said of what was listed already, so that the next question is not held to it.
  const listed = solver.add();
  for (;;) {
    const found = solver.solve([formula, listed, ...among], left());
    if (found === undefined) return { boxes, complete: false, givenUp: true };
    if (!found) return { boxes, complete: true, givenUp: false };
    if (boxes.length >= effort.regions) return { boxes, complete: false, givenUp: false };
    const box = widen(space, boxFound(space), -formula, left);
    boxes.push(box);
    solver.require([-listed, ...literalsOf(box).map((each) => -each)]);
  }
}

/** Where every fact is stated, and no answer of another decision is. What the clinic states about itself is as it states it. */
export function whereAllIsStated({ dimensions, held }: Space): Literal[] {
  return [...dimensions.values()].map(({ id, fact, stated }) => (fact.type === 'answer' || held.has(id) ? -stated : stated));
}

/** The largest box around a box in which a formula never holds. Facts are set free one by one, then what is left of each. */
function widen({ circuit }: Space, box: Box, never: Literal, left: () => number): Box {
  const { solver } = circuit;
  /** Literals that the box cannot do without: with all others, a situation outside was found. */
  const needed = new Set<Literal>();
  const holds = (candidate: Box, dropped: readonly Literal[]): boolean => {
    const found = solver.solve([never, ...literalsOf(candidate)], left());
    if (found === true) {
      const [broken, ...others] = dropped.filter((each) => solver.isTrue(-each));
      if (broken !== undefined && others.length === 0) needed.add(broken);
    }
    return found === false;
  };
  let current = box;
  if (holds(current, [])) current = onlyNamed(current, solver.core);
  for (const fact of [...current.keys()]) {
    const dropped = current.get(fact);
    if (dropped === undefined) continue;
    const without = new Map([...current].filter(([id]) => id !== fact));
    if (holds(without, dropped)) current = onlyNamed(without, solver.core);
  }
  for (const literal of [...current.values()].flatMap((literals) => [...literals].reverse())) {
    if (needed.has(literal)) continue;
    const fewer = new Map([...current].map(([id, literals]) => [id, literals.filter((each) => each !== literal)]));
    if (literalsOf(fewer).length < literalsOf(current).length && holds(fewer, [literal])) current = onlyNamed(fewer, solver.core);
  }
  return new Map([...current].filter(([, literals]) => literals.length > 0));
}

/** A box without the literals that a refutation did without. */
function onlyNamed(box: Box, core: readonly Literal[]): Box {
  const named = new Set(core);
  return new Map(
    [...box].flatMap(([id, literals]): [string, Literal[]][] => {
      const kept = literals.filter((each) => named.has(each));
      return kept.length === 0 ? [] : [[id, kept]];
    }),
  );
}
