import { referencesIn } from '../../link/references.js';
import type { Rulebook } from '../../link/rulebook.js';
import { sayQuantity } from '../text/say-quantity.js';
import { sayEvery } from '../tree/say-every.js';
import { sayMachines, sayRole, sayZone } from '../tree/say-place.js';

/** What a rule says, in words alone: references filled in, marks of emphasis taken off. */
export function plainWords(rulebook: Rulebook, text: string): string {
  return referencesIn(text)
    .reduce((said, { scheme, id }) => said.replace(`[](${scheme}:${id})`, () => sayReference(rulebook, scheme, id)), text)
    .replace(/\*\*?([^*]+)\*\*?/g, '$1');
}

function sayReference(rulebook: Rulebook, scheme: string, id: string): string {
  const { limits, terms, clinic, procedures, decisions, tasks, forms, sources, notHere } = rulebook;
  const limit = scheme === 'limit' ? limits.get(id) : undefined;
  if (limit !== undefined) return sayQuantity(rulebook, limit.value);
  const contact = scheme === 'contact' ? clinic.contacts.find((each) => each.id === id) : undefined;
  if (contact !== undefined) return `${contact.name}, ${contact.phone}`;
  if (scheme === 'role') return sayRole(rulebook, id) ?? id;
  if (scheme === 'every') return sayEvery(rulebook, id) ?? id;
  if (scheme === 'machine') return sayMachines(rulebook, id) ?? id;
  if (scheme === 'zone') return sayZone(rulebook, id) ?? id;
  const titled = { procedure: procedures, decision: decisions, task: tasks, form: forms, source: sources }[scheme]?.get(id);
  return titled?.title ?? terms.get(id)?.label ?? notHere.get(id) ?? id;
}
