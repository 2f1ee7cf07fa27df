import { modelMeta } from '../../src/write/model/model-title.js';
import { buildTree } from '../../src/write/tree/build-tree.js';
import type { Writing } from '../../src/write/writing.js';
import { smallRulebook } from './small-rulebook.js';

/** A writing of the small clinic from Markdown, to try printers with. */
export function writingOf(markdown: string, changes: Partial<Writing> = {}): Writing {
  const rulebook = smallRulebook();
  const { tree, sections } = buildTree(markdown, rulebook);
  return { kind: 'manual', tree, sections, meta: modelMeta(rulebook, '9.9.9'), ...changes };
}
