/** A share from 0 to 1 for people: `2.5 %`, `1 in 2,000`, so that a small one is not rounded to nothing. */
export function sayShare(share: number): string {
  if (share >= 0.995) return share === 1 ? 'all' : 'nearly all';
  if (share >= 0.001) return `${Number((share * 100).toPrecision(2))} %`;
  return `1 in ${Number((1 / share).toPrecision(2)).toLocaleString('en-US')}`;
}
