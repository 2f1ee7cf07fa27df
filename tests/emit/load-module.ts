import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Answer } from '../../src/decide/answer.js';
import { rulebookToModule } from '../../src/emit/module/rulebook-to-module.js';
import type { Rulebook } from '../../src/link/rulebook.js';

/** What an emitted module exports, as the tests use it. */
export interface Evaluator {
  rulebook: Record<string, string>;
  decisions: readonly { id: string; kind: string; question: string; outcomes: readonly string[]; reads: readonly string[] }[];
  decide(decision: string, facts: object): Answer & { toJSON(): Answer };
  outcomeOf(decision: string, facts: object): string;
  decideAll(facts: object): Record<string, { outcome: string; settled: boolean; rules: string[]; open: string[] }>;
  trace(
    decision: string,
    facts: object,
  ): { rules: { rule: string; truth: boolean | null; conditions: { fact: string; value: unknown; truth: boolean | null }[] }[] };
  decideMany(decision: string, columns: object, count: number): Many;
  decideAllMany(columns: object, count: number): Record<string, Many>;
  describeFact(fact: string): { id: string; type: string; members?: string[] };
  FactError: new (fact: string, expected: string) => Error & { fact: string; expected: string };
}

export interface Many {
  names: readonly string[];
  rules: readonly string[];
  words: number;
  outcomes: Uint8Array;
  settled: Uint8Array;
  fired: Uint32Array;
}

const folder = mkdtempSync(join(tmpdir(), 'evaluator-'));
let count = 0;

/** Writes the module of a rulebook to a file of its own and imports it. */
export async function evaluatorOf(rulebook: Rulebook): Promise<Evaluator> {
  count += 1;
  const file = join(folder, `evaluator-${count}.mjs`);
  writeFileSync(file, rulebookToModule(rulebook).code);
  return (await import(/* @vite-ignore */ pathToFileURL(file).href)) as Evaluator;
}
