import { createHash } from 'node:crypto';
import { canonicalJson } from '../decide/canonical-json.js';
import type { Rulebook } from '../link/rulebook.js';

/** SHA-256 in hexadecimal. */
export type Digest = string;

/** What a release was made from, who approved it, and the digest of each of its files. */
export interface Lock {
  format: 'clinic-rulebook/lock/1';
  clinic: string;
  document: { title: string; number: string; version: string; effective: string; 'review-by': string };
  approved: { by: string; name: string; on: string };
  /** Date for which values were chosen. */
  on: string;
  /** Version of the tool, and the digest of its templates and fonts. */
  tool: { version: string; templates: Digest };
  packs: { id: string; version: string; digest: Digest }[];
  /** Digest of the clinic's own documents. */
  folder: Digest;
  /** Digest of the linked rules, as printed on the title page. */
  rulebook: Digest;
  /** Digest of each file by name, without the lock and its signature. */
  files: Record<string, Digest>;
  /** The release before this one, with the digest of its lock; absent for the first one. */
  previous?: { version: string; lock: Digest };
}

export interface LockInput {
  rulebook: Rulebook;
  approvedOn: string;
  tool: Lock['tool'];
  packs: Lock['packs'];
  folder: Digest;
  files: ReadonlyMap<string, string | Uint8Array>;
  previous?: Lock['previous'];
}

/** The lock of a release. */
export function makeLock({ rulebook, approvedOn, tool, packs, folder, files, previous }: LockInput): Lock {
  const { clinic, on, digest } = rulebook;
  const { title, number, version, effective, 'review-by': reviewBy, 'approved-by': by } = clinic.document;
  return {
    format: 'clinic-rulebook/lock/1',
    clinic: clinic.name,
    document: { title, number, version, effective, 'review-by': reviewBy },
    approved: { by, name: clinic.people.find(({ id }) => id === by)?.name ?? by, on: approvedOn },
    on,
    tool,
    packs,
    folder,
    rulebook: digest,
    files: Object.fromEntries([...files].map(([name, content]) => [name, digestOf(content)])),
    ...(previous && { previous }),
  };
}

/** A lock as its file holds it. */
export function lockToText(lock: Lock): string {
  return `${canonicalJson(lock, 2)}\n`;
}

/**
 * Reads a lock.
 *
 * @throws RangeError when the text is no lock.
 */
export function lockFromText(text: string): Lock {
  const lock: unknown = JSON.parse(text);
  const isRecord = (value: unknown): value is Record<string, unknown> => typeof value === 'object' && value !== null;
  if (!isRecord(lock) || lock['format'] !== 'clinic-rulebook/lock/1') throw new RangeError('expected `clinic-rulebook/lock/1`');
  const { document, approved, files, tool, rulebook } = lock;
  const isLock =
    isRecord(document) &&
    ['title', 'number', 'version', 'effective', 'review-by'].every((key) => typeof document[key] === 'string') &&
    isRecord(approved) &&
    isRecord(tool) &&
    isRecord(files) &&
    Object.values(files).every((digest) => typeof digest === 'string') &&
    typeof rulebook === 'string';
  if (!isLock) throw new RangeError('keys are missing');
  return lock as unknown as Lock;
}

/** SHA-256 of a file's content. */
export function digestOf(content: string | Uint8Array): Digest {
  return createHash('sha256').update(content).digest('hex');
}

/** SHA-256 over files, by name and content, in the order of their names. */
export function digestOfFiles(files: ReadonlyMap<string, Uint8Array>): Digest {
  const sorted = [...files].sort(([a], [b]) => (a < b ? -1 : 1));
  return digestOf(sorted.map(([name, content]) => `${digestOf(content)}  ${name}\n`).join(''));
}

/** Whether a version comes after another: numbers by their value, part by part; `1.10` after `1.9`. */
export function isLaterVersion(version: string, than: string): boolean {
  return new Intl.Collator('en', { numeric: true }).compare(version, than) > 0;
}
