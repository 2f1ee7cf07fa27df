import type { Finding } from '../read/finding.js';
import { checkText } from './gate/gate.js';
import { modelLogSheets } from './model/model-log-sheets.js';
import { modelMeta } from './model/model-title.js';
import { fillTemplate } from './text/fill-template.js';
import { spellTemplates } from './text/spell-templates.js';
import { buildTree } from './tree/build-tree.js';
import type { ManualInput } from './write-manual.js';
import type { Writing } from './writing.js';

/**
 * Writes the logs of a clinic as a document of their own: a chapter of blank sheets, one for each of its machines, and a chapter of
 * filled examples. They may be printed when no finding is an error. Where there are no forms, the tree is empty.
 *
 * @throws Error when a template asks for something that the forms do not have.
 */
export function writeForms({ rulebook, templates, tool }: ManualInput): Writing & { findings: Finding[] } {
  const spelt = spellTemplates(templates, rulebook);
  const built = buildTree(fillTemplate(spelt, 'forms/forms', modelLogSheets(rulebook)), rulebook);
  return {
    kind: 'forms',
    tree: built.tree,
    sections: built.sections,
    meta: { ...modelMeta(rulebook, tool), title: fillTemplate(spelt, 'forms/title', {}).trim() },
    findings: checkText(built, rulebook),
  };
}
