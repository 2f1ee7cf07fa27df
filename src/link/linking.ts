import type { Finding, Place } from '../read/finding.js';
import { didYouMean } from '../read/nearest.js';
import { quoted, quotedList } from '../read/quoted.js';
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
  /**
   * What is written but was refused, or does not hold on the date, as `limit longest-wait`. Naming one of them is not
   * reported: it would be a second finding for one mistake, or none at all.
   */
  passedOver: Set<string>;
  findings: Finding[];
}

/** Adds a finding. */
export function report(
  linking: Pick<Linking, 'findings'>,
  code: Finding['code'],
  place: Place,
  message: string,
  help?: string,
): void {
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

/** Keeps a thing from being reported as unknown where it is named. */
export function passOver(linking: Linking, what: string, id: string): void {
  linking.passedOver.add(`${what} ${id}`);
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
  if (linking.passedOver.has(`${what} ${id}`)) return false;
  const [kind = '', whole] = what.split(' of ');
  const message = `unknown ${kind} ${quoted(id)}${whole === undefined ? '' : ` of ${whole}`}`;
  report(linking, code, place, message, didYouMean(id, names) ?? listed(names));
  return false;
}

/** Reports a term that does not exist or is not of the domain asked for. */
export function expectTerm(linking: Linking, id: string, domain: string, place: Place): boolean {
  return expectKnown(
    linking,
    'E305',
    domain === 'ppe' ? 'protective equipment' : domain.replaceAll('-', ' '),
    id,
    membersOf(linking, domain),
    place,
  );
}

/** The terms of a domain, in the order they are written. */
export function membersOf(linking: Pick<Linking, 'terms'>, domain: string): string[] {
  return [...linking.terms.values()].filter((term) => term.domain === domain).map(({ id }) => id);
}

/** A source as cited, with its shorthand written out. Reports one that is not in the bibliography or says too little. */
export function cite(linking: Linking, source: RawSource, place: Place): Citation {
  const citation = citationOf(source);
  if (!expectKnown(linking, 'E304', 'source', citation.id, linking.sources.keys(), place)) return citation;
  if (!isPublished(linking.sources.get(citation.id))) return citation;
  const missing = [
    ...(citation.at === undefined ? ['`at` (clause, table or page)'] : []),
    ...(citation.evidence === undefined ? ['`evidence` (read, recalled or computed)'] : []),
  ];
  if (missing.length > 0)
    report(linking, 'E320', place, `\`${citation.id}\` is cited without ${missing.join(' and ')}`, howToCite);
  return citation;
}

/** A source as cited, with its shorthand written out. */
export function citationOf(source: RawSource): Citation {
  return typeof source === 'string' ? { id: source } : source;
}

/** Whether a source can be looked up outside the clinic. */
export function isPublished(source: Pick<Source, 'type'> | undefined): boolean {
  return source !== undefined && !['common-practice', 'clinic', 'maker'].includes(source.type);
}

const howToCite = 'write `{ id: …, at: …, evidence: … }`';

/** Whether a thing with these dates holds on the date asked for. */
export function holdsOn(on: string, { from, until }: { from?: string | undefined; until?: string | undefined }): boolean {
  return (from === undefined || from <= on) && (until === undefined || on <= until);
}

/** The help line for an unknown name that is like no other, where there are few. */
export function listed(names: readonly string[]): string | undefined {
  if (names.length === 0 || names.length > 12) return undefined;
  return names.length === 1 ? `there is only ${quotedList(names)}` : `known are ${quotedList(names)}`;
}

/** Place within its chapter of what does not state one. */
export const usualOrder = 50;
