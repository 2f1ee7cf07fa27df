import {
  closeSync,
  existsSync,
  fsyncSync,
  mkdirSync,
  openSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeSync,
} from 'node:fs';
import { dirname, join, relative } from 'node:path';
import type { Released } from '../change/comparison.js';
import type { FrozenText } from '../change/frozen-text.js';
import { digestOf, type Lock, lockFromText } from '../change/lock.js';
import { rulebookFromJson } from '../emit/rulebook-json.js';
import type { Finding } from '../read/finding.js';

/** A release in the clinic folder's history. */
export interface KeptRelease {
  version: string;
  /** `releases/1.0` in the clinic folder. */
  folder: string;
  lock: Lock;
  /** Digest of the lock's file. */
  digest: string;
}

/** The file that holds a release's lock, and the one that holds its signature. */
export const lockFile = 'lock.json';
export const signatureFile = 'lock.sig';
/** The file that holds a release's text, and the one that holds what it was made from. */
export const textFile = 'text.json';
export const inputsFile = 'inputs.zip';

/** The releases of a clinic, oldest first, each following the one before by the digest of its lock. */
export function readReleases(clinicFolder: string, base: string): { releases: KeptRelease[]; findings: Finding[] } {
  const root = join(clinicFolder, 'releases');
  const findings: Finding[] = [];
  const names = existsSync(root) ? readdirSync(root).filter((name) => !name.startsWith('.')) : [];
  const read = names.flatMap((version): KeptRelease[] => {
    const folder = join(root, version);
    const path = join(folder, lockFile);
    try {
      const text = readFileSync(path, 'utf8');
      const lock = lockFromText(text);
      if (lock.document.version !== version) throw new RangeError(`it is the lock of version \`${lock.document.version}\``);
      return [{ version, folder, lock, digest: digestOf(text) }];
    } catch (error) {
      findings.push(
        problem('E801', path, base, `the lock of release \`${version}\` cannot be read: ${sayError(error)}`, backToCopy),
      );
      return [];
    }
  });
  const releases: KeptRelease[] = [];
  for (let next = read.find(({ lock }) => lock.previous === undefined); next !== undefined; ) {
    releases.push(next);
    const { version, digest } = next;
    next = read.find(
      (each) => each.lock.previous?.version === version && each.lock.previous.lock === digest && !releases.includes(each),
    );
  }
  for (const each of read.filter((one) => !releases.includes(one))) {
    const message = `release \`${each.version}\` does not follow ${each.lock.previous === undefined ? 'the first one' : `release \`${each.lock.previous.version}\` as that one is now`}`;
    findings.push(problem('E802', join(each.folder, lockFile), base, message, backToCopy));
  }
  return { releases, findings };
}

const backToCopy = 'a release is never changed: bring the folder back from a copy or from version control';

/** Reports each file of a release that is not as it was released. */
export function checkFiles({ folder, lock, version }: KeptRelease, base: string): Finding[] {
  const there = new Set(listFiles(folder).filter((name) => name !== lockFile && name !== signatureFile));
  const findings = Object.entries(lock.files).flatMap(([name, digest]): Finding[] => {
    if (!there.delete(name))
      return [problem('E801', join(folder, name), base, `\`${name}\` of release \`${version}\` is missing`, backToCopy)];
    if (digestOf(readFileSync(join(folder, name))) === digest) return [];
    return [problem('E801', join(folder, name), base, `\`${name}\` of release \`${version}\` was changed`, backToCopy)];
  });
  for (const name of there)
    findings.push(
      problem('E801', join(folder, name), base, `\`${name}\` does not belong to release \`${version}\``, 'take it out'),
    );
  return findings;
}

/** What a release was made from and what it printed, for a comparison; its files must be as they were. */
export function openRelease(release: KeptRelease, base: string): { released?: Released; findings: Finding[] } {
  const { folder, lock, version } = release;
  const read = (name: string): string | Finding => {
    const path = join(folder, name);
    try {
      const text = readFileSync(path, 'utf8');
      if (digestOf(text) === lock.files[name]) return text;
      return problem('E801', path, base, `\`${name}\` of release \`${version}\` was changed`, backToCopy);
    } catch (error) {
      return problem('E801', path, base, `\`${name}\` of release \`${version}\` cannot be read: ${sayError(error)}`, backToCopy);
    }
  };
  const [rulebook, text] = [read('rulebook.json'), read(textFile)];
  const findings = [rulebook, text].filter((each) => typeof each !== 'string');
  if (typeof rulebook !== 'string' || typeof text !== 'string') return { findings };
  return { released: { rulebook: rulebookFromJson(rulebook), text: JSON.parse(text) as FrozenText }, findings: [] };
}

/**
 * Writes a release: into a folder beside its place, each file to the disk, then renamed as a whole. Whatever happens on the way, the
 * releases before it stay as they are, and what was half written is no release.
 */
export function writeRelease(clinicFolder: string, version: string, files: ReadonlyMap<string, string | Uint8Array>): string {
  const root = join(clinicFolder, 'releases');
  const [waiting, target] = [join(root, `.${version}.part`), join(root, version)];
  mkdirSync(root, { recursive: true });
  // What a release that was broken off left behind.
  for (const name of readdirSync(root).filter((each) => /^\..*\.part$/.test(each))) rmSync(join(root, name), { recursive: true });
  try {
    for (const [name, content] of files) {
      const path = join(waiting, name);
      mkdirSync(dirname(path), { recursive: true });
      const file = openSync(path, 'wx');
      try {
        writeSync(file, typeof content === 'string' ? Buffer.from(content) : content);
        fsyncSync(file);
      } finally {
        closeSync(file);
      }
    }
    if (existsSync(target)) throw new Error(`there is a release \`${version}\` already`);
    renameSync(waiting, target);
  } finally {
    rmSync(waiting, { recursive: true, force: true });
  }
  return target;
}

function listFiles(folder: string): string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((each) => each.isFile())
    .map((each) => relative(folder, join(each.parentPath, each.name)));
}

function problem(code: Finding['code'], path: string, base: string, message: string, help: string): Finding {
  return { code, message, place: { file: relative(base, path), line: 1, column: 1 }, help };
}

function sayError(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
