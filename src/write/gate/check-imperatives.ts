import type { Rulebook } from '../../link/rulebook.js';
import type { Finding } from '../../read/finding.js';
import { splitSentences } from '../text/sentences.js';
import type { Mark } from '../tree/nodes.js';
import type { Block } from './blocks.js';
import { elsewhere, leadOf, squeeze } from './origins.js';
import type { PlaceOf } from './place-of.js';
import { imperatives, leadIn, subordinate } from './words-en.js';

/** Marks that only name a part of the manual: they do not say which rule a sentence belongs to. */
const namesOnly = ['section', 'sheet'];

/** The mark of a sentence that a template says, with no rule behind it. */
export const guide = 'guide';

/**
 * Reports sentences that tell somebody to do something and belong to no rule, step, task or other thing with an id. What a
 * template says by itself needs a mark of its own, `[](id:guide:…)`, also inside a rule's section. What the clinic or a maker
 * says is theirs. English tells it by the verbs; texts in other languages are looked at in English, where they come from.
 */
export function checkImperatives(blocks: readonly Block[], rulebook: Rulebook, placeOf: PlaceOf): Finding[] {
  if (!rulebook.language.startsWith('en')) return [];
  const saysRulebook = searchIn(rulebook);
  return blocks.flatMap(({ node, words, marks }) => {
    if (node.type === 'heading') return [];
    return splitSentences(words)
      .filter((sentence) => tellsSomebody(sentence, node.type === 'tableCell'))
      .flatMap((sentence): Finding[] => {
        if (marks.some(({ kind }) => kind === guide)) return [];
        const place = placeOf(node, sentence);
        const byTemplate = isWholly(sentence) && place.file.startsWith('templates/') && !saysRulebook(sentence);
        if (marks.some(belongsToRule) && !byTemplate) return [];
        return [
          {
            code: 'E613',
            message: `\`${shorten(sentence)}\` tells somebody to do something, and no rule or step stands behind it`,
            place,
            help: 'make it a step or a rule, or mark it as guidance of the template with `[](id:guide:…)`',
          },
        ];
      });
  });
}

/** Searches all texts of a rulebook for words; a template may say the same as a rule. */
function searchIn({ procedures, decisions, tasks, forms, cards, terms, limits }: Rulebook): (words: string) => boolean {
  let letters: string | undefined;
  return (words) => {
    letters ??= squeeze(textsIn([procedures, decisions, tasks, forms, cards, terms, limits]).join('\n'));
    return letters.includes(squeeze(leadOf(words)));
  };
}

function textsIn(value: unknown): string[] {
  if (typeof value === 'string') return [value];
  if (typeof value !== 'object' || value === null) return [];
  return [...(value instanceof Map ? value.values() : Object.values(value))].flatMap(textsIn);
}

function belongsToRule({ kind }: Mark): boolean {
  return kind !== guide && !namesOnly.includes(kind);
}

/** Whether a sentence begins with a verb that tells somebody to do something. A few words without a stop are a label. */
function tellsSomebody(sentence: string, inCell: boolean): boolean {
  const [first = '', second = ''] = sentence.toLowerCase().match(/[\p{L}']+/gu) ?? [];
  const orders = imperatives.has(first) || (leadIn.has(first) && imperatives.has(second));
  const after = subordinate.has(first) ? [...sentence.matchAll(/[,:] ([\p{L}']+)/gu)].map(([, word = '']) => word) : [];
  if (second === '' || (!orders && !after.some((word) => imperatives.has(word)))) return false;
  return /[.!:;]["”’)]*$/u.test(sentence) || (!inCell && /\s\S+\s/u.test(sentence));
}

/** Whether a sentence says enough by itself to be told from others: `Follow …` is filled in by a rule. */
function isWholly(sentence: string): boolean {
  return !sentence.includes(elsewhere) || leadOf(sentence).trim().split(/\s+/).length > 3;
}

function shorten(sentence: string): string {
  const shown = sentence.replaceAll(elsewhere, '…');
  return shown.length > 60 ? `${shown.slice(0, 60)}…` : shown;
}
