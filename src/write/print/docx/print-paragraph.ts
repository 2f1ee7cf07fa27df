import { Bookmark, type IParagraphOptions, Paragraph, type ParagraphChild, Tab, TextRun } from 'docx';
import type { Nodes, PhrasingContent } from 'mdast';
import { wordOf } from '../../text/word-of.js';
import { anchorOf } from '../../tree/nodes.js';
import type { Change, Press } from './press.js';
import { plain, printWords } from './print-words.js';

/** The words of a paragraph and what is around them. */
export interface Words {
  words: readonly PhrasingContent[];
  /** The nodes whose marks are at home here: the paragraph, and what begins with it. */
  holders: readonly Nodes[];
  /** What a change does to the block around it. */
  change?: Change | undefined;
  /** Puts the first bold word at the side of the others. */
  bySide?: boolean;
}

/** A paragraph of words with the bookmarks that references lead to, and its mark tracked where all of it was changed. */
export function printParagraph({ words, holders, change, bySide }: Words, press: Press, options: IParagraphOptions): Paragraph {
  const whole = holders.map(({ data }) => data?.change).find((kind) => kind === 'inserted' || kind === 'deleted') ?? change;
  const look = whole === undefined ? {} : { change: whole };
  const printed = bySide === true ? setAside(words, press, look) : printWords(words, press, look);
  const children = withBookmarks([...(options.children ?? []), ...moved(holders, press), ...printed], press, holders);
  return new Paragraph({ ...options, ...markOf(whole ?? onlyChange(words), press), children });
}

/** Moved words are the same as before: a word says so. */
function moved(holders: readonly Nodes[], { meta }: Press): ParagraphChild[] {
  if (!holders.some(({ data }) => data?.change === 'moved')) return [];
  return [new TextRun({ text: `[${plain(wordOf(meta, 'print.moved'))}] `, style: 'MovedMark' })];
}

/** A tab in place of the space behind a first bold word. */
function setAside(words: readonly PhrasingContent[], press: Press, look: { change?: Change }): ParagraphChild[] {
  const [first, second, ...rest] = words;
  if (first?.type !== 'strong' || second?.type !== 'text') return printWords(words, press, look);
  const behind: PhrasingContent = { type: 'text', value: second.value.trimStart() };
  return [
    ...printWords([first], press, look),
    new TextRun({ children: [new Tab()] }),
    ...printWords([behind, ...rest], press, look),
  ];
}

function withBookmarks(children: ParagraphChild[], press: Press, holders: readonly Nodes[]): ParagraphChild[] {
  const names = holders
    .flatMap(({ data }) => data?.marks ?? [])
    .flatMap((mark) => (mark.home ? (press.bookmarks.get(anchorOf(mark)) ?? []) : []));
  return names.reduce<ParagraphChild[]>((inner, id) => [new Bookmark({ id, children: inner })], children);
}

/** Where all words were inserted, or all deleted, the paragraph itself was. */
function onlyChange(words: readonly PhrasingContent[]): Change | undefined {
  const [kind, ...others] = new Set(words.map(({ type }) => type));
  return others.length === 0 && (kind === 'inserted' || kind === 'deleted') ? kind : undefined;
}

function markOf(change: Change | undefined, press: Press): Pick<IParagraphOptions, 'run'> {
  if (change === undefined) return {};
  const tracked = { ...press.changedBy, id: press.nextChange() };
  return { run: change === 'inserted' ? { insertion: tracked } : { deletion: tracked } };
}
