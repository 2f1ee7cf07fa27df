import { distance } from 'fastest-levenshtein';

/** The known name most like a mistyped one, if any is near. */
export function nearest(name: string, known: Iterable<string>): string | undefined {
  const last = (id: string) => id.split(/[./]/).at(-1) ?? id;
  let best: string | undefined;
  let least = Math.max(2, Math.floor(name.length / 3)) + 1;
  for (const each of known) {
    const steps = Math.min(distance(name, each), last(name) === last(each) ? 2 : Number.POSITIVE_INFINITY);
    if (steps < least) [best, least] = [each, steps];
  }
  return best;
}

/** The help line for an unknown name. */
export function didYouMean(name: string, known: Iterable<string>): string | undefined {
  const best = nearest(name, known);
  return best === undefined ? undefined : `did you mean \`${best}\`?`;
}
