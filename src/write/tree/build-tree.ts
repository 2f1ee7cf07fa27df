import type { Root } from 'mdast';
import type { Rulebook } from '../../link/rulebook.js';
import type { Figure } from '../figures/figure.js';
import type { Writing } from '../writing.js';
import type { CrossReference, Section } from './nodes.js';
import { numberHeadings } from './number-headings.js';
import { parseSections } from './parse-sections.js';
import { placeFigures } from './place-figures.js';
import { resolveReferences } from './resolve-references.js';
import { takeMarks } from './take-marks.js';

export interface BuiltTree {
  tree: Root;
  sections: Section[];
  unknown: CrossReference[];
}

export interface BuildOptions {
  /** Whether headings are numbered and listed as sections. */
  numbered?: boolean;
  /** The manual beside it: what stands there is named with the number of its section, without a link. */
  manual?: Pick<Writing, 'tree' | 'sections'> | undefined;
  /** Writes, once the other pages are known, the Markdown that stands in the place of the directive `::trace`. */
  trace?: (pages: Pick<Writing, 'tree' | 'sections'>) => string;
}

/** Markdown to the one tree that every format is printed from: marked, numbered, references filled in. */
export function buildTree(
  markdown: string,
  rulebook: Rulebook,
  figures: ReadonlyMap<string, Figure> = new Map(),
  { numbered = true, manual, trace }: BuildOptions = {},
): BuiltTree {
  const tree = parseMarked(markdown);
  placeFigures(tree, figures);
  const place = tree.children.findIndex((node) => node.type === 'leafDirective' && node.name === 'trace');
  if (trace !== undefined && place >= 0) {
    const pages = trace({ tree, sections: numberHeadings(tree) });
    tree.children.splice(place, 1, ...parseMarked(pages).children);
  }
  const sections = numbered ? numberHeadings(tree) : [];
  const unknown = resolveReferences(tree, rulebook, sections, manual);
  return { tree, sections, unknown };
}

function parseMarked(markdown: string): Root {
  const tree = parseSections(markdown);
  takeMarks(tree);
  return tree;
}
