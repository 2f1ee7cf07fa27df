import type { Answering } from '../decide/decide.js';
import type { Provable, ProveStrict } from '../link/rule-changes.js';
import { boxInLine, sayBox, type Words } from './say-box.js';
import { type Looser, looserIn } from './stricter.js';

/**
 * The proof that a change of rules makes no answer less strict: by exact search over all situations, also those where facts are
 * missing, whatever the clinic states about itself and whatever machines it has.
 */
export const proveStrict: ProveStrict = (decision, before, after) => {
  const looser = looserIn(decision, asAnswering(before), asAnswering(after));
  if (looser === undefined) return undefined;
  if (looser === 'not decided') return 'the proof that it is not was given up: the decision is too wide';
  return sayLooser(looser, [after.terms]);
};

/** `stays-out` becomes `ask` where material: with silk */
export function sayLooser({ box, space, program, before, after }: Looser, words: Words): string {
  const said = sayBox(box, space, words);
  if (program === undefined) return `\`${before}\` becomes \`${after}\` where ${boxInLine(said)}`;
  const of = (isProgram: boolean) => said.filter(({ ofProgram }) => ofProgram === isProgram);
  const where = of(false).length === 0 ? '' : `where ${boxInLine(of(false))}, `;
  return `${where}a program would be offered that is not now: ${boxInLine(of(true))}`;
}

function asAnswering({ facts, decisions }: Provable): Answering {
  return { facts: new Map(facts), decisions: new Map(decisions), machines: new Map(), clinic: { facts: {} }, digest: '' };
}
