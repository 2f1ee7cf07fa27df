import type { Rulebook, Verdict } from '../../../link/rulebook.js';
import { printedDecisions } from '../../model/printed-decisions.js';
import { phrase } from '../../text/phrase.js';
import { sayList } from '../../text/say-list.js';
import type { Figure } from '../figure.js';
import { outcomesTogether } from '../outcomes-together.js';
import { plainWords } from '../plain-words.js';

/** What follows from each result of a test, and from each state of a load. */
export interface FailureDrawing {
  kind: 'failure';
  questions: { question: string; answers: FailureAnswer[] }[];
}

export interface FailureAnswer {
  words: string;
  /** The procedures that come next, whatever the reason for the answer, or for some reasons. */
  next: { title: string; always: boolean }[];
}

/** The decisions that find out whether a load is sterile, in the order in which they come. */
const decisions = ['air-removal-test-result', 'load-release', 'spore-test-result', 'pack-use'];

/** What the answers of those decisions lead to in this clinic; nothing where none of them is taken here. */
export function modelFailure(rulebook: Rulebook): Figure | undefined {
  const printed = printedDecisions(rulebook);
  const verdicts = decisions.flatMap((id) =>
    printed.filter((each): each is Verdict => each.kind === 'verdict' && each.id === id),
  );
  if (verdicts.length === 0) return undefined;
  const questions = verdicts.map((decision) => ({ question: decision.question, answers: answersOf(rulebook, decision) }));
  const said = questions.map(({ question, answers }) => {
    const each = answers.map(({ words, next }) => {
      const titles = next.map(({ title }) => title);
      const id = next.every(({ always }) => always) ? 'figure.failure-alt-next' : 'figure.failure-alt-next-maybe';
      return next.length === 0 ? words : phrase(rulebook, id, { words, next: sayList(rulebook, titles, 'or') });
    });
    return phrase(rulebook, 'figure.failure-alt-question', { question, answers: each.join(' ') });
  });
  return {
    id: 'failure',
    caption: phrase(rulebook, 'figure.failure-caption'),
    alt: [phrase(rulebook, 'figure.failure-alt'), ...said].join(' '),
    drawing: { kind: 'failure', questions },
  };
}

function answersOf(rulebook: Rulebook, { id: decision, outcomes, say, rules, otherwise }: Verdict): FailureAnswer[] {
  const isPossible = outcomesTogether(rulebook, [decision]);
  return outcomes
    .filter((outcome) => outcome === otherwise || isPossible({ [decision]: outcome }))
    .map((outcome) => {
      const own = rules.filter((rule) => rule.outcome === outcome);
      const next = [...new Set(own.flatMap(({ instead }) => instead ?? []))];
      return {
        words: plainWords(rulebook, say[outcome] ?? outcome),
        next: next.flatMap((id) => {
          const procedure = rulebook.procedures.get(id);
          const always = own.every(({ instead }) => instead === id);
          return procedure === undefined ? [] : [{ title: procedure.title, always }];
        }),
      };
    });
}
