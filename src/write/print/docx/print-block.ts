import { type FileChild, type IParagraphOptions, Paragraph, Tab, TextRun } from 'docx';
import type { Heading, Nodes, RootContent, Paragraph as Words } from 'mdast';
import type { ContainerDirective } from 'mdast-util-directive';
import { printFigure } from './draw-figures.js';
import { isAnnex } from './numbering.js';
import { mm } from './page.js';
import type { Place, Press } from './press.js';
import { printCaution } from './print-caution.js';
import { printList } from './print-list.js';
import { printParagraph } from './print-paragraph.js';
import { printTable } from './print-table.js';

/** Blocks of the tree as paragraphs and tables of Word. The first one takes the marks of the nodes around it. */
export function printBlocks(
  nodes: readonly RootContent[],
  press: Press,
  place: Place,
  around: readonly Nodes[] = [],
): FileChild[] {
  return nodes.flatMap((node, index) => printBlock(node, press, place, index === 0 ? around : []));
}

/** One block. */
export function printBlock(node: RootContent, press: Press, outer: Place, around: readonly Nodes[] = []): FileChild[] {
  const place = { ...outer, ...changeOf(node) };
  switch (node.type) {
    case 'heading':
      return [printHeading(node, press)];
    case 'paragraph':
      return [printText(node, press, place, around)];
    case 'list':
      return printList(node, press, place);
    case 'table':
      return printTable(node, {}, press, place);
    case 'blockquote':
      return printBlocks(node.children, press, { ...place, inside: 'note' }, around);
    case 'containerDirective':
      return printContainer(node, press, place, [node, ...around]);
    case 'figure':
      return printFigure(node, press, place);
    case 'thematicBreak':
      return [new Paragraph({ thematicBreak: true })];
    case 'leafDirective':
    case 'footnoteDefinition':
      return [];
    default:
      throw new RangeError(`no Word for a block of type ${node.type}`);
  }
}

function changeOf({ data }: RootContent): Pick<Place, 'change'> {
  return data?.change === 'inserted' || data?.change === 'deleted' ? { change: data.change } : {};
}

/** How a heading stands: at the head of a page, with little space around it. */
interface Stand {
  newPage?: boolean;
  tight?: boolean;
}

/** A heading. Its number is Word's own where headings number themselves. */
export function printHeading(node: Heading, press: Press, { newPage = false, tight = false }: Stand = {}): Paragraph {
  const { depth, data, children } = node;
  const number = data?.number;
  const style = number !== undefined && isAnnex(number) ? `Annex${depth}` : `Heading${Math.min(depth, 3)}`;
  const options: IParagraphOptions = {
    style,
    pageBreakBefore: newPage,
    ...(tight && { spacing: { before: mm(2.5), after: mm(1) } }),
    ...(number === undefined && depth < 3 && { numbering: false, indent: { left: 0, hanging: 0 } }),
    ...(number !== undefined &&
      !press.counted && { children: [new TextRun({ text: number }), new TextRun({ children: [new Tab()] })] }),
  };
  return printParagraph({ words: trimmed(children), holders: [node] }, press, options);
}

/** The space that stood before a mark at the end of a heading goes with the mark. */
function trimmed(words: Heading['children']): Heading['children'] {
  const last = words.at(-1);
  return last?.type === 'text' ? [...words.slice(0, -1), { type: 'text', value: last.value.trimEnd() }] : words;
}

function printText(node: Words, press: Press, { inside, change }: Place, around: readonly Nodes[]): Paragraph {
  const style = styleOf(node.data?.is ?? '', inside);
  const words = { words: node.children, holders: [node, ...around], change, bySide: style === 'Done' };
  return printParagraph(words, press, style === undefined ? {} : { style });
}

/** The style of each kind of paragraph; any other is plain text. */
const styles: Readonly<Record<string, string>> = {
  clinic: 'Clinic',
  title: 'Title',
  subtitle: 'Subtitle',
  note: 'Note',
  lead: 'Lead',
  question: 'Question',
  caption: 'MinorHeading',
  caution: 'CautionLine',
  answer: 'Answer',
  done: 'Done',
  why: 'Why',
  place: 'Lead',
  stop: 'CautionLine',
  example: 'Question',
  foot: 'SheetText',
  'sheet-head': 'SheetText',
  'sheet-foot': 'SheetText',
};

function styleOf(is: string, inside: Place['inside']): string | undefined {
  if (inside === 'task') return is === 'caution' ? 'CautionLine' : 'TaskText';
  if (inside === 'columns') return is === 'caption' ? 'EntryHeading' : 'Entry';
  if (styles[is] !== undefined) return styles[is];
  return inside === 'note' ? 'Note' : inside === 'sheet' ? 'SheetText' : undefined;
}

function printContainer(node: ContainerDirective, press: Press, place: Place, around: readonly Nodes[]): FileChild[] {
  const { name, attributes, children } = node;
  switch (name) {
    case 'caution':
      return printCaution(node, press, place, around);
    case 'table':
      return children.flatMap((child) =>
        child.type === 'table'
          ? [
              ...printTable(child, { look: attributes?.['look'] ?? '', widths: attributes?.['widths'] ?? '' }, press, place),
              gap(),
            ]
          : printBlock(child, press, place),
      );
    case 'opening':
    case 'answers':
    case 'columns':
    case 'note':
    case 'sheet':
      return printBlocks(children, press, { ...place, inside: name }, around);
    case 'example':
      return printBlocks(children, press, { ...place, inside: 'sheet' }, around);
    default:
      return printBlocks(children, press, place, around);
  }
}

/** Word needs a paragraph between two tables, or they become one; it also keeps what follows apart. */
function gap(): Paragraph {
  return new Paragraph({ style: 'Gap' });
}
