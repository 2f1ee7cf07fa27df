import type { FootnoteDefinition, Nodes } from 'mdast';
import type { ManualMeta } from '../../model/model-title.js';
import { anchorOf } from '../../tree/nodes.js';
import { walk } from '../../tree/walk.js';
import type { Writing } from '../../writing.js';

/** What blocks and words are made with. */
export interface Ink {
  meta: ManualMeta;
  /** Anchors that references of the writing lead to and that a node of it is the home of. */
  wanted: ReadonlySet<string>;
  /** Anchors that have their place already. */
  placed: Set<string>;
  footnotes: ReadonlyMap<string, FootnoteDefinition>;
  /** Figures as SVG, by id. */
  drawings: ReadonlyMap<string, string>;
}

/** Looks a writing through for what is known only from the whole of it. */
export function inkFor({ tree, meta }: Writing, drawings: ReadonlyMap<string, string>): Ink {
  const [named, homes] = [new Set<string>(), new Set<string>()];
  const footnotes = new Map<string, FootnoteDefinition>();
  walk(tree, (node) => {
    if (node.type === 'reference' && node.anchor !== undefined) named.add(node.anchor);
    if (node.type === 'footnoteDefinition') footnotes.set(node.identifier, node);
    for (const mark of node.data?.marks ?? []) if (mark.home) homes.add(anchorOf(mark));
  });
  return { meta, wanted: new Set([...named].filter((each) => homes.has(each))), placed: new Set(), footnotes, drawings };
}

/** The anchors that a node is the home of, as far as something leads there; each is given once. */
export function takeAnchors({ data }: Nodes, { wanted, placed }: Ink): string[] {
  const anchors = (data?.marks ?? []).flatMap((mark) => (mark.home ? [anchorOf(mark)] : []));
  return anchors.filter((anchor) => {
    if (!wanted.has(anchor) || placed.has(anchor)) return false;
    placed.add(anchor);
    return true;
  });
}
