import { cpSync, mkdirSync, mkdtempSync, readFileSync, realpathSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Case, Layer, Outcome } from './read-case.js';

// Before anything loads the terminal colors.
process.env['NO_COLOR'] = '1';
const { main } = await import('../../src/cli/main.js');

const house = fileURLToPath(new URL('./house/', import.meta.url));
const schema = fileURLToPath(new URL('../../rules/schema/', import.meta.url));

/**
 * Runs a case in a copy of the tiny house, in a folder of its own. `look` sees that folder before it is taken away.
 *
 * @throws Error when the case names a file that the house does not have.
 */
export async function runCase(each: Pick<Case, 'layers' | 'args' | 'input'>, look?: (folder: string) => void): Promise<Outcome> {
  const folder = realpathSync(mkdtempSync(join(tmpdir(), 'rulebook-case-')));
  try {
    for (const part of ['rules', 'clinic']) cpSync(join(house, part), join(folder, part), { recursive: true });
    symlinkSync(schema, join(folder, 'rules', 'schema'));
    for (const layer of each.layers) lay(folder, layer);
    const [out, err]: [string[], string[]] = [[], []];
    const write = (lines: string[]) => (text: string) => lines.push(...plain(text, folder).split('\n'));
    const progress = { step: () => {}, done: () => {} };
    const context = { cwd: folder, out: write(out), err: write(err), progress, interactive: false };
    const exit = await main(each.args, context, linesOf(each.input));
    look?.(folder);
    return { exit, out, err };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function lay(folder: string, layer: Layer): void {
  const path = join(folder, layer.path);
  switch (layer.kind) {
    case 'remove':
      rmSync(path, { recursive: true });
      return;
    case 'edit':
      writeFileSync(path, edited(readFileSync(path, 'utf8'), layer.lines));
      return;
  }
  mkdirSync(dirname(path), { recursive: true });
  if (layer.kind === 'link') symlinkSync(layer.target, path);
  else if (layer.kind === 'bytes') writeFileSync(path, bytesOf(layer.lines));
  else writeFileSync(path, `${layer.lines.join('\n')}\n`);
}

/** Replaces each run of `-` lines, which must stand in the text exactly once, by the `+` lines that follow it. */
function edited(text: string, lines: readonly string[]): string {
  const changes: { old: string[]; next: string[] }[] = [];
  for (const line of lines) {
    const [sign, rest] = [line.slice(0, 1), line.slice(1)];
    if (sign !== '-' && sign !== '+') throw new Error(`\`${line}\` starts with neither - nor +`);
    if (sign === '-' && (changes.at(-1)?.next.length ?? 1) > 0) changes.push({ old: [], next: [] });
    const change = changes.at(-1);
    if (change === undefined) throw new Error('an edit starts with a `-` line');
    (sign === '-' ? change.old : change.next).push(rest);
  }
  return changes.reduce((sofar, { old, next }) => {
    const parts = `\n${sofar}`.split(`\n${old.join('\n')}\n`);
    if (parts.length !== 2) throw new Error(`${parts.length - 1} places of the file read \`${old.join('\n')}\``);
    return parts.join(next.length === 0 ? '\n' : `\n${next.join('\n')}\n`).slice(1);
  }, text);
}

function bytesOf(lines: readonly string[]): Buffer {
  return Buffer.concat(
    lines.map((line) => {
      const [, quoted, hex, times] = /^(?:("(?:[^"\\]|\\.)*")|([\da-f ]+?))(?: \* (\d+))?$/.exec(line) ?? [];
      if (quoted === undefined && hex === undefined) throw new Error(`\`${line}\` is neither hexadecimal nor text in quotes`);
      const once =
        quoted === undefined ? Buffer.from((hex ?? '').replaceAll(' ', ''), 'hex') : Buffer.from(String(JSON.parse(quoted)));
      return Buffer.concat(Array.from({ length: Number(times ?? 1) }, () => once));
    }),
  );
}

/**
 * What was printed, without what differs from machine to machine, and without what the templates of the manual decide:
 * the digest of a rulebook, the sections in which something is printed, and how many texts are translated.
 */
function plain(text: string, folder: string): string {
  return text
    .replaceAll(folder, '<folder>')
    .replace(/\b[\da-f]{64}\b/g, '<digest>')
    .replace(/\b[\d,]+ of [\d,]+ texts\b/g, '<some> of <all> texts')
    .replace(/^( {2}printed {3}).*/gm, '$1<sections>');
}

async function* linesOf(lines: readonly string[]): AsyncGenerator<string> {
  yield* lines;
}
