import type { Rulebook, Verdict } from '../../../link/rulebook.js';
import { labelOf } from '../../model/label-of.js';
import { phrase } from '../../text/phrase.js';
import { capitalize } from '../../text/say-list.js';
import type { Figure } from '../figure.js';
import { outcomesTogether } from '../outcomes-together.js';
import { plainWords } from '../plain-words.js';
import { sayRow } from '../say-row.js';

/** From question to question, what becomes of an instrument. */
export interface InstrumentDrawing {
  kind: 'instrument';
  /** The classes, and which of the lanes below each can lead to, by index. */
  classes: { question: string; boxes: (Choice & { lanes: number[] })[] };
  /** What an instrument needs: a lane for each answer that leads on, and the answers with which its way ends. */
  needs: { question: string; lanes: Choice[]; ends: Choice[] };
  /** Ways of cleaning, the same for every lane. */
  cleaning: { question: string; boxes: Choice[]; ends: Choice[] };
  /** The questions after that, answers by lane. */
  after: { question: string; lanes: (Choice & { ends: boolean })[][] }[];
}

/** An answer, and in smaller type what belongs to it: what it means, or the machines that do it. */
export interface Choice {
  words: string;
  more: string;
}

const decisions = {
  class: 'device-class',
  needs: 'processing-level',
  cleaning: 'cleaning-route',
  after: ['packing', 'sterilizing-method'],
};

/** Answers with which the way of an instrument ends, or waits until someone has decided. */
const ends = new Set(['high-level-disinfect', 'discard', 'do-not-use', 'ask-lead', 'liquid', 'not-allowed']);

/** The kind of machine that does what an answer says; otherwise the answer has the name of the kind. */
const kindsOfAnswers: Readonly<Record<string, string>> = { steam: 'steam-sterilizer', 'dry-heat': 'dry-heat-sterilizer' };

/** The last station of what was sterilized, and the answers that lead to it. */
const storage = { procedure: 'store-packs', zone: 'sterile-storage', from: ['steam', 'dry-heat'] };

/** The decisions about an instrument in the order of its way; nothing where the rulebook lacks one of them. */
export function modelInstrument(rulebook: Rulebook): Figure | undefined {
  const verdict = (id: string): Verdict | undefined => {
    const decision = rulebook.decisions.get(id);
    return decision?.kind === 'verdict' ? decision : undefined;
  };
  const [classes, needs, cleaning] = [verdict(decisions.class), verdict(decisions.needs), verdict(decisions.cleaning)];
  const after = decisions.after.flatMap((id) => verdict(id) ?? []);
  if (classes === undefined || needs === undefined || cleaning === undefined || after.length < decisions.after.length)
    return undefined;
  const meet = outcomesTogether(
    rulebook,
    [classes, needs, cleaning, ...after].map(({ id }) => id),
  );
  const possible = ({ id, outcomes }: Verdict, given: Readonly<Record<string, string>> = {}) =>
    outcomes.filter((outcome) => meet({ ...given, [id]: outcome }));
  const lanes = possible(needs).filter((each) => !ends.has(each));
  const choices = (decision: Verdict, outcomes: readonly string[]) =>
    outcomes.map((outcome) => choiceOf(rulebook, decision, outcome));
  const inSomeLane = cleaning.outcomes.filter((outcome) =>
    lanes.some((lane) => meet({ [needs.id]: lane, [cleaning.id]: outcome })),
  );
  const drawing: InstrumentDrawing = {
    kind: 'instrument',
    classes: {
      question: classes.question,
      boxes: possible(classes).map((outcome) => ({
        words: capitalize(labelOf(rulebook, outcome)),
        more: plainWords(rulebook, rulebook.terms.get(outcome)?.definition ?? ''),
        lanes: lanes.flatMap((lane, index) => (meet({ [classes.id]: outcome, [needs.id]: lane }) ? [index] : [])),
      })),
    },
    needs: {
      question: needs.question,
      lanes: choices(needs, lanes),
      ends: choices(
        needs,
        possible(needs).filter((each) => ends.has(each)),
      ),
    },
    cleaning: {
      question: cleaning.question,
      boxes: choices(
        cleaning,
        inSomeLane.filter((each) => !ends.has(each)),
      ),
      ends: choices(
        cleaning,
        inSomeLane.filter((each) => ends.has(each)),
      ),
    },
    after: [
      ...after.map((decision) => ({
        question: decision.question,
        lanes: lanes.map((lane) =>
          possible(decision, { [needs.id]: lane }).map((outcome) => ({
            ...choiceOf(rulebook, decision, outcome),
            ends: ends.has(outcome),
          })),
        ),
      })),
      ...storageOf(
        rulebook,
        lanes.map((lane) => after.some((each) => possible(each, { [needs.id]: lane }).some((to) => storage.from.includes(to)))),
      ),
    ],
  };
  return {
    id: 'instrument',
    caption: phrase(rulebook, 'figure.instrument-caption'),
    alt: describeInstrument(rulebook, drawing),
    drawing,
  };
}

function choiceOf(rulebook: Rulebook, { say }: Verdict, outcome: string): Choice {
  const kind = kindsOfAnswers[outcome] ?? outcome;
  const machines = [...rulebook.machines.values()].filter((machine) => machine.kind === kind && machine.inService);
  return {
    words: capitalize(plainWords(rulebook, say[outcome] ?? outcome).replace(/\.$/, '')),
    more: machines.map(({ name }) => name).join(', '),
  };
}

function storageOf(rulebook: Rulebook, isStored: readonly boolean[]): InstrumentDrawing['after'] {
  const procedure = rulebook.procedures.get(storage.procedure);
  const rooms = rulebook.clinic.rooms.filter(({ zones }) => zones.some((each) => each === storage.zone));
  if (procedure === undefined || rooms.length === 0) return [];
  const choice = {
    words: capitalize(labelOf(rulebook, storage.zone)),
    more: rooms.map(({ name }) => name).join(', '),
    ends: false,
  };
  return [{ question: procedure.title, lanes: isStored.map((each) => (each ? [choice] : [])) }];
}

function describeInstrument(rulebook: Rulebook, { classes, needs, cleaning, after }: InstrumentDrawing): string {
  const either = (choices: readonly Choice[]) =>
    sayRow(
      rulebook,
      choices.map(({ words, more }) => (more === '' ? words : phrase(rulebook, 'figure.instrument-alt-choice', { words, more }))),
    );
  const ask = (question: string, answers: readonly Choice[]) => {
    const id = question.endsWith('?') ? 'figure.instrument-alt-question' : 'figure.instrument-alt-step';
    return phrase(rulebook, id, { question, answers: either(answers) });
  };
  const lanes = needs.lanes.map((lane, index) => {
    const steps = after.flatMap(({ question, lanes: answers }) => {
      const own = answers[index] ?? [];
      return own.length === 0 ? [] : [ask(question, own)];
    });
    return phrase(rulebook, 'figure.instrument-alt-lane', { answer: lane.words, steps: steps.join(' ') });
  });
  return [
    phrase(rulebook, 'figure.instrument-alt'),
    ask(
      classes.question,
      classes.boxes.map(({ words }) => ({ words, more: '' })),
    ),
    ask(needs.question, [...needs.lanes, ...needs.ends]),
    ask(cleaning.question, [...cleaning.boxes, ...cleaning.ends]),
    ...lanes,
  ].join(' ');
}
