import type { Finding } from '../../read/finding.js';
import { splitSentences } from '../text/sentences.js';
import type { Mark } from '../tree/nodes.js';
import type { Block } from './blocks.js';
import { elsewhere, leadOf } from './origins.js';
import type { PlaceOf } from './place-of.js';
import { imperatives, leadIn, subordinate } from './words-en.js';

/** Marks that only name a part of the manual: they do not say which rule a sentence belongs to. */
const namesOnly = ['section', 'sheet'];

/** The mark of a sentence that a template says, with no rule behind it. */
export const guide = 'guide';

/**
 * Reports sentences that tell somebody to do something and belong to no rule, step, task or other thing with an id. What a
 * template says by itself needs a mark of its own, `[](id:guide:…)`, also inside a rule's section. What the clinic or a maker
 * says is theirs. English is told by its first word; in other languages only what templates say outside of any mark is known
 * to be wrong, and that is the same text.
 */
export function checkImperatives(blocks: readonly Block[], language: string, placeOf: PlaceOf): Finding[] {
  if (!language.startsWith('en')) return [];
  return blocks.flatMap(({ node, words, marks }) => {
    if (node.type === 'heading') return [];
    return splitSentences(words)
      .filter((sentence) => tellsSomebody(sentence, node.type === 'tableCell'))
      .flatMap((sentence): Finding[] => {
        if (marks.some(({ kind }) => kind === guide)) return [];
        const place = placeOf(node, sentence);
        const byTemplate = isWholly(sentence) && place.file.startsWith('templates/');
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
