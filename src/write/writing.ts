import type { Root } from 'mdast';
import type { ManualMeta } from './model/model-title.js';
import type { Section } from './tree/nodes.js';

/** What can be printed. */
export type WritingKind = 'manual' | 'cards' | 'forms' | 'notice' | 'redline';

/** Something before it is printed: one tree for every format. */
export interface Writing {
  kind: WritingKind;
  tree: Root;
  meta: ManualMeta;
  /** The numbered headings in order. */
  sections: Section[];
}
