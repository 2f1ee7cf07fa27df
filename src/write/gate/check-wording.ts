import type { Place, Rulebook } from '../../link/rulebook.js';
import type { Finding } from '../../read/finding.js';
import { groupBy } from '../text/group-by.js';
import { plainText } from '../text/plain-text.js';
import { type Readability, readability, wordsOf } from '../text/readability.js';
import { splitSentences } from '../text/sentences.js';
import { noOrigins, type Origins, placeOfWords } from './origins.js';
import { imperatives } from './words-en.js';

/** Most orders that one step gives: beyond that somebody with wet gloves has forgotten the first. */
export const mostOrders = 3;

/** Most words of a sentence in a step. Other languages take more words than English to say the same. */
export function mostWords(language: string): number {
  return language.startsWith('en') ? 28 : 34;
}

/** Hardest reading level of a procedure, task or decision, by formula: eight years of school; on LIX, what newspapers print. */
export const hardest: Readonly<Record<Readability['formula'], number>> = { 'Flesch-Kincaid': 8, LIX: 50 };

/** A procedure, a policy, a task or a decision as its readers see it. */
export interface Worded {
  kind: 'procedure' | 'policy' | 'task' | 'decision';
  id: string;
  place: Place;
  /** What somebody does, one text a step. */
  steps: { id: string; text: string; place: Place }[];
  /** All that is read, references filled in. */
  level: Readability;
}

/** How a rulebook is worded, and what is harder to follow than it need be. */
export interface WordingReport {
  all: Worded[];
  findings: Finding[];
}

/**
 * Looks at the wording of every procedure, policy, task and decision: steps that give too many orders (in English), sentences that
 * are too long, texts that are too hard to read. All are warnings; the packs that come with the tool are held to a ceiling.
 */
export function checkWording(rulebook: Rulebook, origins: Origins = noOrigins): WordingReport {
  const all = wordedIn(rulebook);
  const isEnglish = rulebook.language.startsWith('en');
  const findings = all.flatMap(({ kind, id, place, steps, level }) => [
    ...steps.flatMap((step) => [...(isEnglish ? checkOrders(step, origins) : []), ...checkLength(step, rulebook, origins)]),
    ...checkLevel(kind, id, place, level),
  ]);
  return { all, findings };
}

function wordedIn(rulebook: Rulebook): Worded[] {
  const { procedures, policies, tasks, decisions, notHere, language } = rulebook;
  const level = (texts: readonly (string | undefined)[]) =>
    readability(texts.flatMap((text) => (text === undefined ? [] : plainText(rulebook, text))).join('\n'), language);
  return [
    ...[...procedures.values()].map(
      ({ id, place, purpose, cautions, steps, done }): Worded => ({
        kind: 'procedure',
        id,
        place,
        steps: steps.map((step) => ({ id: step.id, text: step.do, place: step.place })),
        level: level([purpose, ...cautions, ...steps.flatMap((step) => [step.caution, step.do, step.why, step.ifNot]), done]),
      }),
    ),
    ...[...policies.values()].map(
      ({ id, place, purpose, points }): Worded => ({
        kind: 'policy',
        id,
        place,
        steps: points.map((point) => ({ id: point.id, text: point.say, place: point.place })),
        level: level([purpose, ...points.flatMap((point) => [point.caution, point.say, point.why, point.ifNot])]),
      }),
    ),
    ...[...tasks.values()].map(
      ({ id, place, steps, caution, pass, ifNot }): Worded => ({
        kind: 'task',
        id,
        place,
        steps: steps.map((text, index) => ({ id: `${id}, step ${index + 1}`, text, place })),
        level: level([caution, ...steps, pass, ifNot]),
      }),
    ),
    ...[...decisions.values()]
      .filter(({ id }) => !notHere.has(id))
      .map(
        (decision): Worded => ({
          kind: 'decision',
          id: decision.id,
          place: decision.place,
          steps: [],
          level: level([
            decision.about,
            ...(decision.kind === 'verdict' ? Object.values(decision.say) : []),
            ...decision.rules.flatMap(({ because, cautions }) => [because, ...cautions]),
          ]),
        }),
      ),
  ];
}

function checkOrders({ id, text, place }: Worded['steps'][number], origins: Origins): Finding[] {
  const orders = countOrders(text);
  if (orders <= mostOrders) return [];
  return [
    {
      code: 'W514',
      message: `step \`${id}\` gives ${orders} orders at once, more than ${mostOrders}`,
      place: placeOfWords(origins, place, firstWords(text)),
      help: 'make a step of each, or say them shorter',
    },
  ];
}

/** How many things a text tells somebody to do: verbs that begin a sentence, or a clause behind a comma, `and` or `then`. */
export function countOrders(text: string): number {
  const clauses = splitSentences(text.replace(/\[\]\([^)]*\)/g, 'that')).flatMap((sentence) =>
    sentence.split(/[,;:] (?:and |then |or )?|\b(?:and|then) /),
  );
  return clauses.filter((clause) => {
    const [first = '', ...more] = clause
      .trim()
      .toLowerCase()
      .split(/[^\p{L}']+/u);
    return imperatives.has(first) && more.length > 0;
  }).length;
}

function checkLength({ id, text, place }: Worded['steps'][number], rulebook: Rulebook, origins: Origins): Finding[] {
  const most = mostWords(rulebook.language);
  return splitSentences(text).flatMap((sentence): Finding[] => {
    const words = wordsOf(plainText(rulebook, sentence)).length;
    if (words <= most) return [];
    return [
      {
        code: 'W515',
        message: `a sentence of ${words} words in step \`${id}\`, more than ${most}`,
        place: placeOfWords(origins, place, firstWords(sentence)),
        help: 'make two of it',
      },
    ];
  });
}

function checkLevel(kind: string, id: string, place: Place, { formula, score }: Readability): Finding[] {
  if (score <= hardest[formula]) return [];
  return [
    {
      code: 'W516',
      message: `${kind} \`${id}\` is hard to read: ${formula} ${score.toFixed(1)}, above ${hardest[formula]}`,
      place,
      help: 'use shorter sentences and shorter words',
    },
  ];
}

/** Enough of a text to find it in its file. */
function firstWords(text: string): string {
  return (
    text
      .split(/\[\]\(/)[0]
      ?.split(' ')
      .slice(0, 8)
      .join(' ')
      .trim() || text
  );
}

/** The mean reading level, and the hardest text. */
export function summarize({ all }: WordingReport): { formula: string; mean: number; hardest: Worded } | undefined {
  const [formula, same = []] = [...groupBy(all, ({ level }) => level.formula)][0] ?? [];
  const [first, ...others] = same;
  if (formula === undefined || first === undefined) return undefined;
  return {
    formula,
    mean: same.reduce((sum, { level }) => sum + level.score, 0) / same.length,
    hardest: others.reduce((most, each) => (each.level.score > most.level.score ? each : most), first),
  };
}
