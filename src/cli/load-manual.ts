import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import type { Rulebook } from '../link/rulebook.js';
import type { Finding } from '../read/finding.js';
import { printedIn } from '../write/tree/printed-in.js';
import { writeManual } from '../write/write-manual.js';
import type { Writing } from '../write/writing.js';
import { home } from './load-rulebook.js';
import { toolVersion } from './tool-version.js';

/** Writes a clinic's manual with the templates of the tool. `base` is the folder that files are named from in findings. */
export function manualOf(rulebook: Rulebook, base = '.'): Writing & { findings: Finding[] } {
  return writeManual({ rulebook, templates: loadTemplates(), tool: toolVersion, textOf: textsFrom(base) });
}

/** Reads the files that findings name, from the folder that they are named from. */
export function textsFrom(base: string): (file: string) => string | undefined {
  return (file) => (existsSync(join(base, file)) ? readFileSync(join(base, file), 'utf8') : undefined);
}

/** The sections in which the manual prints or names an id: `7.2 Loading the washer`. */
export function sectionsPrinting(rulebook: Rulebook, id: string): string[] {
  const manual = manualOf(rulebook);
  const found = [...printedIn(manual)]
    .filter(([key]) => key.slice(key.indexOf(':') + 1) === id)
    .flatMap(([, sections]) => sections);
  return [...new Set(found)].map(({ number, title }) => [number, title].filter(Boolean).join(' '));
}

/** The templates of the tool by name, such as `manual/procedure`. */
export function loadTemplates(folder = join(home, 'templates'), prefix = ''): Map<string, string> {
  const templates = new Map<string, string>();
  for (const name of readdirSync(join(folder, prefix)).sort()) {
    const path = prefix === '' ? name : `${prefix}/${name}`;
    if (statSync(join(folder, path)).isDirectory())
      for (const [key, text] of loadTemplates(folder, path)) templates.set(key, text);
    else if (name.endsWith('.hbs')) templates.set(path.replace(/\.hbs$/, ''), readFileSync(join(folder, path), 'utf8'));
  }
  return templates;
}
