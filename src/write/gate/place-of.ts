import type { Nodes } from 'mdast';
import type { Rulebook } from '../../link/rulebook.js';
import type { Place } from '../../read/finding.js';
import { placesOfKnown } from '../model/in-force.js';
import type { BuiltTree } from '../tree/build-tree.js';
import type { Mark } from '../tree/nodes.js';
import { walkSections } from '../tree/walk.js';
import { type Origins, placeOfWords, templatesOf } from './origins.js';

/** Where a node was written; with words of it, where those were. */
export type PlaceOf = (node: Nodes, words?: string) => Place;

interface Around {
  /** Of the rule, step, task, limit or section around the node. */
  place: Place | undefined;
  section: string | undefined;
}

/**
 * Where the text of a node was written: in the rule, step, task or limit around it, or else in a template. Without the texts
 * themselves it is where that rule begins, or the section of the manual.
 */
export function placesIn(
  { tree, sections }: Pick<BuiltTree, 'tree' | 'sections'>,
  rulebook: Rulebook,
  origins: Origins,
): PlaceOf {
  const known = placesOfKnown(rulebook);
  const inTemplates = templatesOf(origins);
  const placeOfMarks = (marks: readonly Mark[] = []) =>
    marks.map(({ kind, id }) => known.get(`${kind}:${id}`)).find((place) => place !== undefined);
  const around = new Map<Nodes, Around>();
  let heading: Place | undefined;
  walkSections(tree, sections, (node, section, parents) => {
    if (node.type === 'heading') heading = placeOfMarks(node.data?.marks);
    const marked = [...parents, node].reverse().map(({ data }) => placeOfMarks(data?.marks));
    const place = marked.find((each) => each !== undefined) ?? heading;
    around.set(node, { place, section: section?.number });
  });
  return (node, words) => {
    const { place, section } = around.get(node) ?? { place: undefined, section: undefined };
    const exact = place !== undefined && words !== undefined ? placeOfWords(origins, place, words) : place;
    const moved = exact !== undefined && (exact.line !== place?.line || exact.column !== place.column);
    if (moved) return exact;
    const inTemplate = words === undefined ? undefined : inTemplates(words);
    return inTemplate ?? exact ?? { file: section === undefined ? 'manual' : `manual, section ${section}`, line: 1, column: 1 };
  };
}
