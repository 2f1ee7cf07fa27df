import { fileURLToPath } from 'node:url';
import { openClinic } from '../../src/cli/context.js';
import type { Rulebook } from '../../src/link/rulebook.js';

const cwd = fileURLToPath(new URL('../../', import.meta.url));

/** The rulebook of a sample clinic under `seeds/`. */
export function sampleRulebook(clinic: string): Rulebook {
  const nowhere = { cwd, out: () => {}, err: () => {}, progress: { step() {}, done() {} }, interactive: false };
  const { rulebook } = openClinic(nowhere, `seeds/${clinic}`, {});
  if (rulebook === undefined) throw new Error(`the sample clinic ${clinic} has errors`);
  return rulebook;
}
