/** More classes of a set than this are kept as a list of them, not as a bit set. */
export const mostClassesInABitSet = 16;

/** Places as a bit set; -1, a member that there is not, as a bit that is never set. */
export function bitsOf(places: readonly number[]): number {
  return places.reduce((bits, place) => bits | (1 << (place === -1 ? 30 : place)), 0);
}
