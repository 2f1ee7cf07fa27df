import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../../', import.meta.url));

/** Every code that the sources can report, in order. */
export function codesReported(): string[] {
  return codesIn(textsUnder('src', '.ts'), /'([EW]\d{3})'/g);
}

/**
 * Every code that stands in what a case expects, and those that tests of their own trigger: of the manual's gate and of wording, of
 * emitted evaluators, of searches that are given up, of cycle records, and of releases.
 */
export function codesTriggered(): string[] {
  const cases = textsUnder('tests/language', '.case').map((text) => text.slice(text.search(/^=== exit/m)));
  const gate = codesIn(textsUnder('tests/write', '.test.ts'), /\b(E6\d\d|W51[456])\b/g);
  const emitted = codesIn(textsUnder('tests/emit', '.test.ts'), /\b(E406)\b/g);
  const answers = codesIn(textsUnder('tests/check', '.test.ts'), /\b(W510)\b/g);
  const records = codesIn(textsUnder('tests/measure', '.test.ts'), /\b(E7\d\d)\b/g);
  const releases = codesIn(textsUnder('tests/change', '.test.ts'), /\b(E8\d\d|W520)\b/g);
  return [
    ...new Set([...codesIn(cases, /:\d+:\d+ ([EW]\d{3}) /g), ...gate, ...emitted, ...answers, ...records, ...releases]),
  ].sort();
}

/** The rows of the table of codes in the guide for developers: code, what it says, smallest input that triggers it. */
export function codesExplained(): { code: string; cells: string[] }[] {
  const [, section = ''] = readFileSync(join(root, 'DEVELOPERS.md'), 'utf8').split(/^#{2,3} Error codes$/m);
  const rows = (section.split(/^#{1,3} /m)[0] ?? '').split('\n').filter((line) => /^\| [EW]\d{3} /.test(line));
  return rows.map((row) => {
    const [code = '', ...cells] = row.slice(2, -2).split(' | ');
    return { code, cells };
  });
}

function codesIn(texts: readonly string[], code: RegExp): string[] {
  return [...new Set(texts.flatMap((text) => [...text.matchAll(code)].map(([, each = '']) => each)))].sort();
}

function textsUnder(folder: string, ending: string): string[] {
  const files = readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' });
  return files.filter((file) => file.endsWith(ending)).map((file) => readFileSync(join(root, folder, file), 'utf8'));
}
