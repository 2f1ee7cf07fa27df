import type { Rulebook } from '../../link/rulebook.js';
import { phrase, type Spoken } from '../text/phrase.js';

/** A term's word; an unknown id stands for itself. */
export function labelOf({ terms }: Pick<Rulebook, 'terms'>, id: string): string {
  return terms.get(id)?.label ?? id;
}

/** A layer as it is printed: the region of its pack, or `this clinic`. */
export function layerName(rulebook: Pick<Rulebook, 'packs'> & Spoken, layer: string): string {
  if (layer === 'clinic' || layer === 'base') return phrase(rulebook, `layer.${layer}`);
  return rulebook.packs.find(({ id }) => id === layer)?.region ?? layer;
}
