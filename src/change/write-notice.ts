import type { Finding } from '../read/finding.js';
import { checkText } from '../write/gate/gate.js';
import { modelMeta } from '../write/model/model-title.js';
import { fillTemplate, type Templates } from '../write/text/fill-template.js';
import { phrase } from '../write/text/phrase.js';
import { spellTemplates } from '../write/text/spell-templates.js';
import { buildTree } from '../write/tree/build-tree.js';
import type { Writing } from '../write/writing.js';
import type { Comparison } from './comparison.js';
import { modelNotice } from './model-notice.js';

export interface ChangeInput {
  comparison: Comparison;
  /** The manual as it is now: sections are named by its numbers. */
  manual: Writing;
  templates: Templates;
  /** Version of the tool. */
  tool: string;
}

/**
 * Writes the notice of a change: what changes in practice for each role, which situations get another answer, which schedules
 * move, what became of the pages, and a sheet to sign.
 */
export function writeNotice({ comparison, manual, templates, tool }: ChangeInput): Writing & { findings: Finding[] } {
  const { after } = comparison;
  const markdown = fillTemplate(spellTemplates(templates, after), 'notice/notice', modelNotice(comparison, tool));
  const built = buildTree(markdown, after, new Map(), { numbered: false, manual });
  const meta = { ...modelMeta(after, tool), title: phrase(after, 'notice.title') };
  return { kind: 'notice', tree: built.tree, sections: built.sections, meta, findings: checkText(built, after) };
}
