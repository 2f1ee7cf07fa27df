import { decide } from '../../decide/decide.js';
import type { Decision, InstrumentFamily, Rulebook } from '../../link/rulebook.js';
import { groupBy } from '../text/group-by.js';
import { join, type Markdown } from '../text/markdown.js';
import { ruleText, said, saidText } from '../text/markdown-safe.js';
import { capitalize } from '../text/say-list.js';
import { printedDecisions } from './printed-decisions.js';
import { sayOutcome } from './say-member.js';

/** The instrument register: each family with its answer to every decision that has a column there, by group. */
export function modelRegister(rulebook: Rulebook) {
  const decisions = printedDecisions(rulebook).filter(({ register }) => register !== undefined);
  const groups = groupBy(rulebook.instruments.values(), ({ group }) => group);
  return {
    widths: ['4', '1', ...decisions.map(() => '3')].join(' '),
    columns: decisions.map(({ id, register }) => ({ id, label: register ?? id })),
    groups: [...groups].map(([name, families]) => ({
      name: said(name, 'clinic'),
      families: families.map((family) => ({
        id: family.id,
        name: said(family.name, 'clinic'),
        count: family.count === undefined ? '' : String(family.count),
        answers: decisions.map((decision) => answerFor(rulebook, decision, family)),
      })),
      notes: families.flatMap(({ id, name, note }) =>
        note === undefined ? [] : [{ id, name: said(name, 'clinic'), note: saidText(note, 'clinic') }],
      ),
    })),
  };
}

/** The answer, and while it is open what has to be asked. */
function answerFor(
  rulebook: Rulebook,
  decision: Decision,
  family: InstrumentFamily,
): { open: boolean; answer: Markdown; ask: Markdown } {
  const answer = decide(rulebook, decision.id, family.facts);
  const words =
    decision.kind === 'verdict' ? shorten(decision.say[answer.outcome]) : sayOutcome(rulebook, decision.id, answer.outcome);
  const [asked] = answer.needed;
  return {
    open: !answer.settled,
    answer: typeof words === 'string' ? join([words]) : words,
    ask: ruleText(rulebook.facts.get(asked ?? '')?.question ?? ''),
  };
}

function shorten(words = ''): Markdown {
  return ruleText(capitalize(words.replace(/\.$/, '')));
}
