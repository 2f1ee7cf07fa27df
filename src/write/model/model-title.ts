import type { Rulebook } from '../../link/rulebook.js';
import { sayDate } from '../text/say-date.js';

/** What the title page and the head of every page state. */
export interface ManualMeta {
  title: string;
  clinic: string;
  number: string;
  version: string;
  /** In words: `December 1, 2026`. */
  effective: string;
  /** The same day as `2026-12-01`. */
  effectiveOn: string;
  language: string;
  paper: 'a4' | 'letter';
  /** Paper of wall cards, where it is another one. */
  size?: 'a4' | 'a5' | 'letter';
  digest: string;
  tool: string;
  /** The phrases that printers need, by id. */
  words: Readonly<Record<string, string>>;
}

/** The document control data that every printer needs. */
export function modelMeta(rulebook: Rulebook, tool: string): ManualMeta {
  const { document, name } = rulebook.clinic;
  return {
    title: document.title,
    clinic: name,
    number: document.number,
    version: document.version,
    effective: sayDate(document.effective, rulebook.language),
    effectiveOn: document.effective,
    language: rulebook.language,
    paper: rulebook.paper,
    digest: rulebook.digest.slice(0, 12),
    tool,
    words: printWords(rulebook),
  };
}

/** The phrases whose ids begin with `print.`, their places unfilled. */
function printWords({ phrases }: Rulebook): Record<string, string> {
  return Object.fromEntries(
    Object.entries(phrases).flatMap(([id, said]) => (id.startsWith('print.') && typeof said === 'string' ? [[id, said]] : [])),
  );
}

/** The title page with document control. */
export function modelTitle(rulebook: Rulebook, tool: string) {
  const { clinic, packs } = rulebook;
  const approver = clinic.people.find(({ id }) => id === clinic.document['approved-by']);
  return {
    ...modelMeta(rulebook, tool),
    address: clinic.address.join(', '),
    phone: clinic.phone,
    reviewBy: sayDate(clinic.document['review-by'], rulebook.language),
    on: sayDate(rulebook.on, rulebook.language),
    approver: approver?.name ?? clinic.document['approved-by'],
    approverJob: approver?.job ?? '',
    packs: packs.map(({ title, version, id, licence }) => ({ title, version, id, licence })),
  };
}
