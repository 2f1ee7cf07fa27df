import type { Rulebook } from '../../link/rulebook.js';
import type { ReferenceScheme } from '../text/markdown.js';
import type { Section } from './nodes.js';

/** The ids that references of a kind can name, for "did you mean". */
export function knownTargets(rulebook: Rulebook, sections: readonly Section[], scheme: ReferenceScheme): string[] {
  const ofDomain = (domain: string) => [...rulebook.terms.values()].flatMap((term) => (term.domain === domain ? [term.id] : []));
  switch (scheme) {
    case 'limit':
      return [...rulebook.limits.keys()];
    case 'every':
    case 'task':
      return [...rulebook.tasks.keys()];
    case 'procedure':
      return [...rulebook.procedures.keys()];
    case 'decision':
      return [...rulebook.decisions.keys()];
    case 'form':
      return [...rulebook.forms.keys()];
    case 'term':
      return [...rulebook.terms.keys()];
    case 'role':
      return ofDomain('role');
    case 'machine':
      return ofDomain('machine-kind');
    case 'zone':
      return ofDomain('zone');
    case 'contact':
      return rulebook.clinic.contacts.map(({ id }) => id);
    case 'source':
      return [...rulebook.sources.keys()];
    case 'at':
      return sections.map(({ id }) => id);
    case 'section':
      return sections.flatMap(({ id }) => (id.startsWith('section:') ? [id.slice('section:'.length)] : []));
  }
}
