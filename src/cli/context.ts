import { existsSync, statSync } from 'node:fs';
import { join, resolve } from 'node:path';
import type { Rulebook } from '../link/rulebook.js';
import { dayNumber } from '../measure/day-number.js';
import { type Finding, hasErrors } from '../read/finding.js';
import { BadUse } from './bad-use.js';
import { type Extent, home, type Loaded, type LoadedPacks, loadClinic, loadPacks, rulebookOn } from './load-rulebook.js';
import { countFindings, printFindings } from './print-findings.js';
import type { Progress } from './progress.js';

/** What every command is given: where it runs and where it writes. */
export interface Context {
  cwd: string;
  out: (line: string) => void;
  err: (line: string) => void;
  progress: Progress;
  /** Whether a person can be asked. */
  interactive: boolean;
}

export interface CommonOptions {
  rules?: string;
  on?: string;
}

/** A clinic read, linked and tailored, with what was found on the way. */
export interface Opened {
  loaded: Loaded;
  rulebook?: Rulebook;
  findings: Finding[];
  /** The date for which values were chosen; absent where neither the caller nor a clinic states one. */
  on?: string;
}

/**
 * Reads and links a clinic folder. Without a date, values are chosen for the day from which the clinic's manual holds, so
 * that answers and the printed manual agree.
 */
export function openClinic(
  context: Context,
  folder: string | undefined,
  options: CommonOptions,
  rules: LoadedPacks = openPacks(context, options),
): Opened {
  const clinicFolder = clinicFolderOf(context, folder);
  const loaded = loadClinic(rules, clinicFolder, context.cwd);
  const clinic = loaded.clinicDocuments.find(({ data }) => data.kind === 'clinic')?.data;
  const on = options.on ?? (clinic?.kind === 'clinic' ? clinic.document.effective : undefined);
  if (on === undefined) return { loaded, findings: loaded.findings };
  if (hasErrors(loaded.findings)) return { loaded, findings: loaded.findings, on };
  const { findings, ...linked } = rulebookOn(loaded, on);
  return { loaded, findings: [...loaded.findings, ...findings], on, ...linked };
}

/** @throws BadUse when there is no such folder. */
export function clinicFolderOf({ cwd }: Pick<Context, 'cwd'>, folder: string | undefined): string {
  const clinicFolder = resolve(cwd, folder ?? '.');
  if (!existsSync(clinicFolder) || !statSync(clinicFolder).isDirectory())
    throw new BadUse(`there is no folder \`${folder ?? '.'}\``, 'give the folder of a clinic');
  return clinicFolder;
}

/** The packs of the tool or of the folder asked for, without any clinic. */
export function openPacks(context: Context, options: CommonOptions, extent?: Extent): LoadedPacks {
  if (options.on !== undefined && dayNumber(options.on) === undefined)
    throw new BadUse(`\`${options.on}\` is not a date`, 'write it as YYYY-MM-DD');
  return loadPacks(rulesFolderOf(context, options), context.cwd, extent);
}

/** @throws BadUse when the folder holds no rules. */
export function rulesFolderOf(context: Context, options: CommonOptions): string {
  const rulesFolder = options.rules === undefined ? join(home, 'rules') : resolve(context.cwd, options.rules);
  if (!existsSync(join(rulesFolder, 'schema')))
    throw new BadUse(`there are no rules in \`${options.rules ?? rulesFolder}\``, 'it must hold `schema` and `base`');
  return rulesFolder;
}

/** The rulebook of a clinic folder that has no errors; otherwise prints them and returns nothing. */
export function openSoundClinic(
  context: Context,
  folder: string | undefined,
  options: CommonOptions,
  rules?: LoadedPacks,
): { rulebook: Rulebook; opened: Opened } | undefined {
  const opened = openClinic(context, folder, options, rules);
  if (opened.rulebook !== undefined && !hasErrors(opened.findings)) return { rulebook: opened.rulebook, opened };
  printFindings(opened.findings, context.err);
  context.err(countFindings(opened.findings));
  return undefined;
}
