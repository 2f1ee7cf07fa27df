import type { Rulebook, Situation } from '../link/rulebook.js';
import type { Answer } from './answer.js';

/** Answers one decision for one situation. */
export function decide(_rulebook: Rulebook, _decision: string, _given: Situation): Answer {
  throw new Error('in the making');
}
