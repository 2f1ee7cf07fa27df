import type { Answer } from '../decide/answer.js';
import type { Decision, Rulebook } from '../link/rulebook.js';
import { plainText } from '../write/text/plain-text.js';
import { colors } from './colors.js';
import type { Context } from './context.js';
import { citationText, programName } from './say.js';

/** Most lines of one kind that are printed of an open answer; `--json` shows all. */
const most = 5;

/** Prints an answer for people. */
export function printAnswer({ out }: Pick<Context, 'out'>, rulebook: Rulebook, decision: Decision, answer: Answer): void {
  const row = (label: string, text: string, more = '') =>
    out(`  ${colors.dim(label.padEnd(8))} ${plainText(rulebook, text)}${more && ` ${colors.dim(more)}`}`);
  const some = <T>(label: string, all: readonly T[], print: (each: T) => void) => {
    all.slice(0, most).forEach(print);
    if (all.length > most) row(label, `and ${all.length - most} more`, '(--json shows all)');
  };
  out(decision.question);
  out(`  ${colors.bold(sayOutcome(rulebook, decision, answer))} ${colors.dim(`(${answer.outcome})`)}`);
  if (!answer.settled) row('open', `until more is known${answer.offers ? '' : `; possible: ${answer.possible.join(', ')}`}`);
  for (const certain of [true, false])
    some(
      certain ? 'because' : 'perhaps',
      answer.reasons.filter((reason) => reason.certain === certain),
      ({ because, rule, source }) =>
        row(
          certain ? 'because' : 'perhaps',
          because,
          rule === undefined ? '' : `[${[rule, ...(source === undefined ? [] : [citationText(rulebook, source)])].join('; ')}]`,
        ),
    );
  for (const { program, meets, mayMeet, lacks } of answer.offers ?? []) {
    const missing = [...new Set(lacks.flatMap(({ facts }) => facts.map((fact) => rulebook.facts.get(fact)?.label ?? fact)))];
    if (meets) row('fits', programName(rulebook, program));
    else row(mayMeet ? 'may fit' : 'not', programName(rulebook, program), missing.length > 0 ? `[${missing.join(', ')}]` : '');
  }
  for (const id of answer.instead)
    row('instead', rulebook.procedures.get(id)?.title ?? rulebook.notHere.get(id) ?? id, `[${id}]`);
  for (const caution of answer.cautions) row('caution', caution);
  some('ask', answer.needed, (id) => row('ask', rulebook.facts.get(id)?.question ?? id, `[${id}]`));
}

function sayOutcome(rulebook: Rulebook, decision: Decision, { outcome, settled }: Answer): string {
  if (decision.kind === 'verdict') return plainText(rulebook, decision.say[outcome] ?? outcome);
  if (outcome !== 'none') return programName(rulebook, outcome);
  return settled ? 'No program of this clinic is known to do it.' : 'No program is sure yet.';
}
