import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import type { Nodes, Paragraph, RootContent } from 'mdast';
import type { Writing } from '../../writing.js';
import type { Ink } from './ink.js';
import { groupPages } from './page-groups.js';
import { renderBlock } from './render-block.js';
import { renderContents } from './render-contents.js';
import { renderSearch } from './render-search.js';

/** The pieces of a page: the front with the title and the side with search and contents, where it has any, and the text. */
export interface Pieces {
  front: Element | undefined;
  side: Element | undefined;
  text: ElementContent[];
}

/** A writing as nested sections: chapters, their parts, and the tasks in a part. */
export function renderPieces({ tree, meta, sections }: Pick<Writing, 'tree' | 'meta' | 'sections'>, ink: Ink): Pieces {
  const pageNames = groupPages(sections, meta).flatMap(({ name, chapters }) => chapters.map(() => [name]));
  const groups = nest(tree.children, 1);
  const opening = groups[0]?.head === undefined ? (groups.shift()?.body ?? []) : [];
  const front = opening.filter((node) => !isSwitch(node)).map((node) => renderBlock(node, ink));
  const chapters = groups.map(({ head, body }, index) =>
    section(['chapter', ...(pageNames[index] ?? [])], head, renderParts(body)),
  );
  const titled = holdsTitle(opening);
  return {
    front: titled ? h('header.front', front) : undefined,
    side: opening.some(isContents) ? h('div.side', [renderSearch(ink), renderContents(sections, ink)]) : undefined,
    text: titled ? chapters : [h('h1.unseen', `${meta.title}, ${meta.clinic}`), ...front, ...chapters],
  };

  function renderParts(nodes: readonly RootContent[]): ElementContent[] {
    return nest(nodes, 2).flatMap(({ head, body }) => {
      const inside = renderTasks(body);
      return head === undefined ? inside : [section(['part', ...classesOf(body)], head, inside)];
    });
  }

  function renderTasks(nodes: readonly RootContent[]): ElementContent[] {
    return nest(nodes, 3).flatMap(({ head, body }): ElementContent[] => {
      const inside = body.filter((node) => !isSwitch(node)).map((node) => renderBlock(node, ink));
      return head === undefined ? inside : [section(['task'], head, inside)];
    });
  }

  function section(className: string[], head: RootContent | undefined, inside: ElementContent[]): Element {
    const heading = head === undefined ? [] : [renderBlock(head, ink)];
    return h('section', { className }, [...heading, ...inside]);
  }
}

interface Nested {
  head: RootContent | undefined;
  body: RootContent[];
}

function nest(nodes: readonly RootContent[], depth: number): Nested[] {
  const groups: Nested[] = [];
  for (const node of nodes) {
    if (node.type === 'heading' && node.depth === depth) groups.push({ head: node, body: [] });
    else if (groups.length === 0) groups.push({ head: undefined, body: [node] });
    else groups.at(-1)?.body.push(node);
  }
  return groups;
}

/** A sheet takes a page of its own, anything wide lies on its side, tasks stand in columns. */
function classesOf(nodes: readonly RootContent[]): string[] {
  const attributes = nodes.flatMap((node: Nodes) =>
    node.type === 'containerDirective' ? [{ name: node.name, ...node.attributes }] : [],
  );
  const has = {
    landscape: attributes.some((each) => 'layout' in each && each.layout === 'landscape'),
    sheet: attributes.some(({ name }) => name === 'sheet'),
    half: attributes.some((each) => 'size' in each && each.size === 'half'),
    tasks: nodes.some((node) => node.type === 'heading' && node.depth === 3),
  };
  return Object.entries(has).flatMap(([name, holds]) => (holds ? [name] : []));
}

function holdsTitle(nodes: readonly RootContent[]): boolean {
  return nodes.some((node) => isTitle(node) || ('children' in node && holdsTitle(node.children as RootContent[])));
}

function isTitle(node: Nodes): node is Paragraph {
  return node.type === 'paragraph' && node.data?.is === 'title';
}

/** Directives that print nothing at their place. */
function isSwitch(node: RootContent): boolean {
  return isContents(node) || (node.type === 'leafDirective' && node.name === 'annexes');
}

function isContents(node: RootContent): boolean {
  return node.type === 'leafDirective' && node.name === 'contents';
}
