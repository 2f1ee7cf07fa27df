import type { Rulebook } from '../../link/rulebook.js';

/** A term's word; an unknown id stands for itself. */
export function labelOf({ terms }: Pick<Rulebook, 'terms'>, id: string): string {
  return terms.get(id)?.label ?? id;
}

/** A layer as it is printed: the region of its pack, or `this clinic`. */
export function layerName({ packs }: Pick<Rulebook, 'packs'>, layer: string): string {
  if (layer === 'clinic') return 'this clinic';
  return packs.find(({ id }) => id === layer)?.region ?? layer;
}
