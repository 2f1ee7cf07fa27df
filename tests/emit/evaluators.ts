import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DuckDBInstance } from '@duckdb/node-api';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { decide, knownFacts } from '../../src/decide/decide.js';
import { truthOf } from '../../src/decide/truth.js';
import { statable } from '../../src/emit/contract.js';
import { type Bundle, bundleToJson, rulebookToBundle } from '../../src/emit/json-logic/rulebook-to-json-logic.js';
import { runBundle } from '../../src/emit/json-logic/run.js';
import { rulebookToSql } from '../../src/emit/sql/rulebook-to-sql.js';
import { readFactValue } from '../../src/link/read-values.js';
import type { Fact, FactValue, Rulebook } from '../../src/link/rulebook.js';
import { dayNumber } from '../../src/measure/day-number.js';
import { evaluatorOf } from './load-module.js';

/** A situation as the emitted evaluators take it. */
export type Stated = Readonly<Record<string, unknown>>;

/** What they must agree on; `refused` where a value cannot be. */
export type Given = { outcome: string; possible: string[]; settled: boolean; certain: string[]; open: string[] } | 'refused';

export interface Evaluator {
  name: string;
  answer(decision: string, situations: readonly Stated[]): Promise<Given[]>;
  close(): void;
}

/** The meaning of rules: what is read as the command line reads it, answered by `decide`. */
export function reference(rulebook: Rulebook): Evaluator {
  const read = (decision: string, stated: Stated): Record<string, FactValue> | undefined => {
    const situation: Record<string, FactValue> = {};
    for (const fact of statable(rulebook, decision)) {
      const raw = stated[fact.id];
      if (raw === undefined || raw === null) continue;
      const result = readFactValue(fact, raw);
      if (!('value' in result)) return undefined;
      situation[fact.id] = result.value;
    }
    return situation;
  };
  return {
    name: 'decide',
    answer: async (decision, situations) =>
      situations.map((stated) => {
        const situation = read(decision, stated);
        if (situation === undefined) return 'refused';
        const { outcome, possible, settled } = decide(rulebook, decision, situation);
        const known = knownFacts(rulebook, situation);
        const rules = rulebook.decisions.get(decision)?.rules ?? [];
        const truths = rules.map((rule) => ({ id: rule.id, truth: truthOf(rule.when, known) }));
        const ids = (wanted: boolean | undefined) => truths.flatMap(({ id, truth }) => (truth === wanted ? [id] : []));
        return { outcome, possible, settled, certain: ids(true), open: ids(undefined) };
      }),
    close: () => {},
  };
}

/** The JSON Logic bundle as it is written to disk, run by json-logic-js, its facts checked by ajv. */
export function jsonLogic(rulebook: Rulebook): Evaluator {
  const bundle: Bundle = JSON.parse(bundleToJson(rulebookToBundle(rulebook)));
  const ajv = new Ajv2020({ allowUnionTypes: true });
  ajv.addFormat('date', (text) => dayNumber(text) !== undefined);
  return {
    name: 'JSON Logic',
    answer: async (decision, situations) => {
      const ids = statable(rulebook, decision).map(({ id }) => id);
      const check = ajv.compile({
        type: 'object',
        properties: Object.fromEntries(ids.map((id) => [id, bundle.facts[id] ?? {}])),
      });
      return situations.map((stated) => (check(stated) ? runBundle(bundle, decision, pick(stated, ids)) : 'refused'));
    },
    close: () => {},
  };
}

/** A caller states what the decision reads; whatever else it knows is ignored. */
function pick(stated: Stated, ids: readonly string[]): Stated {
  return Object.fromEntries(ids.filter((id) => Object.hasOwn(stated, id)).map((id) => [id, stated[id]]));
}

/** The views in DuckDB. Situations come in by a file of JSON lines; where one is refused, one by one. */
export async function sql(rulebook: Rulebook): Promise<Evaluator> {
  const instance = await DuckDBInstance.create(':memory:', { threads: '2' });
  const database = await instance.connect();
  await database.run(rulebookToSql(rulebook));
  const folder = mkdtempSync(join(tmpdir(), 'rulebook-sql-'));
  const name = (text: string) => `"${text.replaceAll('"', '""')}"`;
  const text = (value: string) => `'${value.replaceAll("'", "''")}'`;
  const insert = async (decision: string, situations: readonly { id: number; stated: Stated }[]): Promise<void> => {
    const facts = statable(rulebook, decision);
    const file = join(folder, 'situations.json');
    const line = ({ id, stated }: { id: number; stated: Stated }) =>
      JSON.stringify(
        Object.fromEntries([id, ...facts.map((fact) => column(stated[fact.id]))].map((value, index) => [`c${index}`, value])),
      );
    writeFileSync(file, situations.map(line).join('\n'));
    const columns = ['BIGINT', ...facts.map(typeOf)].map((type, index) => `c${index}: ${text(type)}`);
    await database.run('DELETE FROM "facts"');
    await database.run(
      `INSERT INTO "facts" (${[name('situation id'), ...facts.map(({ id }) => name(id))].join(', ')}) SELECT * FROM read_json(${text(file)}, format = 'newline_delimited', columns = {${columns.join(', ')}})`,
    );
  };
  return {
    name: 'SQL',
    answer: async (decision, situations) => {
      const numbered = situations.map((stated, id) => ({ id, stated }));
      const refused = new Set<number>();
      const known = new Set(statable(rulebook, decision).map(({ id }) => id));
      // What may be refused is tried alone, so that it does not take the others with it.
      for (const each of numbered) {
        if (!looksWrong(each.stated, rulebook.facts, known)) continue;
        try {
          await insert(decision, [each]);
        } catch {
          refused.add(each.id);
        }
      }
      await insert(
        decision,
        numbered.filter(({ id }) => !refused.has(id)),
      );
      const reader = await database.runAndReadAll(`SELECT * FROM ${name(`decide ${decision}`)} ORDER BY ${name('situation id')}`);
      const answers: Given[] = situations.map(() => 'refused');
      const list = (value: unknown) => (value === '' ? [] : String(value).split(','));
      for (const [id, outcome, possible, settled, certain, open] of reader.getRows())
        answers[Number(id)] = {
          outcome: String(outcome),
          possible: list(possible),
          settled: settled === true,
          certain: list(certain),
          open: list(open),
        };
      return answers;
    },
    close: () => {
      database.closeSync();
      instance.closeSync();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

function column(value: unknown): unknown {
  return Array.isArray(value) ? value.join(',') : (value ?? null);
}

function typeOf({ type }: Fact): string {
  if (type === 'boolean') return 'BOOLEAN';
  if (type === 'date') return 'DATE';
  return type === 'count' || type === 'quantity' ? 'DOUBLE' : 'VARCHAR';
}

/** Whether a value is not plainly of the type of its fact. It only says what to try alone: the database refuses by itself. */
function looksWrong(stated: Stated, facts: ReadonlyMap<string, Fact>, read: ReadonlySet<string>): boolean {
  return Object.entries(stated).some(([id, value]) => {
    const fact = facts.get(id);
    return (
      fact !== undefined && read.has(id) && value !== null && value !== undefined && !('value' in readFactValue(fact, value))
    );
  });
}

/** The emitted module as it is written to disk: what it answers, its quick outcome, and its trace. */
export async function esModule(rulebook: Rulebook): Promise<Evaluator> {
  const module = await evaluatorOf(rulebook);
  return {
    name: 'ES module',
    answer: async (decision, situations) =>
      situations.map((stated) => {
        try {
          const { outcome, possible, settled, reasons } = module.decide(decision, stated);
          if (module.outcomeOf(decision, stated) !== outcome) throw new Error(`another quick outcome of ${decision}`);
          const open = module.trace(decision, stated).rules.flatMap(({ rule, truth }) => (truth === null ? [rule] : []));
          const certain = reasons.flatMap(({ rule, certain: isCertain }) => (isCertain ? (rule ?? []) : []));
          return { outcome, possible: [...possible], settled, certain, open };
        } catch (error) {
          if (error instanceof module.FactError) return 'refused';
          throw error;
        }
      }),
    close: () => {},
  };
}

/** All of them, the reference first. */
export async function everyEvaluator(rulebook: Rulebook): Promise<Evaluator[]> {
  return [reference(rulebook), await esModule(rulebook), jsonLogic(rulebook), await sql(rulebook)];
}
