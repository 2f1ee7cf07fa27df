import { quoted } from '../read/quoted.js';
import type { Words } from '../read/types.gen.js';
import { tokenPattern } from './template-texts.js';

/**
 * What a translation does not keep of its text: a reference, a placeholder, an expression of a template or the block
 * around it, a cell of a table, or the mark at the head of a line. Nothing where all of it is there, in whatever order.
 */
export function lostTokens(of: Words, say: Words): { message: string; help: string } | undefined {
  if (typeof of === 'string' && typeof say !== 'string')
    return { message: 'forms for a text that is not counted', help: 'write one text' };
  if (typeof of !== 'string' && typeof say === 'string')
    return { message: 'one text for a word that is counted', help: `write its forms, such as ${quoted('{ one: …, other: … }')}` };
  const wanted = tokensOf(typeof of === 'string' ? of : of.other);
  for (const text of typeof say === 'string' ? [say] : Object.values(say)) {
    const got = tokensOf(text);
    const mayDrop = typeof say !== 'string' && text !== say.other ? ['{count}'] : [];
    const [missing] = without(wanted, [...got, ...mayDrop]);
    const [added] = without(got, wanted);
    if (missing !== undefined) return { message: `${quoted(shown(missing))} is missing`, help: 'keep what the text refers to' };
    if (added !== undefined) return { message: `${quoted(shown(added))} is not in the text`, help: 'take it out' };
  }
  return undefined;
}

const pattern = new RegExp(tokenPattern, 'g');

/** Tokens in order, each behind the blocks that it stands in; then the cells and the mark at the head of the line. */
function tokensOf(text: string): string[] {
  const blocks: string[] = [];
  const tokens = [...text.matchAll(pattern)].map(([token]) => {
    if (token.startsWith('{{/')) blocks.pop();
    const inside = [...blocks, token].join(separator);
    if (token.startsWith('{{#')) blocks.push(token);
    if (token === '{{else}}') blocks.push(`${blocks.pop() ?? ''}${token}`);
    return inside;
  });
  const plain = text.replace(pattern, '');
  const marks = plain.match(/\*\*|\|/g) ?? [];
  const head = /^(?:#+|-|\d+\.) /.exec(plain)?.[0];
  return [...tokens, ...marks, ...(head === undefined ? [] : [head])];
}

const separator = '\u0000';

function shown(token: string): string {
  return (token.split(separator).at(-1) ?? token).trim();
}

/** What stands in one list more often than in another. */
function without(list: readonly string[], other: readonly string[]): string[] {
  const rest = [...other];
  return list.filter((each) => {
    const index = rest.indexOf(each);
    if (index >= 0) rest.splice(index, 1);
    return index < 0;
  });
}
