import type { Rulebook } from '../../link/rulebook.js';
import { speller } from '../../link/spell.js';
import type { Templates } from './fill-template.js';

/** The templates as the region of a rulebook writes their words. */
export function spellTemplates(templates: Templates, { wording }: Pick<Rulebook, 'wording'>): Templates {
  const spell = speller(wording);
  return new Map([...templates].map(([name, text]) => [name, spell(text)]));
}
