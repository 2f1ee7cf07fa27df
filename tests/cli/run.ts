import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { onTestFinished } from 'vitest';
import { main } from '../../src/cli/main.js';

/** The folder of the project. */
export const project = fileURLToPath(new URL('../../', import.meta.url));

export interface Ran {
  code: number;
  out: string;
  err: string;
}

/** Runs the command line in this process. */
export async function run(args: readonly string[], cwd: string, input: readonly string[] = []): Promise<Ran> {
  const out: string[] = [];
  const err: string[] = [];
  const lines = {
    async *[Symbol.asyncIterator]() {
      yield* input;
    },
  };
  const code = await main(
    args,
    { cwd, out: (line) => out.push(line), err: (line) => err.push(line), progress: { step() {}, done() {} }, interactive: false },
    lines,
  );
  return { code, out: out.join('\n'), err: err.join('\n') };
}

/** An empty folder that goes away after the test. */
export function temporaryFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'rulebook-test-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** A folder that holds copies of the rules, the sample clinics and what was built. */
export function copyOfProject(): string {
  const folder = temporaryFolder();
  for (const each of ['rules', 'seeds', 'out']) cpSync(join(project, each), join(folder, each), { recursive: true });
  return folder;
}
