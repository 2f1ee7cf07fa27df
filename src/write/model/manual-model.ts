import type { Rulebook } from '../../link/rulebook.js';
import type { Figure } from '../figures/figure.js';
import { figureIds } from '../figures/model-figures.js';
import { numberSources } from './cite.js';
import { modelGlossary, modelSources } from './model-annexes.js';
import { modelChanges } from './model-changes.js';
import { modelChapters } from './model-chapter.js';
import { modelForms } from './model-forms.js';
import { modelLimits } from './model-limits.js';
import { modelScope } from './model-scope.js';
import { modelTitle } from './model-title.js';

/** All that the manual's templates print. Every number, condition and order is settled here. */
export function modelManual(rulebook: Rulebook, tool: string, figures: ReadonlyMap<string, Figure>) {
  const bibliography = numberSources(rulebook);
  return {
    title: modelTitle(rulebook, tool),
    scope: modelScope(rulebook),
    chapters: modelChapters(rulebook, bibliography, figures),
    forms: modelForms(rulebook),
    limits: modelLimits(rulebook, bibliography),
    changes: modelChanges(rulebook, bibliography),
    sources: modelSources(bibliography),
    glossary: modelGlossary(rulebook),
    figures: Object.fromEntries(figureIds.map((id) => [id, figures.has(id)])),
    people: rulebook.clinic.people.map(({ name, job }) => ({ name, job })),
  };
}
