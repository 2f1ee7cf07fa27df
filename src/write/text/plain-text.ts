import { referencesIn } from '../../link/references.js';
import type { Rulebook } from '../../link/rulebook.js';
import { sayInterval } from './say-interval.js';
import { sayPlainQuantity } from './say-quantity.js';

/** A text with its references filled in, as text alone. */
export function plainText(rulebook: Rulebook, text: string): string {
  return referencesIn(text).reduce(
    (said, { scheme, id }) => said.replace(`[](${scheme}:${id})`, () => sayReference(rulebook, scheme, id)),
    text,
  );
}

function sayReference(rulebook: Rulebook, scheme: string, id: string): string {
  const names = (all: { name: string }[]) => all.map(({ name }) => name).join(' and ') || id;
  switch (scheme) {
    case 'limit': {
      const limit = rulebook.limits.get(id);
      return limit === undefined ? id : sayPlainQuantity(rulebook, limit.value);
    }
    case 'every': {
      const every = rulebook.tasks.get(id)?.every;
      return every === undefined ? id : sayInterval(rulebook, every);
    }
    case 'role':
      return names(rulebook.clinic.people.filter(({ roles }) => roles.includes(id)));
    case 'machine':
      return names([...rulebook.machines.values()].filter(({ kind }) => kind === id));
    case 'zone':
      return names(rulebook.clinic.rooms.filter(({ zones }) => zones.includes(id)));
    case 'contact': {
      const contact = rulebook.clinic.contacts.find((each) => each.id === id);
      return contact === undefined ? id : `${contact.name}, ${contact.phone}`;
    }
    case 'term':
      return rulebook.terms.get(id)?.label ?? id;
    default:
      return (
        rulebook.procedures.get(id)?.title ??
        rulebook.policies.get(id)?.title ??
        rulebook.decisions.get(id)?.title ??
        rulebook.tasks.get(id)?.title ??
        rulebook.forms.get(id)?.title ??
        rulebook.sources.get(id)?.title ??
        rulebook.notHere.get(id) ??
        id
      );
  }
}
