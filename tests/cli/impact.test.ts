import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { copyOfProject, run } from './run.js';

/** A copy of the project under git, with one commit. */
function repository(): { folder: string; git: (...args: string[]) => string } {
  const folder = copyOfProject();
  const git = (...args: string[]) =>
    execFileSync('git', ['-c', 'user.name=Test', '-c', 'user.email=test@example.org', ...args], {
      cwd: folder,
      encoding: 'utf8',
    });
  git('init', '--quiet');
  git('add', '.');
  git('commit', '--quiet', '--message', 'First');
  return { folder, git };
}

function edit(folder: string, file: string, old: string, next: string): void {
  const path = join(folder, file);
  const text = readFileSync(path, 'utf8');
  expect(text).toContain(old);
  writeFileSync(path, text.replace(old, next));
}

it('compares a commit with the working copy, in the clinic and in the rules, and touches neither', async () => {
  const { folder, git } = repository();
  edit(folder, 'seeds/harrow-mills/overrides.yaml', 'value: 8 min', 'value: 6 min');
  edit(
    folder,
    'rules/base/release-and-storage/decision-spore-test-result.yaml',
    'when: { spore.reading: spores-no-growth, spore.cycle-good: false }',
    'when: { not: { any: [{ spore.reading: { none-of: [spores-no-growth] } }, { spore.cycle-good: true }] } }',
  );
  const before = git('status', '--porcelain');
  const { code, out, err } = await run(['impact', 'seeds/harrow-mills', '--rules', 'rules', '--json'], folder);
  expect(err).toBe('');
  expect(code).toBe(0);
  expect(git('status', '--porcelain')).toBe(before);
  const { from, to, decisions } = JSON.parse(out);
  expect(from.name).toMatch(/^HEAD \([0-9a-f]{7}\)$/);
  expect(to.name).toBe('the working copy');
  const of = (verdict: string) => decisions.filter((each: { verdict: string }) => each.verdict === verdict);
  expect(of('changed').map(({ decision }: { decision: string }) => decision)).toEqual(['waiting']);
  const [waiting] = of('changed');
  expect(waiting.limits).toEqual([{ limit: 'holding.longest-dry-wait', before: '8 minutes', after: '6 minutes' }]);
  const wheres = waiting.changes.flatMap(({ regions }: { regions: { where: { fact: string; is: string }[] }[] }) =>
    regions.map(({ where }) => where.find(({ fact }) => fact === 'load.wait')?.is),
  );
  expect(wheres).toEqual(['more than 6 minutes and up to 8 minutes']);
  // The rewritten condition changes nothing, and that is said of its decision.
  const spores = of('same').find(({ decision }: { decision: string }) => decision === 'spore-test-result');
  expect(spores.rules).toEqual([{ rule: 'spore-test-result/negative-in-a-bad-cycle', what: 'condition' }]);
}, 60_000);

it('says that the folder was not there yet', async () => {
  const { folder, git } = repository();
  git('mv', 'seeds/piedra-alta', 'seeds/somewhere-else');
  const { code, err } = await run(['impact', 'seeds/somewhere-else', '--rules', 'rules'], folder);
  expect(code).toBe(2);
  expect(err).toContain('there was no folder `seeds/somewhere-else` at `HEAD`');
}, 60_000);

it('compares a built rulebook with the folder it came from', async () => {
  const { folder } = repository();
  const { code, out } = await run(
    ['impact', 'seeds/harrow-mills', '--rules', 'rules', '--from', 'out/harrow-mills/rulebook.json'],
    folder,
  );
  expect([code, out.split('\n').at(-1)]).toEqual([0, expect.stringContaining('no answer changes, in no situation of')]);
}, 60_000);
