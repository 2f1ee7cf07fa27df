import type { Answering } from '../decide/decide.js';
import type { Provable, ProveStrict } from '../link/rule-changes.js';
import { meaningOf } from './meaning.js';
import { boxInLine, sayBox, type Words } from './say-box.js';
import { type Looser, looserIn } from './stricter.js';

/**
 * The proof that a change of rules makes no answer less strict: by exact search over all situations, also those where facts are
 * missing, whatever the clinic states about itself and whatever machines it has.
 *
 * Rules are linked again and again, for several dates and after each edit, and most changes are the same each time: what was found for
 * the very same rules and facts is kept.
 */
export const proveStrict: ProveStrict = (decision, before, after) => {
  const [was, is] = [asAnswering(before), asAnswering(after)];
  const question = JSON.stringify([decision, meaningOf(decision, was), meaningOf(decision, is)]);
  if (found.size >= mostKept) found.clear();
  if (!found.has(question)) found.set(question, looserIn(decision, was, is));
  return say(found.get(question), [after.terms]);
};

const found = new Map<string, ReturnType<typeof looserIn>>();
const mostKept = 2000;

function say(looser: Looser | 'not decided' | undefined, words: Words): string | undefined {
  if (looser === undefined) return undefined;
  return looser === 'not decided' ? 'the proof that it is not was given up: the decision is too wide' : sayLooser(looser, words);
}

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
