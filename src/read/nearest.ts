import { distance } from 'fastest-levenshtein';

/** No id is longer, so that nothing longer is a mistyped one. */
const longest = 100;

/** The known name most like a mistyped one, if any is near. Of two that are as near, the one that comes first. */
export function nearest(name: string, known: Iterable<string>): string | undefined {
  if (name.length > longest) return undefined;
  let best: string | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const each of known) {
    const steps = stepsBetween(name, each);
    if (steps < least) [best, least] = [each, steps];
  }
  return best;
}

/** The help line for an unknown name. */
export function didYouMean(name: string, known: Iterable<string>): string | undefined {
  const best = nearest(name, known);
  return best === undefined ? undefined : `did you mean \`${best}\`?`;
}

/** How many letters two names differ by; infinite where nobody would take one for the other. */
function stepsBetween(name: string, each: string): number {
  if (name.toLowerCase() === each.toLowerCase()) return 0.5;
  const steps = distance(name, each);
  if (lastPart(name) === lastPart(each)) return Math.min(steps, 2);
  const contained = name.includes(each) || each.includes(name);
  const most = name.length <= 3 ? Number(contained) : Math.max(2, Math.floor(name.length / 4));
  return steps <= most && steps < Math.max(name.length, each.length) ? steps : Number.POSITIVE_INFINITY;
}

function lastPart(id: string): string {
  return id.split(/[./]/).at(-1) ?? id;
}
