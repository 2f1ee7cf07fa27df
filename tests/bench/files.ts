import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { median } from './measure.js';

const here = fileURLToPath(new URL('./', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'evaluators-'));

/** Installs the engines beside which the module is measured, when they are not there. */
export function installRivals(): void {
  if (existsSync(join(here, 'node_modules/.package-lock.json'))) return;
  console.log('Installing the engines to measure beside (once) …');
  execFileSync('npm', ['install', '--no-save', '--ignore-scripts', '--no-audit', '--no-fund', '--loglevel=error'], {
    cwd: here,
    stdio: 'inherit',
    shell: process.platform === 'win32',
  });
}

/** Writes a module and gives its path. */
export function writeModule(name: string, code: string): string {
  const path = join(folder, `${name}.mjs`);
  writeFileSync(path, code);
  return path;
}

/** Writes a module and imports it. */
export async function load<T>(name: string, code: string): Promise<T> {
  return (await import(pathToFileURL(writeModule(name, code)).href)) as T;
}

/** Milliseconds from the start of a Node process to its end, by script: medians of runs in turns. */
export function startsOf(scripts: readonly string[], runs: number): number[] {
  const times = scripts.map(() => [] as number[]);
  for (let run = -2; run < runs; run += 1)
    scripts.forEach((script, index) => {
      const before = process.hrtime.bigint();
      execFileSync(process.execPath, [script], { stdio: 'ignore' });
      if (run >= 0) times[index]?.push(Number(process.hrtime.bigint() - before) / 1e6);
    });
  return times.map(median);
}
