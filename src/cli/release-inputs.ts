import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve, sep } from 'node:path';
import { unzipSync, zipSync } from 'fflate';
import { digestOfFiles, type Lock } from '../change/lock.js';
import type { Rulebook } from '../link/rulebook.js';
import { loadFolder } from './load-folder.js';

/** The documents that a manual is made from, by path: `rules/base/sources.yaml`, `clinic/clinic.yaml`. */
export type Inputs = ReadonlyMap<string, Uint8Array>;

/** Reads all documents that a rulebook was linked from: schemas, its packs, and the clinic's own. */
export function readInputs(rulebook: Rulebook, rulesFolder: string, clinicFolder: string): Inputs {
  const inputs = new Map<string, Uint8Array>();
  const take = (folder: string, name: string): void => {
    for (const { file, bytes } of loadFolder(folder, folder).files) inputs.set(`${name}/${file}`, bytes);
  };
  for (const name of readdirSync(join(rulesFolder, 'schema')).filter((each) => each.endsWith('.json')))
    inputs.set(`rules/schema/${name}`, readFileSync(join(rulesFolder, 'schema', name)));
  for (const folder of foldersOf(rulebook, rulesFolder)) take(join(rulesFolder, folder), `rules/${folder}`);
  take(clinicFolder, 'clinic');
  return inputs;
}

/** Folders of the rules that belong to a rulebook: its packs, and those named after its region or language. */
function foldersOf({ packs, language }: Rulebook, rulesFolder: string): string[] {
  const regions = packs.map(({ id }) => id).filter((id) => id !== 'base');
  const wanted = ['base', ...regions.flatMap((id) => [`regions/${id}`, `requirements/${id}`]), `languages/${language}`];
  return wanted.filter((folder) => {
    try {
      return readdirSync(join(rulesFolder, folder)).length > 0;
    } catch {
      return false;
    }
  });
}

/** The digests of the packs and of the clinic's own documents. */
export function digestsOf(inputs: Inputs, { packs }: Rulebook): Pick<Lock, 'packs' | 'folder'> {
  const under = (...folders: string[]) =>
    digestOfFiles(new Map([...inputs].filter(([name]) => folders.some((folder) => name.startsWith(`${folder}/`)))));
  return {
    packs: packs.map(({ id, version }) => ({
      id,
      version,
      digest: id === 'base' ? under('rules/base', 'rules/schema') : under(`rules/regions/${id}`, `rules/requirements/${id}`),
    })),
    folder: under('clinic'),
  };
}

/** Inputs as one ZIP file; the same inputs give the same bytes. */
export function zipInputs(inputs: Inputs): Uint8Array {
  const sorted = [...inputs].sort(([a], [b]) => (a < b ? -1 : 1));
  // ZIP files hold local times: this one is the same everywhere.
  return zipSync(Object.fromEntries(sorted), { level: 9, mtime: new Date(1980, 0, 2) });
}

/**
 * Lays zipped inputs into a folder of their own, which goes away afterwards.
 *
 * @throws RangeError when a path leads out of it.
 */
export async function withInputs<T>(
  zip: Uint8Array,
  use: (folders: { rules: string; clinic: string }) => Promise<T>,
): Promise<T> {
  const folder = mkdtempSync(join(tmpdir(), 'rulebook-release-'));
  try {
    for (const [name, bytes] of Object.entries(unzipSync(zip))) {
      const path = resolve(folder, name);
      if (!path.startsWith(folder + sep)) throw new RangeError(`\`${name}\` leads out of the release`);
      mkdirSync(dirname(path), { recursive: true });
      writeFileSync(path, bytes);
    }
    return await use({ rules: join(folder, 'rules'), clinic: join(folder, 'clinic') });
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
