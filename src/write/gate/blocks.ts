import type { Nodes, Parents, Root } from 'mdast';
import type { Mark, Section } from '../tree/nodes.js';
import { walkSections } from '../tree/walk.js';
import { elsewhere } from './origins.js';

/** A heading, paragraph or cell with the words that are the manual's own. */
export interface Block {
  node: Nodes;
  /** What is filled in or said by the clinic or a maker stands as one placeholder. */
  words: string;
  /** Of the block and of what is around it, the nearest first; those of its task and of its section come last. */
  marks: readonly Mark[];
}

/** Every block of a tree in reading order. */
export function blocksOf(tree: Root, sections: readonly Section[]): Block[] {
  const blocks: Block[] = [];
  let [ofSection, ofTask]: [Mark[], Mark[]] = [[], []];
  walkSections(tree, sections, (node, _, parents) => {
    if (node.type === 'heading') {
      const own = node.data?.marks ?? [];
      [ofSection, ofTask] = node.data?.number === undefined ? [ofSection, own] : [own, []];
    }
    if (!isBlock(node, parents)) return;
    const around = [...parents, node].reverse().flatMap(({ data }) => data?.marks ?? []);
    blocks.push({ node, words: ownWords(node), marks: [...around, ...ofTask, ...ofSection] });
  });
  return blocks;
}

function isBlock({ type }: Nodes, parents: readonly Parents[]): boolean {
  return (
    type === 'tableCell' || type === 'heading' || (type === 'paragraph' && parents.every((each) => each.type !== 'tableCell'))
  );
}

function ownWords(node: Nodes): string {
  if (node.type === 'said' || node.type === 'reference') return elsewhere;
  if (node.type === 'break') return '\n';
  if ('children' in node) return node.children.map(ownWords).join('');
  return 'value' in node ? node.value : '';
}
