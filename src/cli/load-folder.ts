import { lstatSync, readdirSync, readFileSync, realpathSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import type { Finding } from '../read/finding.js';
import { largestFile } from '../read/parse-yaml.js';
import type { SourceFile } from '../read/read-documents.js';

/** Most files that are read from one folder. */
const mostFiles = 2000;

/**
 * Reads the YAML files of a folder, sorted by path. Links that lead outside the folder are refused, and hidden files,
 * `node_modules` and `out` are passed over. Files are named relative to `base` in findings.
 */
export function loadFolder(folder: string, base: string): { files: SourceFile[]; findings: Finding[] } {
  const root = realpathSync(folder);
  const files: SourceFile[] = [];
  const findings: Finding[] = [];
  const refuse = (path: string, message: string, help: string) => {
    findings.push({ code: 'E111', message, place: { file: shown(path, base), line: 1, column: 1 }, help });
  };
  const walk = (path: string): void => {
    for (const name of readdirSync(path).sort()) {
      if (name.startsWith('.') || name === 'node_modules' || name === 'out') continue;
      const each = join(path, name);
      if (lstatSync(each).isSymbolicLink() && !isInside(safeRealPath(each), root)) {
        refuse(each, 'this link leads outside the folder', 'copy the file into the folder');
        continue;
      }
      const stat = lstatSync(safeRealPath(each) ?? each);
      if (stat.isDirectory()) walk(each);
      else if (/\.ya?ml$/.test(name)) {
        if (files.length === mostFiles)
          refuse(folder, `the folder holds more than ${mostFiles} YAML files`, 'is it the right folder?');
        else
          files.push({
            file: shown(each, base),
            bytes: stat.size > largestFile ? new Uint8Array(stat.size) : readFileSync(each),
          });
      }
    }
  };
  walk(root);
  return { files, findings };
}

function safeRealPath(path: string): string | undefined {
  try {
    return realpathSync(path);
  } catch {
    return undefined;
  }
}

function isInside(path: string | undefined, root: string): boolean {
  return path !== undefined && (path === root || path.startsWith(root + sep));
}

function shown(path: string, base: string): string {
  return relative(base, path).split(sep).join('/') || '.';
}
