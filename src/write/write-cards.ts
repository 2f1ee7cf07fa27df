import type { Finding } from '../read/finding.js';
import { checkText } from './gate/gate.js';
import { modelCards } from './model/model-cards.js';
import { modelMeta } from './model/model-title.js';
import { fillTemplate } from './text/fill-template.js';
import { spellTemplates } from './text/spell-templates.js';
import { buildTree } from './tree/build-tree.js';
import type { ManualInput } from './write-manual.js';
import type { Writing } from './writing.js';

export interface CardsInput extends ManualInput {
  /** The manual beside it: with it, a card names the sections it is taken from by their numbers. */
  manual?: Pick<Writing, 'tree' | 'sections'>;
}

/**
 * Writes the wall cards of a clinic: each one a heading of depth 1, without a number, and the blocks under it. They may be
 * printed when no finding is an error. Where no card holds, the tree is empty.
 *
 * @throws Error when a template asks for something that the cards do not have.
 */
export function writeCards({ rulebook, templates, tool, manual }: CardsInput): Writing & { findings: Finding[] } {
  const spelt = spellTemplates(templates, rulebook);
  const markdown = fillTemplate(spelt, 'cards/cards', modelCards(rulebook, tool));
  const built = buildTree(markdown, rulebook, undefined, { numbered: false, manual });
  return {
    kind: 'cards',
    tree: built.tree,
    sections: built.sections,
    meta: { ...modelMeta(rulebook, tool), title: fillTemplate(spelt, 'cards/title', {}).trim() },
    findings: checkText(built, rulebook),
  };
}
