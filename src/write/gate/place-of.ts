import type { Nodes } from 'mdast';
import type { Rulebook } from '../../link/rulebook.js';
import type { Place } from '../../read/finding.js';
import type { BuiltTree } from '../tree/build-tree.js';
import type { Mark } from '../tree/nodes.js';
import { walkSections } from '../tree/walk.js';

export type PlaceOf = (node: Nodes) => Place;

/** Where the text of a node was written: the rule, step, task or limit around it, or else its section of the manual. */
export function placesIn({ tree, sections }: Pick<BuiltTree, 'tree' | 'sections'>, rulebook: Rulebook): PlaceOf {
  const places = new Map<Nodes, Place>();
  let sectionPlace: Place | undefined;
  walkSections(tree, sections, (node, section, parents) => {
    if (node.type === 'heading') sectionPlace = placeOfMarks(node.data?.marks ?? [], rulebook);
    const around = [...parents, node].reverse().map((each) => placeOfMarks(each.data?.marks ?? [], rulebook));
    const here = around.find((place) => place !== undefined) ?? sectionPlace;
    places.set(
      node,
      here ?? { file: section === undefined ? 'manual' : `manual, section ${section.number}`, line: 1, column: 1 },
    );
  });
  return (node) => places.get(node) ?? { file: 'manual', line: 1, column: 1 };
}

function placeOfMarks(marks: readonly Mark[], rulebook: Rulebook): Place | undefined {
  return marks.map((mark) => placeOfMark(mark, rulebook)).find((place) => place !== undefined);
}

/** Where a rule, step, point, task, limit, procedure, policy, form, decision or requirement was written. */
export function placeOfMark({ kind, id }: Pick<Mark, 'kind' | 'id'>, rulebook: Rulebook): Place | undefined {
  const [owner = ''] = id.split('/');
  switch (kind) {
    case 'rule':
      return rulebook.decisions.get(owner)?.rules.find((rule) => rule.id === id)?.place;
    case 'decision':
      return rulebook.decisions.get(id)?.place;
    case 'procedure':
    case 'step':
      return rulebook.procedures.get(owner)?.place;
    case 'policy':
      return rulebook.policies.get(id)?.place;
    case 'point':
      return rulebook.policies.get(owner)?.points.find((point) => point.id === id)?.place;
    case 'requirement':
      return rulebook.requirements.get(id)?.place;
    case 'task':
      return rulebook.tasks.get(id)?.place;
    case 'limit':
      return rulebook.limits.get(id)?.chain.at(-1)?.place;
    case 'card':
    case 'point':
      return rulebook.cards.get(owner)?.place;
    case 'form':
    case 'sheet':
      return rulebook.forms.get(owner)?.place;
    default:
      return undefined;
  }
}
