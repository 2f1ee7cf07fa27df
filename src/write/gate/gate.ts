import type { Rulebook } from '../../link/rulebook.js';
import { type Finding, inOrder } from '../../read/finding.js';
import { didYouMean } from '../../read/nearest.js';
import type { BuiltTree } from '../tree/build-tree.js';
import { knownTargets } from '../tree/known-targets.js';
import { checkNodes } from './check-nodes.js';
import { checkOutline } from './check-outline.js';
import { checkPrinted } from './check-printed.js';
import { type PlaceOf, placesIn } from './place-of.js';

/** As `checkManual`, for a text beside the manual: it need not print everything, nor have an outline. */
export function checkText(built: BuiltTree, rulebook: Rulebook): Finding[] {
  const placeOf = placesIn(built, rulebook);
  return inOrder([...unknownReferences(built, rulebook, placeOf), ...checkNodes(built.tree, placeOf)]);
}

/**
 * Walks the tree of a manual and reports what must not be printed: references that lead nowhere, HTML, stray markup, a
 * broken outline, numbers that do not come out of the rulebook, and active rules that no page shows.
 */
export function checkManual(built: BuiltTree, rulebook: Rulebook): Finding[] {
  const placeOf = placesIn(built, rulebook);
  return inOrder([
    ...unknownReferences(built, rulebook, placeOf),
    ...checkNodes(built.tree, placeOf),
    ...checkOutline(built, placeOf),
    ...checkPrinted(built.tree, rulebook),
  ]);
}

function unknownReferences({ unknown, sections }: BuiltTree, rulebook: Rulebook, placeOf: PlaceOf): Finding[] {
  return unknown.map((reference) => {
    const help = didYouMean(reference.target, knownTargets(rulebook, sections, reference.scheme));
    const message = `unknown ${reference.scheme} \`${reference.target}\` in the manual`;
    return { code: 'E602', message, place: placeOf(reference), ...(help !== undefined && { help }) };
  });
}
