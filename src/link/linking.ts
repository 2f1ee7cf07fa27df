import type { Finding, Place } from '../read/finding.js';
import { didYouMean } from '../read/nearest.js';
import type { Located } from '../read/read-documents.js';
import type { Document, Source as RawSource } from '../read/types.gen.js';
import type { Citation, Source, Term } from './rulebook.js';

/** Documents that are laid over the ones before: a pack, or the clinic. */
export interface Layer {
  /** The pack's id, or `clinic`. */
  id: string;
  documents: readonly Located[];
}

export type OfKind<K extends Document['kind']> = Located<Extract<Document, { kind: K }>>;

/** What the parts of the link stage share: the layers in order, the date, and the findings so far. */
export interface Linking {
  /** Date for which values are chosen, YYYY-MM-DD. */
  on: string;
  layers: readonly Layer[];
  sources: Map<string, Source>;
  terms: Map<string, Term>;
  findings: Finding[];
}

/** Adds a finding. */
export function report(linking: Linking, code: Finding['code'], place: Place, message: string, help?: string): void {
  linking.findings.push(help === undefined ? { code, message, place } : { code, message, place, help });
}

/** The documents of one kind in a layer. */
export function documentsOf<K extends Document['kind']>(layer: Layer, kind: K): OfKind<K>[] {
  return layer.documents.filter((each): each is OfKind<K> => each.data.kind === kind);
}

/** The documents of one kind in all layers, each with its layer. */
export function eachOf<K extends Document['kind']>(linking: Linking, kind: K): { layer: Layer; document: OfKind<K> }[] {
  return linking.layers.flatMap((layer) => documentsOf(layer, kind).map((document) => ({ layer, document })));
}

/** Reports an id that does not exist, with the nearest one that does. */
export function expectKnown(
  linking: Linking,
  code: Finding['code'],
  what: string,
  id: string,
  known: Iterable<string>,
  place: Place,
): boolean {
  const names = [...known];
  if (names.includes(id)) return true;
  report(linking, code, place, `unknown ${what} \`${id}\``, didYouMean(id, names) ?? listed(names));
  return false;
}

/** Reports a term that does not exist or is not of the domain asked for. */
export function expectTerm(linking: Linking, id: string, domain: string, place: Place): boolean {
  return expectKnown(linking, 'E305', domain.replaceAll('-', ' '), id, membersOf(linking, domain), place);
}

/** The terms of a domain, in the order they are written. */
export function membersOf(linking: Pick<Linking, 'terms'>, domain: string): string[] {
  return [...linking.terms.values()].filter((term) => term.domain === domain).map(({ id }) => id);
}

/** A source as cited, with its shorthand written out. Reports one that is not in the bibliography or says too little. */
export function cite(linking: Linking, source: RawSource, place: Place): Citation {
  const citation: Citation = typeof source === 'string' ? { id: source } : source;
  if (!expectKnown(linking, 'E304', 'source', citation.id, linking.sources.keys(), place)) return citation;
  const type = linking.sources.get(citation.id)?.type;
  if (type === 'common-practice' || type === 'clinic' || type === 'maker') return citation;
  if (citation.evidence === undefined)
    report(
      linking,
      'E320',
      place,
      `\`${citation.id}\` is cited without saying how the value was checked`,
      'add `evidence:` read, recalled or computed',
    );
  if (citation.at === undefined)
    report(linking, 'E320', place, `\`${citation.id}\` is cited without a clause`, 'add `at:` with the clause, table or page');
  return citation;
}

/** Whether a thing with these dates holds on the date asked for. */
export function holdsOn(on: string, { from, until }: { from?: string | undefined; until?: string | undefined }): boolean {
  return (from === undefined || from <= on) && (until === undefined || on <= until);
}

function listed(names: readonly string[]): string | undefined {
  return names.length > 0 && names.length <= 12 ? `known are ${names.map((name) => `\`${name}\``).join(', ')}` : undefined;
}
