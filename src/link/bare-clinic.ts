import type { Located } from '../read/read-documents.js';
import type { ClinicDocument } from '../read/types.gen.js';
import type { Pack } from './choose-packs.js';
import { referencesIn } from './references.js';

/**
 * A clinic that changes nothing and owns nothing, to link packs by themselves: one person with every role, one room with
 * every zone, and every contact that a text or a wall card names.
 */
export function bareClinic(
  packs: readonly Pack[],
  wanted: Record<string, string>,
  region: string,
  on: string,
): Located<ClinicDocument> {
  const documents = packs.flatMap((pack) => pack.documents);
  const termsOf = (domain: string) =>
    documents.flatMap(({ data }) =>
      data.kind === 'terms' ? Object.entries(data.terms).flatMap(([id, term]) => (term.domain === domain ? [id] : [])) : [],
    );
  const called = documents.flatMap(({ data }) => (data.kind === 'card' ? data.call.map(({ whom }) => whom.split(':')) : []));
  const named = referencesIn(JSON.stringify(documents.map(({ data }) => data)));
  const contacts = new Set([
    ...named.flatMap(({ scheme, id }) => (scheme === 'contact' ? [id] : [])),
    ...called.flatMap(([kind, id = '']) => (kind === 'contact' ? [id] : [])),
  ]);
  const data: ClinicDocument = {
    kind: 'clinic',
    id: 'bare',
    name: region,
    address: [region],
    phone: '0',
    region,
    packs: wanted,
    about: '',
    document: { title: region, number: '0', version: '0', effective: on, 'review-by': '9999-12-31', 'approved-by': 'person' },
    people: [{ id: 'person', name: 'Person', job: '', roles: termsOf('role') }],
    rooms: [{ id: 'room', name: 'Room', zones: termsOf('zone') }],
    contacts: [...contacts].map((id) => ({ id, for: '', name: id, phone: '0' })),
  };
  const place = { file: packs.at(-1)?.head.file ?? '', line: 1, column: 1 };
  const at = () => place;
  return { file: place.file, data, at, atKey: at, atWords: at };
}
