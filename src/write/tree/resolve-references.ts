import type { Root } from 'mdast';
import { visit } from 'unist-util-visit';
import type { Rulebook } from '../../link/rulebook.js';
import { type Bibliography, numberSources } from '../model/cite.js';
import { nameOfSource } from '../model/named-sources.js';
import type { ReferenceScheme } from '../text/markdown.js';
import { sayPlainQuantity, sayQuantity } from '../text/say-quantity.js';
import { findHomes, type Home } from './find-homes.js';
import type { CrossReference, Section } from './nodes.js';
import { sayEvery } from './say-every.js';
import { sayMachines, sayRole, sayZone } from './say-place.js';

/** What references are filled from. */
interface Shelf {
  rulebook: Rulebook;
  bibliography: Bibliography;
  sections: readonly Section[];
  homes: ReadonlyMap<string, Partial<Home>>;
}

/** What a reference prints, and where it leads. */
interface Filling {
  text: string;
  anchor?: string | undefined;
}

/** Fills in every reference of the tree, in place, and returns those that lead nowhere. */
export function resolveReferences(
  tree: Root,
  rulebook: Rulebook,
  sections: readonly Section[],
  manual?: { tree: Root; sections: readonly Section[] },
): CrossReference[] {
  const shelf = { rulebook, bibliography: numberSources(rulebook), sections, homes: homesOf(tree, sections, manual) };
  const unknown: CrossReference[] = [];
  visit(tree, 'reference', (reference, _, parent) => {
    // A cell is narrow, and its column states a unit: no second one there.
    const filling = fill(shelf, reference.scheme, reference.target, parent?.type !== 'tableCell');
    if (filling === undefined) unknown.push(reference);
    reference.children = [{ type: 'text', value: filling?.text ?? reference.target }];
    if (filling?.anchor !== undefined) reference.anchor = filling.anchor;
  });
  return unknown;
}

/** The homes in the tree itself, before those in the manual beside it, which have no anchor here. */
function homesOf(
  tree: Root,
  sections: readonly Section[],
  manual: { tree: Root; sections: readonly Section[] } | undefined,
): Shelf['homes'] {
  const own = findHomes(tree, sections);
  if (manual === undefined) return own;
  const elsewhere = [...findHomes(manual.tree, manual.sections)].map(([key, { section }]) => [key, { section }] as const);
  return new Map<string, Partial<Home>>([...elsewhere, ...own]);
}

function fill(shelf: Shelf, scheme: ReferenceScheme, id: string, roomy: boolean): Filling | undefined {
  const { rulebook, homes } = shelf;
  const at = (kind: string) => homes.get(`${kind}:${id}`)?.anchor;
  switch (scheme) {
    case 'limit': {
      const limit = rulebook.limits.get(id);
      return (
        limit && {
          text: roomy ? sayQuantity(rulebook, limit.value) : sayPlainQuantity(rulebook, limit.value),
          anchor: at('limit'),
        }
      );
    }
    case 'every':
      return plain(sayEvery(rulebook, id), at('task'));
    case 'procedure':
      return titled(shelf, scheme, id, rulebook.procedures.get(id)?.title);
    case 'decision':
      return titled(shelf, scheme, id, rulebook.decisions.get(id)?.title);
    case 'form':
      return titled(shelf, scheme, id, rulebook.forms.get(id)?.title);
    case 'task':
      return titled(shelf, scheme, id, rulebook.tasks.get(id)?.title);
    case 'section':
      return titled(shelf, scheme, id, shelf.sections.find((section) => section.id === `section:${id}`)?.title);
    case 'term':
      return plain(rulebook.terms.get(id)?.label, at('term'));
    case 'role':
      return plain(sayRole(rulebook, id));
    case 'machine':
      return plain(sayMachines(rulebook, id));
    case 'zone':
      return plain(sayZone(rulebook, id));
    case 'contact': {
      const contact = rulebook.clinic.contacts.find((each) => each.id === id);
      return contact && { text: `${contact.name}, ${contact.phone}`, anchor: at('contact') };
    }
    case 'at': {
      const section = homes.get(id)?.section ?? shelf.sections.find((each) => each.id === id);
      return plain(section?.number, shelf.sections.find((each) => each === section)?.anchor);
    }
    case 'source': {
      const number = shelf.bibliography.get(id)?.number;
      return plain(number === undefined ? nameOfSource(rulebook, id) : `[${number}]`, at('source'));
    }
  }
}

function plain(text: string | undefined, anchor?: string): Filling | undefined {
  return text === undefined ? undefined : { text, anchor };
}

/** A title with the number of the section it is found in; the title alone where this clinic has no use for it. */
function titled({ rulebook, homes }: Shelf, kind: string, id: string, title: string | undefined): Filling | undefined {
  const home = homes.get(`${kind}:${id}`);
  if (title === undefined) return plain(rulebook.notHere.get(id));
  return { text: home?.section === undefined ? title : `${title} (${home.section.number})`, anchor: home?.anchor };
}
