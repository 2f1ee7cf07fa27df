import type { Rulebook } from '../../link/rulebook.js';
import { type Finding, inOrder } from '../../read/finding.js';
import { didYouMean } from '../../read/nearest.js';
import type { BuiltTree } from '../tree/build-tree.js';
import { knownTargets } from '../tree/known-targets.js';
import { blocksOf } from './blocks.js';
import { checkImperatives } from './check-imperatives.js';
import { checkNodes } from './check-nodes.js';
import { checkNumbers } from './check-numbers.js';
import { checkOutline } from './check-outline.js';
import { checkPrinted } from './check-printed.js';
import { noOrigins, type Origins } from './origins.js';
import { type PlaceOf, placesIn } from './place-of.js';

/** As `checkManual`, for a text beside the manual: it need not print everything, nor have an outline. */
export function checkText(built: BuiltTree, rulebook: Rulebook): Finding[] {
  const placeOf = placesIn(built, rulebook, noOrigins);
  return inOrder([
    ...unknownReferences(built, rulebook, placeOf),
    ...checkNodes(built.tree, placeOf),
    ...checkNumbers(blocksOf(built.tree, built.sections), rulebook.language, placeOf),
  ]);
}

/**
 * Walks the tree of a manual and reports what must not be printed: references that lead nowhere, HTML, stray markup, a
 * broken outline, numbers that do not come out of the rulebook, orders without a rule behind them, and active rules that no
 * page shows.
 */
export function checkManual(built: BuiltTree, rulebook: Rulebook, origins: Origins = noOrigins): Finding[] {
  const { language } = rulebook;
  const placeOf = placesIn(built, rulebook, origins);
  const blocks = blocksOf(built.tree, built.sections);
  return inOrder([
    ...unknownReferences(built, rulebook, placeOf),
    ...checkNodes(built.tree, placeOf),
    ...checkNumbers(blocks, language, placeOf),
    ...checkImperatives(blocks, rulebook, placeOf),
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
