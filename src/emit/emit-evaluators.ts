import type { Rulebook } from '../link/rulebook.js';
import type { Finding } from '../read/finding.js';
import { bundleToJson, rulebookToBundle } from './json-logic/rulebook-to-json-logic.js';
import { selfCheck } from './json-logic/self-check.js';
import { rulebookToModule } from './module/rulebook-to-module.js';
import { rulebookToJson } from './rulebook-json.js';
import { rulebookToSchema } from './schema.js';
import { rulebookToSql } from './sql/rulebook-to-sql.js';

/** The files that other tools answer from, by name, and what the check of each found. */
export function emitEvaluators(rulebook: Rulebook): { files: Map<string, string>; findings: Finding[] } {
  const bundle = rulebookToBundle(rulebook);
  const { code, types } = rulebookToModule(rulebook);
  return {
    files: new Map([
      ['rulebook.json', rulebookToJson(rulebook)],
      ['evaluator.mjs', code],
      ['evaluator.d.mts', types],
      ['evaluator.json', bundleToJson(bundle)],
      ['evaluator.sql', rulebookToSql(rulebook)],
      ['evaluator.schema.json', rulebookToSchema(rulebook)],
    ]),
    findings: selfCheck(bundle, 'evaluator.json'),
  };
}
