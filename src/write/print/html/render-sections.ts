import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import type { Nodes, RootContent } from 'mdast';
import type { Writing } from '../../writing.js';
import { groupPages } from './page-groups.js';
import { renderBlock } from './render-block.js';
import { renderContents } from './render-contents.js';

/** The manual as nested sections: the front, chapters, their parts, and the tasks in a part. */
export function renderSections(manual: Writing): ElementContent[] {
  const { tree, meta, sections } = manual;
  const pageNames = groupPages(sections).flatMap(({ name, chapters }) => chapters.map(() => name));
  return nest(tree.children, 1).map(({ head, body }, index) => {
    if (head === undefined) return h('div.front', body.map(renderFront));
    return h('section.chapter', { className: pageNames[index - 1] }, [renderBlock(head, meta), ...renderParts(body)]);
  });

  function renderFront(node: RootContent): ElementContent {
    if (node.type === 'leafDirective' && node.name === 'contents') return renderContents(sections);
    return renderBlock(node, meta);
  }

  function renderParts(nodes: readonly RootContent[]): ElementContent[] {
    return nest(nodes, 2).flatMap(({ head, body }) => {
      const inside = renderTasks(body);
      return head === undefined
        ? inside
        : [h('section.part', { className: classesOf(body) }, [renderBlock(head, meta), ...inside])];
    });
  }

  function renderTasks(nodes: readonly RootContent[]): ElementContent[] {
    return nest(nodes, 3).flatMap(({ head, body }): ElementContent[] => {
      const inside = body.filter((node) => !isSwitch(node)).map((node) => renderBlock(node, meta));
      return head === undefined ? inside : [section('task', [renderBlock(head, meta), ...inside])];
    });
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

function section(className: string, children: ElementContent[]): Element {
  return h('section', { className }, children);
}

/** A sheet takes a page of its own, anything wide lies on its side, tasks stand in columns. */
function classesOf(nodes: readonly RootContent[]): string[] {
  const attributes = nodes.flatMap((node: Nodes) =>
    node.type === 'containerDirective' ? [{ name: node.name, ...node.attributes }] : [],
  );
  const wide = attributes.some((each) => 'layout' in each && each.layout === 'landscape');
  const has = {
    landscape: wide,
    sheet: attributes.some(({ name }) => name === 'sheet'),
    half: attributes.some((each) => 'size' in each && each.size === 'half'),
    tasks: nodes.some((node) => node.type === 'heading' && node.depth === 3),
  };
  return Object.entries(has).flatMap(([name, holds]) => (holds ? [name] : []));
}

function isSwitch(node: RootContent): boolean {
  return node.type === 'leafDirective' && node.name === 'annexes';
}
