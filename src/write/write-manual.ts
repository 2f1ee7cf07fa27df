import type { Rulebook } from '../link/rulebook.js';
import type { Finding } from '../read/finding.js';
import { modelFigures } from './figures/model-figures.js';
import { checkManual } from './gate/gate.js';
import { numberSources } from './model/cite.js';
import { modelManual } from './model/manual-model.js';
import { modelMeta } from './model/model-title.js';
import { modelTrace } from './model/model-trace.js';
import { fillTemplate, type Templates } from './text/fill-template.js';
import { spellTemplates } from './text/spell-templates.js';
import { buildTree } from './tree/build-tree.js';
import type { Writing } from './writing.js';

export interface ManualInput {
  rulebook: Rulebook;
  templates: Templates;
  /** Version of the tool, printed on the title page. */
  tool: string;
  /** Texts of the files that rules and clinic were read from: findings then name the very word. */
  textOf?: ((file: string) => string | undefined) | undefined;
}

/**
 * Writes the manual of a clinic. It may be printed when no finding is an error.
 *
 * @throws Error when a template asks for something that the manual does not have.
 */
export function writeManual({ rulebook, templates, tool, textOf }: ManualInput): Writing & { findings: Finding[] } {
  const figures = modelFigures(rulebook);
  const view = modelManual(rulebook, tool, figures);
  const spelt = spellTemplates(templates, rulebook);
  const markdown = fillTemplate(spelt, 'manual/manual', view);
  const built = buildTree(markdown, rulebook, figures, {
    trace: (pages) => fillTemplate(spelt, 'manual/trace', modelTrace(rulebook, numberSources(rulebook), pages)),
  });
  return {
    kind: 'manual',
    tree: built.tree,
    sections: built.sections,
    meta: modelMeta(rulebook, tool),
    findings: checkManual(built, rulebook, { templates: spelt, textOf }),
  };
}
