import type { Rulebook } from '../../link/rulebook.js';
import type { Figure } from './figure.js';

/** The figures of a manual by id, made from what holds in this clinic. */
export function modelFigures(_rulebook: Rulebook): ReadonlyMap<string, Figure> {
  return new Map();
}
