import {
  DeletedTextRun,
  ExternalHyperlink,
  FootnoteReferenceRun,
  InsertedTextRun,
  InternalHyperlink,
  type IRunOptions,
  type ParagraphChild,
  TextRun,
} from 'docx';
import type { PhrasingContent } from 'mdast';
import type { Change, Press } from './press.js';

/** How words look: from the marks around them. */
export interface Look {
  bold?: boolean;
  italics?: boolean;
  style?: string;
  change?: Change;
}

/** References that name something by its title are set in italics. */
const titled = ['decision', 'procedure', 'task', 'form'];

/** Words of the tree as runs of Word. */
export function printWords(nodes: readonly PhrasingContent[], press: Press, look: Look = {}): ParagraphChild[] {
  return nodes.flatMap((node) => printOne(node, press, look));
}

function printOne(node: PhrasingContent, press: Press, look: Look): ParagraphChild[] {
  switch (node.type) {
    case 'text':
      return [run(press, look, { text: plain(node.value) })];
    case 'inlineCode':
      return [run(press, { ...look, style: 'Code' }, { text: plain(node.value) })];
    case 'break':
      return [run(press, look, { break: 1 })];
    case 'strong':
      return printWords(node.children, press, { ...look, bold: true });
    case 'emphasis':
      return printWords(node.children, press, { ...look, italics: true });
    case 'said':
      return printWords(node.children, press, look);
    case 'inserted':
    case 'deleted':
      return printWords(node.children, press, { ...look, change: node.type });
    case 'link':
      return [
        new ExternalHyperlink({ link: node.url, children: printWords(node.children, press, { ...look, style: 'Hyperlink' }) }),
      ];
    case 'reference': {
      const words = printWords(node.children, press, titled.includes(node.scheme) ? { ...look, italics: true } : look);
      const anchor = press.bookmarks.get(node.anchor ?? '');
      return anchor === undefined ? words : [new InternalHyperlink({ anchor, children: words })];
    }
    case 'footnoteReference': {
      const number = press.footnotes.get(node.identifier);
      return number === undefined ? [] : [new FootnoteReferenceRun(number)];
    }
    default:
      throw new RangeError(`no Word for words of type ${node.type}`);
  }
}

/** A run, as a tracked change where the words were inserted or deleted. */
function run(press: Press, { change, ...look }: Look, content: IRunOptions): ParagraphChild {
  const options = { ...look, ...content };
  if (change === undefined) return new TextRun(options);
  const tracked = { ...options, ...press.changedBy, id: press.nextChange() };
  return change === 'inserted' ? new InsertedTextRun(tracked) : new DeletedTextRun(tracked);
}

/** Text in one line, without the signs that XML does not allow. */
export function plain(text: string): string {
  return text.replace(/[\t\r\n]+/g, ' ').replace(/[\p{Cc}\p{Cs}\ufffe\uffff]/gu, '');
}
