// From an edit of one rule among 1,000 to the new evaluator and what it changes: `npm run bench:loop`. Medians, in milliseconds.
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { impactOf } from '../../src/analyse/impact.js';
import { inColumns } from '../../src/cli/in-columns.js';
import { loadClinic, loadPacks, rulebookOn } from '../../src/cli/load-rulebook.js';
import { rulebookToModule } from '../../src/emit/module/rulebook-to-module.js';
import { rulebookToJson } from '../../src/emit/rulebook-json.js';
import type { Rulebook } from '../../src/link/rulebook.js';
import { writeManyRules } from './many-rules.js';

const project = fileURLToPath(new URL('../../', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'rulebook-bench-'));
const rules = 1000;
const rounds = 15;

try {
  const made = writeManyRules(folder, rules);
  execFileSync('npx', ['tsc'], { cwd: project, stdio: 'inherit', shell: process.platform === 'win32' });
  for (const line of inColumns([...running(made), ...cold(made)], 80)) console.log(line);
} finally {
  rmSync(folder, { recursive: true, force: true });
}

type Made = ReturnType<typeof writeManyRules>;

/** In a process that runs already. */
function running({ rules: from, clinic, decisionFile }: Made): string[][] {
  const steps: Record<string, number[]> = { read: [], link: [], impact: [], evaluator: [], 'all of it': [] };
  let before: Rulebook | undefined;
  for (let round = 0; round < rounds; round += 1) {
    editOne(decisionFile(round % 7));
    const times = [performance.now()];
    const loaded = loadClinic(loadPacks(from, folder, 'rules'), clinic, folder);
    times.push(performance.now());
    const { rulebook } = rulebookOn(loaded, '2026-12-01');
    if (rulebook === undefined) throw new Error('the invented rules do not link');
    times.push(performance.now());
    // An edit is always seen, whether or not it changes an answer.
    const seen = before === undefined ? [] : impactOf(before, rulebook).decisions.filter((each) => each.rules.length > 0);
    times.push(performance.now());
    const { code } = rulebookToModule(rulebook);
    times.push(performance.now());
    if (round > 0 && (seen.length !== 1 || code.length === 0)) throw new Error('one decision should have been edited');
    before = rulebook;
    const spent = times.slice(1).map((time, index) => time - (times[index] ?? 0));
    Object.values(steps).forEach((list, index) => list.push(spent[index] ?? (times.at(-1) ?? 0) - (times[0] ?? 0)));
  }
  return Object.entries(steps).map(([step, list]) =>
    row(`edit one of ${rules} rules, running process: ${step}`, list.slice(3), step === 'all of it' ? 150 : undefined),
  );
}

/** On the command line, with what was read kept on disk from the run before. */
function cold({ rules: from, clinic, decisionFile }: Made): string[][] {
  const { rulebook } = rulebookOn(loadClinic(loadPacks(from, folder, 'rules'), clinic, folder), '2026-12-01');
  if (rulebook === undefined) throw new Error('the invented rules do not link');
  const built = join(folder, 'rulebook.json');
  writeFileSync(built, rulebookToJson(rulebook));
  const env = { ...process.env, XDG_CACHE_HOME: join(folder, 'cache'), LOCALAPPDATA: join(folder, 'cache') };
  const command = (args: readonly string[]) => {
    const start = performance.now();
    execFileSync(process.execPath, [join(project, 'dist/cli/bin.js'), ...args], { cwd: folder, env, stdio: 'ignore' });
    return performance.now() - start;
  };
  const impact = ['impact', clinic, '--rules', from, '--from', built];
  command(impact);
  const times = Array.from({ length: 7 }, (_, round) => {
    editOne(decisionFile(round % 7));
    return command(impact);
  });
  const bare = Array.from({ length: 7 }, () => {
    const start = performance.now();
    execFileSync(process.execPath, ['-e', '0']);
    return performance.now() - start;
  });
  return [row(`edit one of ${rules} rules, cold command line: impact`, times, 700), row('bare Node', bare)];
}

function editOne(file: string): void {
  const text = readFileSync(file, 'utf8');
  writeFileSync(
    file,
    text.replace(/at-least: (\d+) min/, (_, minutes) => `at-least: ${Number(minutes) + 1} min`),
  );
}

function row(what: string, times: readonly number[], goal?: number): string[] {
  const sorted = [...times].sort((a, b) => a - b);
  const median = sorted[Math.floor(sorted.length / 2)] ?? 0;
  return [what, `${median.toFixed(0)} ms`, goal === undefined ? '' : `goal ${goal} ms: ${median <= goal ? 'met' : 'missed'}`];
}
