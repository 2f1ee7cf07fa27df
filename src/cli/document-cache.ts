import { createHash } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { endianness, homedir } from 'node:os';
import { isAbsolute, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { DocumentCache, KeptDocument } from '../read/read-documents.js';

/** Largest bundle that is written, in bytes: what was used longest ago is left out. */
const largestBundle = 16_000_000;

/** A cache of documents that can be kept on disk from one run to the next. */
export interface KeptCache extends DocumentCache {
  /** Writes what is new to disk, if anything is. */
  save(): void;
}

/**
 * Documents kept in memory and, with a folder, on disk: one file of lines, the first with a checksum of the others, each of
 * them the key, the outline and the data of a document. The disk is a convenience: what cannot be read is passed over, what
 * cannot be written is not.
 */
export function createDocumentCache(folder?: string): KeptCache {
  const inMemory = new Map<string, KeptDocument>();
  const fresh = new Map<string, Buffer>();
  let onDisk: Map<string, Buffer> | undefined;
  const linesOnDisk = (): Map<string, Buffer> => {
    onDisk ??=
      folder === undefined ? new Map<string, Buffer>() : (tried(() => readBundle(join(folder, bundleName()))) ?? new Map());
    return onDisk;
  };
  return {
    get(key) {
      const known = inMemory.get(key);
      if (known !== undefined) return known;
      const line = linesOnDisk().get(key);
      const kept = line && fromLine(line);
      if (kept !== undefined) inMemory.set(key, kept);
      return kept;
    },
    put(key, document) {
      inMemory.set(key, document);
      const line = folder === undefined ? undefined : toLine(key, document);
      if (line !== undefined) fresh.set(key, line);
    },
    save() {
      if (folder === undefined || fresh.size === 0) return;
      const known = [...linesOnDisk()];
      const used = known.filter(([key]) => inMemory.has(key));
      onDisk = new Map([...fresh, ...used, ...known]);
      fresh.clear();
      writeBundle(folder, [...onDisk.values()]);
    },
  };
}

let ofThisProcess: KeptCache | undefined;

/** The cache of this process. */
export function documentCache(): KeptCache {
  ofThisProcess ??= createDocumentCache(cacheFolder(process.env, process.platform));
  return ofThisProcess;
}

/** The folder in which documents are kept; none where CLINIC_RULEBOOK_CACHE is `off`. */
export function cacheFolder(env: NodeJS.ProcessEnv, platform: NodeJS.Platform): string | undefined {
  if (env['CLINIC_RULEBOOK_CACHE'] === 'off') return undefined;
  const named = env[platform === 'win32' ? 'LOCALAPPDATA' : 'XDG_CACHE_HOME'];
  if (named !== undefined && isAbsolute(named)) return join(named, 'clinic-rulebook');
  const home = tried(homedir);
  return home === undefined || home === '' ? undefined : join(home, '.cache', 'clinic-rulebook');
}

const bundles = /^documents-[0-9a-f]+(?:\.\d+\.part)?$/;
/** How many bundles are left in the folder: other versions of the tool may be in use beside this one. */
const mostBundles = 4;
const separator = '\t';
const lineBreak = 0x0a;

/** Named after all that decides how documents are read: the version, the packages, and the code that reads. */
function bundleName(): string {
  const hash = createHash('sha256').update(endianness());
  hash.update(readFileSync(new URL('../../package.json', import.meta.url)));
  for (const [box, code] of [
    ['read', /^(?!.*\.gen\.|.*\.d\.ts$).*\.[jt]s$/],
    ['measure', /^day-number\.[jt]s$/],
  ] as const) {
    const folder = fileURLToPath(new URL(`../${box}/`, import.meta.url));
    for (const name of readdirSync(folder).sort()) if (code.test(name)) hash.update(readFileSync(join(folder, name)));
  }
  return `documents-${hash.digest('hex').slice(0, 16)}`;
}

function readBundle(path: string): Map<string, Buffer> {
  const bytes = readFileSync(path);
  const lines = new Map<string, Buffer>();
  const body = bytes.subarray(bytes.indexOf(lineBreak) + 1);
  if (bytes.toString('latin1', 0, bytes.length - body.length) !== `${checksum([body])}\n`) return lines;
  for (let start = 0, end = body.indexOf(lineBreak); end >= 0; start = end + 1, end = body.indexOf(lineBreak, start)) {
    const line = body.subarray(start, end + 1);
    lines.set(line.toString('latin1', 0, line.indexOf(separator)), line);
  }
  return lines;
}

/** Writes the lines as far as there is room, beside the place first, and takes the oldest bundles away. */
function writeBundle(folder: string, lines: readonly Buffer[]): void {
  let size = 0;
  const fitting = lines.filter((line) => {
    size += line.length;
    return size <= largestBundle;
  });
  tried(() => {
    const name = bundleName();
    const part = join(folder, `${name}.${process.pid}.part`);
    mkdirSync(folder, { recursive: true, mode: 0o700 });
    try {
      writeFileSync(part, Buffer.concat([Buffer.from(`${checksum(fitting)}\n`), ...fitting]), { mode: 0o600 });
      renameSync(part, join(folder, name));
    } finally {
      rmSync(part, { force: true });
    }
    const written = readdirSync(folder)
      .filter((each) => bundles.test(each))
      .map((each) => ({ path: join(folder, each), at: statSync(join(folder, each)).mtimeMs }))
      .sort((a, b) => b.at - a.at);
    for (const { path } of written.slice(mostBundles)) rmSync(path, { force: true });
  });
}

function checksum(parts: readonly Buffer[]): string {
  const hash = createHash('sha256');
  for (const part of parts) hash.update(part);
  return hash.digest('hex');
}

/** Nothing where the data would not come back as it is, such as minus zero. */
function toLine(key: string, { data, outline }: KeptDocument): Buffer | undefined {
  if (!isPlain(data)) return undefined;
  const places = Buffer.from(outline.buffer, outline.byteOffset, outline.byteLength).toString('base64');
  return Buffer.from(`${[key, places, JSON.stringify(data)].join(separator)}\n`);
}

function isPlain(value: unknown): boolean {
  if (typeof value === 'number') return Number.isFinite(value) && !Object.is(value, -0);
  if (typeof value !== 'object' || value === null) return value !== undefined;
  return Object.values(value).every(isPlain);
}

function fromLine(line: Buffer): KeptDocument | undefined {
  const afterKey = line.indexOf(separator) + 1;
  const afterPlaces = line.indexOf(separator, afterKey) + 1;
  return tried(() => {
    const places = Buffer.from(line.toString('latin1', afterKey, afterPlaces - 1), 'base64');
    const outline = new Int32Array(places.length / Int32Array.BYTES_PER_ELEMENT);
    places.copy(new Uint8Array(outline.buffer));
    return { data: JSON.parse(line.toString('utf8', afterPlaces)) as KeptDocument['data'], outline };
  });
}

function tried<T>(call: () => T): T | undefined {
  try {
    return call();
  } catch {
    return undefined;
  }
}
