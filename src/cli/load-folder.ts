import { lstatSync, readdirSync, readFileSync, realpathSync, type Stats, statSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import type { Finding } from '../read/finding.js';
import { largestFile, tooLarge } from '../read/parse-yaml.js';
import type { SourceFile } from '../read/read-documents.js';

/** Most YAML files that are read from one folder. */
const mostFiles = 2000;
/** Most files and folders of any kind that are looked at, so that a wrong folder is noticed before the whole disk is read. */
const mostEntries = 20_000;

/**
 * Reads the YAML files of a folder, sorted by path. Links that lead outside the folder, links to folders and what is no
 * plain file are refused; hidden files, `node_modules` and `out` are passed over. Files are named relative to `base` in
 * findings.
 */
export function loadFolder(folder: string, base: string): { files: SourceFile[]; findings: Finding[] } {
  const root = realpathSync(folder);
  const files: SourceFile[] = [];
  const findings: Finding[] = [];
  const shown = (path: string) => printable(relative(base, join(folder, relative(root, path))) || '.');
  const refuse = (path: string, message: string, help: string): void => {
    findings.push({ code: 'E111', message, place: { file: shown(path), line: 1, column: 1 }, help });
  };
  let entries = 0;
  const isTooMany = (): boolean => {
    if (files.length < mostFiles && entries < mostEntries) return false;
    const what = files.length < mostFiles ? `${mostEntries} files and folders` : `${mostFiles} YAML files`;
    refuse(root, `the folder holds more than ${what}`, 'is it the right folder?');
    return true;
  };
  /** Returns false when there is too much to go on. */
  const walk = (path: string): boolean => {
    const names = tried(() => readdirSync(path).sort());
    if (typeof names === 'string') refuse(path, `the folder cannot be read: ${names}`, 'let this user read it');
    else
      for (const name of names) {
        if (name.startsWith('.') || name === 'node_modules' || name === 'out') continue;
        entries += 1;
        if (isTooMany() || !take(join(path, name))) return false;
      }
    return true;
  };
  const take = (path: string): boolean => {
    const isYaml = /\.ya?ml$/.test(path);
    const link = lstatSync(path).isSymbolicLink();
    const real = link ? tried(() => realpathSync(path)) : path;
    const stat = tried(() => statSync(path));
    if (link && (typeof stat === 'string' || !(real === root || real.startsWith(root + sep)))) {
      const message = typeof stat === 'string' ? 'this link leads nowhere' : 'this link leads outside the folder';
      refuse(path, message, 'copy the file into the folder, or take the link out');
    } else if (typeof stat === 'string') refuse(path, `the file cannot be read: ${stat}`, 'let this user read it');
    else if (link && stat.isDirectory()) refuse(path, 'this link leads to a folder', 'take the link out');
    else if (stat.isDirectory()) return walk(path);
    else if (isYaml) takeFile(path, stat);
    return true;
  };
  const takeFile = (path: string, stat: Stats): void => {
    const bytes = stat.isFile() && stat.size <= largestFile ? tried(() => readFileSync(path)) : undefined;
    if (!stat.isFile()) refuse(path, 'this is no plain file', 'take it out');
    else if (bytes === undefined) findings.push(tooLarge(shown(path), stat.size));
    else if (typeof bytes === 'string') refuse(path, `the file cannot be read: ${bytes}`, 'let this user read it');
    else files.push({ file: shown(path), bytes });
  };
  walk(root);
  return { files, findings };
}

/** What a call gives, or in words why it could not. */
function tried<T>(call: () => T): T | string {
  try {
    return call();
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : '';
    return { EACCES: 'permission denied', EPERM: 'permission denied', ENOENT: 'it is not there' }[code] ?? (code || 'it failed');
  }
}

/** A path with slashes, fit for a line of a terminal. */
function printable(path: string): string {
  return path
    .split(sep)
    .join('/')
    .replace(/\p{Cc}/gu, '\u{fffd}');
}
