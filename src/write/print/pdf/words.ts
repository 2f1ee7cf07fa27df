import type { PhrasingContent, Strong } from 'mdast';
import { wordOf } from '../../text/word-of.js';
import type { CrossReference } from '../../tree/nodes.js';
import { aroundPlaces } from './around-places.js';
import type { Piece, Words } from './data.js';
import type { Ink } from './ink.js';

/** Words of the tree as data. */
export function wordsOf(nodes: readonly PhrasingContent[], ink: Ink): Words {
  return tidy(nodes.flatMap((node) => piecesOf(node, ink)));
}

function piecesOf(node: PhrasingContent, ink: Ink): Piece[] {
  switch (node.type) {
    case 'text':
    case 'inlineCode':
      return [breakable(node.value)];
    case 'strong':
      return [{ t: 'strong', c: placeOf(node, ink) ?? wordsOf(node.children, ink) }];
    case 'inserted':
    case 'deleted':
      return [{ t: node.type, c: wordsOf(node.children, ink) }];
    case 'emphasis':
      return [{ t: 'em', c: wordsOf(node.children, ink) }];
    case 'break':
      return [{ t: 'break' }];
    case 'link':
      return [{ t: 'url', url: node.url, c: wordsOf(node.children, ink) }];
    case 'said':
      return wordsOf(node.children, ink);
    case 'reference':
      return referenceOf(node, ink);
    case 'footnoteReference':
      return [{ t: 'footnote', paragraphs: footnoteOf(node.identifier, ink) }];
    default:
      throw new RangeError(`no PDF for words of type ${node.type}`);
  }
}

/** A word that is longer than any line may be broken anywhere, so that it does not run off the page. */
function breakable(text: string): string {
  return text.replace(/[\p{L}\p{N}_]{48,}/gu, (word) => word.replace(/.{12}(?=.)/gu, '$&\u200b'));
}

/** References that print a title with its number. */
const titled = ['section', 'procedure', 'decision', 'form', 'task'];

/** `Storage (9.3)` leads there and gets the number of the page into its brackets; `10 minutes` only leads there. */
function referenceOf({ scheme, anchor, children }: CrossReference, ink: Ink): Piece[] {
  const c = wordsOf(children, ink);
  const isTitled = titled.includes(scheme);
  if (anchor === undefined || !ink.wanted.has(anchor)) return isTitled ? [{ t: 'em', c }] : c;
  const last = c.at(-1);
  if (!isTitled || typeof last !== 'string' || !last.endsWith(')')) return [{ t: 'to', to: anchor, titled: isTitled, c }];
  const [before = '', after = ''] = aroundPlaces(wordOf(ink.meta, 'print.on-page'));
  return [{ t: 'to', to: anchor, titled: true, page: [`, ${before}`, `${after})`], c: [...c.slice(0, -1), last.slice(0, -1)] }];
}

/** A number of a section by itself in strong words says where something is at home: it gets the number of the page as well. */
function placeOf({ children: [only, more] }: Strong, ink: Ink): Words | undefined {
  if (only?.type !== 'reference' || only.scheme !== 'at' || more !== undefined) return undefined;
  const [piece, ...others] = referenceOf(only, ink);
  if (typeof piece !== 'object' || piece.t !== 'to' || others.length > 0) return undefined;
  const [before = '', after = ''] = aroundPlaces(wordOf(ink.meta, 'print.on-page'));
  return [{ ...piece, page: [`, ${before}`, after] }];
}

function footnoteOf(identifier: string, ink: Ink): Words[] {
  const found = ink.footnotes.get(identifier);
  if (found === undefined) throw new RangeError(`no footnote \`${identifier}\``);
  return found.children.flatMap((child) => (child.type === 'paragraph' ? [wordsOf(child.children, ink)] : []));
}

/** Texts that follow each other in one, empty ones left out. */
function tidy(pieces: Words): Words {
  const joined: Words = [];
  for (const piece of pieces) {
    const last = joined.at(-1);
    if (typeof piece === 'string' && typeof last === 'string') joined[joined.length - 1] = last + piece;
    else if (piece !== '') joined.push(piece);
  }
  return joined;
}

/** Without the spaces at both ends. */
export function trimmed(words: Words): Words {
  const [first, last] = [words[0], words.at(-1)];
  if (typeof first === 'string' && first.trimStart() !== first) return trimmed(tidy([first.trimStart(), ...words.slice(1)]));
  if (typeof last === 'string' && last.trimEnd() !== last) return trimmed(tidy([...words.slice(0, -1), last.trimEnd()]));
  return words;
}

/** `**Label** the rest` as a label and the rest; no label where it does not begin with strong words. */
export function splitLabel(words: Words): { name?: Words; c: Words } {
  const [first, ...rest] = words.filter((piece) => typeof piece === 'string' || piece.t !== 'here');
  if (first === undefined || typeof first === 'string' || first.t !== 'strong') return { c: words };
  const c = trimmed(rest);
  // `**Label**, the rest`: beside a label it needs no mark.
  const [start, ...others] = c;
  return { name: first.c, c: typeof start === 'string' ? trimmed([start.replace(/^[,.](?= )/, ''), ...others]) : c };
}
