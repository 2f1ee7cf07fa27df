import type { Node, Parent, PhrasingContent } from 'mdast';
import type {} from 'mdast-util-directive';
import type { Figure } from '../figures/figure.js';
import type { ReferenceScheme } from '../text/markdown.js';

/** What a node prints: `{ kind: 'rule', id: 'drying/hollows' }`. */
export interface Mark {
  kind: string;
  id: string;
  /** Whether this is the place that references lead to. Elsewhere it is only shown again. */
  home: boolean;
}

/** A reference of a rule text, filled in. Its children are what it prints. */
export interface CrossReference extends Parent {
  type: 'reference';
  scheme: ReferenceScheme;
  target: string;
  /** Anchor that it leads to, where there is one. */
  anchor?: string;
  children: PhrasingContent[];
}

/** A piece of text that comes out of the clinic's folder or a value of the rulebook. */
export interface Said extends Parent {
  type: 'said';
  by: string;
  children: PhrasingContent[];
}

/** A figure, drawn when it is printed. */
export interface FigureNode extends Node, Figure {
  type: 'figure';
}

/** Words that a change adds or takes away. */
export interface Changed extends Parent {
  type: 'inserted' | 'deleted';
  children: PhrasingContent[];
}

declare module 'mdast' {
  interface Data {
    marks?: Mark[];
    /** Number of a heading, `4` or `4.2` or `B.1`. */
    number?: string;
    /** What kind of paragraph it is: `why`, `if-not`, `caution` … */
    is?: string;
    /** What a change does to the whole block. */
    change?: 'inserted' | 'deleted' | 'moved';
  }
  interface PhrasingContentMap {
    reference: CrossReference;
    said: Said;
    inserted: Changed;
    deleted: Changed;
  }
  interface RootContentMap {
    reference: CrossReference;
    said: Said;
    figure: FigureNode;
    inserted: Changed;
    deleted: Changed;
  }
}

/** A numbered heading. */
export interface Section {
  /** `section:storage`, `procedure:load-washer`. */
  id: string;
  number: string;
  title: string;
  depth: 1 | 2;
  anchor: string;
}

/** The anchor of what a mark names, as used in addresses inside the manual. */
export function anchorOf({ kind, id }: Pick<Mark, 'kind' | 'id'>): string {
  return `${kind}-${id.replaceAll('/', '.')}`;
}
