import { join } from 'node:path';
import { home, loadClinic, loadPacks, rulebookOn } from '../../src/cli/load-rulebook.js';
import type { Rulebook } from '../../src/link/rulebook.js';

const packs = loadPacks(join(home, 'rules'), home, 'rules');

/** The rulebook of a sample clinic. */
export function sampleRulebook(name: string): Rulebook {
  const { rulebook } = rulebookOn(loadClinic(packs, join(home, 'seeds', name), home), '2026-12-01');
  if (rulebook === undefined) throw new Error(`${name} has errors`);
  return rulebook;
}
