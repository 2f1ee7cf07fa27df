import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, realpathSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative, resolve, sep } from 'node:path';
import { rulebookFromJson } from '../emit/rulebook-json.js';
import type { Rulebook } from '../link/rulebook.js';
import { dayNumber } from '../measure/day-number.js';
import { BadUse } from './bad-use.js';
import { type CommonOptions, type Context, clinicFolderOf, openPacks, openSoundClinic } from './context.js';
import { home } from './load-rulebook.js';

/** One side of a comparison. */
export interface OpenedSide {
  rulebook: Rulebook;
  /** In words: `the working copy`, `a1b2c3d`. */
  name: string;
}

/**
 * Opens what a reference names: nothing, the clinic folder as it is; a date, the clinic folder on that day; a clinic folder; a folder
 * of rules; a `rulebook.json` that `build` made; or a commit, branch or tag of the git repository that the clinic folder lies in.
 * Returns nothing when it has errors, which are printed.
 */
export function openSide(
  context: Context,
  reference: string | undefined,
  folder: string,
  options: CommonOptions,
): OpenedSide | undefined {
  const clinic = (from: string, more: CommonOptions, name: string): OpenedSide | undefined => {
    const opened = openSoundClinic(context, from, more, openPacks(context, more, 'rules'));
    return opened && { rulebook: opened.rulebook, name };
  };
  if (reference === undefined) return clinic(folder, options, 'the working copy');
  if (dayNumber(reference) !== undefined) return clinic(folder, { ...options, on: reference }, `the rules of ${reference}`);
  const path = resolve(context.cwd, reference);
  if (existsSync(path) && statSync(path).isFile()) return { rulebook: readBuilt(path, reference), name: reference };
  if (existsSync(join(path, 'schema'))) return clinic(folder, { ...options, rules: path }, `the rules in ${reference}`);
  if (existsSync(path) && statSync(path).isDirectory()) return clinic(reference, options, reference);
  return fromGit(context, reference, folder, options, clinic);
}

/** @throws BadUse when the file holds no rulebook, or was changed since. */
export function readBuilt(path: string, name: string): Rulebook {
  try {
    return rulebookFromJson(readFileSync(path, 'utf8'));
  } catch (error) {
    throw new BadUse(
      `cannot read a rulebook from \`${name}\`: ${error instanceof Error ? error.message : String(error)}`,
      'give the `rulebook.json` that `rulebook build` made',
    );
  }
}

/** Puts the clinic folder, and the rules where they lie in the same repository, as they were into a folder of their own. */
function fromGit(
  context: Context,
  reference: string,
  folder: string,
  options: CommonOptions,
  open: (folder: string, options: CommonOptions, name: string) => OpenedSide | undefined,
): OpenedSide | undefined {
  const clinicFolder = realpathSync(clinicFolderOf(context, folder));
  const git = (args: readonly string[], index?: string): string =>
    execFileSync('git', ['-C', clinicFolder, ...args], {
      encoding: 'utf8',
      stdio: ['ignore', 'pipe', 'pipe'],
      env: { ...process.env, ...(index !== undefined && { GIT_INDEX_FILE: index }) },
    }).trim();
  const [top, commit] = namedByGit(git, reference);
  const rules = realpathSync(options.rules === undefined ? join(home, 'rules') : resolve(context.cwd, options.rules));
  const inside = (path: string) => path === top || path.startsWith(top + sep);
  const target = mkdtempSync(join(tmpdir(), 'rulebook-'));
  try {
    const index = join(target, 'index');
    git(['read-tree', commit], index);
    git(['-C', top, 'checkout-index', '--all', '--quiet', `--prefix=${join(target, 'tree')}/`], index);
    const then = (path: string) => join(target, 'tree', relative(top, path));
    if (!existsSync(then(clinicFolder)))
      throw new BadUse(`there was no folder \`${relative(top, clinicFolder)}\` at \`${reference}\``, 'name a later commit');
    const withRules = inside(rules) && existsSync(join(then(rules), 'schema')) ? { rules: then(rules) } : {};
    return open(then(clinicFolder), { ...options, ...withRules }, `${reference} (${commit.slice(0, 7)})`);
  } finally {
    rmSync(target, { recursive: true, force: true });
  }
}

function namedByGit(git: (args: readonly string[]) => string, reference: string): [top: string, commit: string] {
  const help = 'give a commit, a date, a clinic folder, a folder of rules or a rulebook.json';
  let top: string;
  try {
    top = realpathSync(git(['rev-parse', '--show-toplevel']));
  } catch {
    throw new BadUse(`\`${reference}\` is no file, folder or date, and the clinic folder is in no git repository`, help);
  }
  try {
    return [top, git(['rev-parse', '--verify', '--quiet', '--end-of-options', `${reference}^{commit}`])];
  } catch {
    throw new BadUse(`\`${reference}\` is no file, folder, date, or commit of the repository`, help);
  }
}
