import type { Nodes, RootContent } from 'mdast';
import { toString as textOf } from 'mdast-util-to-string';
import type { Writing } from '../../writing.js';
import { groupPages } from '../html/page-groups.js';
import { blocksOf, headingOf } from './blocks.js';
import type { Block, Run, SheetData } from './data.js';
import type { Ink } from './ink.js';
import { isShort } from './table.js';

/**
 * A writing as runs of pages: of a manual the front and its chapters, short ones together; each card by itself; anything
 * else in one run.
 */
export function runsOf({ kind, tree, sections }: Writing, ink: Ink): Run[] {
  const nested = nest(tree.children, 1);
  const front = nested.flatMap(({ head, body }) => (head === undefined ? blocksOf(body, ink) : []));
  const chapters = nested.flatMap(({ head, body }) => (head === undefined ? [] : [chapterOf(head, body, ink)]));
  switch (kind) {
    case 'cards':
      return [front, ...chapters].filter(({ length }) => length > 0).map(cardOf);
    case 'manual': {
      const groups = groupPages(sections, ink.meta);
      const starts = groups.map((_, index) => groups.slice(0, index).reduce((sum, each) => sum + each.chapters.length, 0));
      const runs = groups.map(({ head, chapters: { length } }, index): Run => {
        const start = starts[index] ?? 0;
        return { head, foot: [], blocks: chapters.slice(start, start + length).flat() };
      });
      return front.length === 0 ? runs : [{ head: null, foot: [], blocks: front }, ...runs];
    }
    default:
      return [{ head: null, foot: [], blocks: [...front, ...chapters.flat()] }];
  }
}

function chapterOf(head: HeadingNode, body: readonly RootContent[], ink: Ink): Block[] {
  const heading = headingOf(head, ink);
  const [first] = nest(body, 2);
  const { landscape, half, sheet } = layoutOf(first?.head === undefined ? (first?.body ?? []) : []);
  const made = sheet ? sheetOf(body, ink) : undefined;
  return made === undefined
    ? withIntro([heading, ...partsOf(body, ink)])
    : [{ t: 'sheets', landscape, half, intro: [], sheets: [{ ...made, heading }] }];
}

/** What a card says at its foot is printed there. */
function cardOf(blocks: Block[]): Run {
  const feet = blocks.flatMap((block) => (block.t === 'paragraph' && block.is === 'foot' ? [block] : []));
  return { head: null, foot: feet.flatMap(({ c }) => c), blocks: blocks.filter((block) => !feet.some((each) => each === block)) };
}

type HeadingNode = RootContent & { type: 'heading' };

interface Nested {
  head: HeadingNode | undefined;
  body: RootContent[];
}

/** Nodes under the headings of a depth; what comes before the first of them stands under none. */
function nest(nodes: readonly RootContent[], depth: number): Nested[] {
  const groups: Nested[] = [];
  for (const node of nodes) {
    const last = groups.at(-1);
    if (node.type === 'heading' && node.depth === depth) groups.push({ head: node, body: [] });
    else if (last === undefined) groups.push({ head: undefined, body: [node] });
    else last.body.push(node);
  }
  return groups;
}

/** The parts of a chapter. Sheets have pages of their own, two half ones share a page. */
function partsOf(nodes: readonly RootContent[], ink: Ink): Block[] {
  const blocks: Block[] = [];
  for (const { head, body } of nest(nodes, 2)) {
    if (head === undefined) {
      blocks.push(...tasksOf(body, ink));
      continue;
    }
    const { landscape, half, sheet } = layoutOf(body);
    const heading = headingOf(head, ink);
    const made = sheet ? sheetOf(body, ink) : undefined;
    const last = blocks.at(-1);
    if (made === undefined) blocks.push({ t: 'part', landscape, heading, blocks: tasksOf(body, ink) });
    else if (half && last?.t === 'sheets' && last.half && last.sheets.length === 1 && last.landscape === landscape)
      last.sheets.push({ ...made, heading });
    else blocks.push({ t: 'sheets', landscape, half, intro: [], sheets: [{ ...made, heading }] });
  }
  return blocks;
}

function layoutOf(nodes: readonly RootContent[]): { landscape: boolean; half: boolean; sheet: boolean } {
  const containers = nodes.flatMap((node: Nodes) => (node.type === 'containerDirective' ? [node] : []));
  return {
    landscape: containers.some(({ attributes }) => attributes?.['layout'] === 'landscape'),
    half: containers.some(({ attributes }) => attributes?.['size'] === 'half'),
    sheet: containers.some(({ name }) => name === 'sheet'),
  };
}

/** The table of a sheet that is written in, and what stands before and behind it. */
function sheetOf(nodes: readonly RootContent[], ink: Ink): Omit<SheetData, 'heading'> | undefined {
  const blocks = blocksOf(nodes, ink);
  const at = blocks.findIndex((block) => block.t === 'table' && block.look === 'sheet');
  const table = blocks[at];
  return table?.t === 'table' ? { before: blocks.slice(0, at), table, after: blocks.slice(at + 1) } : undefined;
}

/** What a chapter of sheets says first stands on the page of its first sheet. */
function withIntro(blocks: Block[]): Block[] {
  const first = blocks.findIndex(({ t }) => t === 'sheets' || t === 'part');
  const sheets = blocks[first];
  if (sheets?.t !== 'sheets') return blocks;
  return [{ ...sheets, intro: blocks.slice(0, first) }, ...blocks.slice(first + 1)];
}

/** What stands under the headings of the third depth is a task. */
function tasksOf(nodes: readonly RootContent[], ink: Ink): Block[] {
  return nest(nodes, 3).flatMap(({ head, body }): Block[] => {
    if (head === undefined) return blocksOf(body, ink);
    const heading = headingOf(head, ink);
    const blocks = blocksOf(body, ink);
    const often = blocks.filter((block) => block.t === 'paragraph' && block.is === 'often');
    const keep = isShort(body.map((node) => textOf(node)).join(''));
    return [{ t: 'task', keep, heading, often, blocks: blocks.filter((block) => !often.includes(block)) }];
  });
}
