import { allowedIn, type Box, type Dimension, type Space } from './space.js';

/** Most steps of one count. */
const mostSteps = 100_000;

/**
 * Which share of all situations lies in at least one of some boxes, from 0 to 1: of the situations in which every fact is stated.
 * Values of a fact count alike, members of a set are in it or not by halves, and the ranges that rules cut a number into count
 * alike, since nothing says how often each occurs.
 *
 * @returns `undefined` where counting was given up
 */
export function shareOf(boxes: readonly Box[], space: Space): number | undefined {
  const dimensions = [...space.dimensions.values()].filter(
    (each) => each.fact.type !== 'answer' && boxes.some((box) => box.has(each.id)),
  );
  const told = [...space.dimensions.values()].filter(({ fact }) => fact.type === 'answer');
  const counted = boxes.filter((box) => told.every((each) => !box.has(each.id) || allowsUnstated(box, each)));
  const factors = dimensions.flatMap((dimension) => factorsOf(dimension, counted));
  const known = new Map<string, number>();
  let steps = 0;
  const share = (at: number, left: readonly number[]): number => {
    if (left.length === 0) return 0;
    const factor = factors[at];
    if (factor === undefined) return 1;
    const key = `${at} ${left.join(' ')}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    steps += 1;
    let sum = 0;
    if (steps <= mostSteps)
      for (const { weight, boxes: allowing } of factor) {
        sum +=
          weight *
          share(
            at + 1,
            left.filter((each) => allowing.has(each)),
          );
      }
    known.set(key, sum);
    return sum;
  };
  const total = share(
    0,
    counted.map((_, index) => index),
  );
  return steps > mostSteps ? undefined : total;
}

function allowsUnstated(box: Box, dimension: Dimension): boolean {
  return allowedIn(box, dimension).unstated;
}

interface Part {
  weight: number;
  /** The boxes that allow this part, by their index. */
  boxes: ReadonlySet<number>;
}

/** A fact as independent factors: one, or of a set one a piece. Parts that the same boxes allow are one. */
function factorsOf(dimension: Dimension, boxes: readonly Box[]): Part[][] {
  const { pieces } = dimension;
  const allowed = boxes.map((box) => (box.has(dimension.id) ? allowedIn(box, dimension) : undefined));
  const those = (allows: (index: number) => boolean) => new Set(boxes.flatMap((_, index) => (allows(index) ? [index] : [])));
  if (pieces.kind === 'set')
    return pieces.pieces.map((members, piece) => {
      const without = 0.5 ** members.length;
      return [true, false].map((isIn) => ({
        weight: isIn ? 1 - without : without,
        boxes: those((index) => {
          const each = allowed[index];
          if (each === undefined) return true;
          return each.kind === 'set' && each.stated && !(isIn ? each.lacks : each.has).includes(piece);
        }),
      }));
    });
  const total = pieces.kind === 'members' ? pieces.pieces.flat().length : pieces.pieces.length;
  return [
    pieces.pieces.map((piece, at) => ({
      weight: (pieces.kind === 'members' && Array.isArray(piece) ? piece.length : 1) / total,
      boxes: those((index) => {
        const each = allowed[index];
        return each === undefined || (each.kind === 'values' && each.pieces.includes(at));
      }),
    })),
  ];
}
