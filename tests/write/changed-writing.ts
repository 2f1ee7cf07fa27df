import type { PhrasingContent } from 'mdast';
import { walk } from '../../src/write/tree/walk.js';
import { writeManual } from '../../src/write/write-manual.js';
import type { Writing } from '../../src/write/writing.js';
import { smallRulebook } from './small-rulebook.js';
import { templates } from './templates.js';

const changes = ['inserted', 'deleted', 'moved'] as const;
const blocks = ['heading', 'paragraph', 'list', 'listItem', 'table', 'tableRow', 'containerDirective'];

/** The manual of the small clinic as if every fourth block and every fifth run of words had been changed. */
export function changedWriting(): Writing {
  const writing = writeManual({ rulebook: smallRulebook(), templates, tool: '9.9.9' });
  let count = 0;
  walk(writing.tree, (node) => {
    count += 1;
    if (blocks.includes(node.type) && count % 4 === 0) {
      const change = changes[count % 3];
      node.data = { ...node.data, ...(change && { change }) };
    }
    if (node.type === 'paragraph' && count % 5 === 0) node.children = node.children.map(edited);
  });
  return { ...writing, kind: 'redline' };
}

function edited(node: PhrasingContent): PhrasingContent {
  return node.type === 'text' ? { type: 'inserted', children: [node] } : { type: 'deleted', children: [node] };
}
