import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { copyOfProject, run } from './run.js';

const overrides = 'seeds/harrow-mills/overrides.yaml';

/** Sets the clinic's longest dry wait and returns what was built. */
async function buildWith(folder: string, wait: string): Promise<{ manual: string[]; rules: Record<string, unknown> }> {
  const path = join(folder, overrides);
  writeFileSync(path, readFileSync(path, 'utf8').replace(/(limit: holding\.longest-dry-wait\n\s+value:) .+/, `$1 ${wait}`));
  const { code, err } = await run(
    ['build', 'seeds/harrow-mills', '--rules', 'rules', '--out', 'built', '--formats', 'md'],
    folder,
  );
  expect(err).toBe('');
  expect(code).toBe(0);
  return {
    manual: readFileSync(join(folder, 'built/manual.md'), 'utf8').split('\n'),
    rules: JSON.parse(readFileSync(join(folder, 'built/rulebook.json'), 'utf8')) as Record<string, unknown>,
  };
}

/** The paths at which two values differ. */
function differences(a: unknown, b: unknown, path = ''): string[] {
  if (JSON.stringify(a) === JSON.stringify(b)) return [];
  if (a === null || b === null || typeof a !== 'object' || typeof b !== 'object') return [path];
  return [...new Set([...Object.keys(a), ...Object.keys(b)])].flatMap((key) =>
    differences(Reflect.get(a, key), Reflect.get(b, key), `${path}/${key}`),
  );
}

it('changing one limit changes the answer and the page that print it, and nothing else', async () => {
  const folder = copyOfProject();
  const ask = async (wait: string) => {
    const given = ['load.kept-moist=false', 'load.soil=light-soil', `load.wait=${wait}`];
    const { out } = await run(
      ['decide', 'waiting', '--clinic', 'seeds/harrow-mills', '--rules', 'rules', '--json', ...given],
      folder,
    );
    return (JSON.parse(out) as { outcome: string }).outcome;
  };
  const before = await buildWith(folder, '8 min');
  const answersBefore = await Promise.all(['5 min', '7 min', '9 min'].map(ask));
  const after = await buildWith(folder, '6 min');
  const answersAfter = await Promise.all(['5 min', '7 min', '9 min'].map(ask));

  expect(answersAfter[0]).toBe(answersBefore[0]);
  expect(answersAfter[1]).not.toBe(answersBefore[1]);
  expect(answersAfter[1]).toBe(answersAfter[2]);
  expect(answersAfter[2]).toBe(answersBefore[2]);

  for (const path of differences(before.rules, after.rules))
    expect(path).toMatch(
      /^\/(digest|limits\/holding\.longest-dry-wait\/.+|decisions\/\w+\/rules\/\d+\/when\/.+\/(value|shown)|changes\/\d+\/(change|limit\/becomes\/value))$/,
    );

  expect(after.manual.length).toBe(before.manual.length);
  const changed = before.manual.flatMap((line, index) =>
    line === after.manual[index] ? [] : [[line, after.manual[index] ?? '']],
  );
  expect(changed.length).toBeGreaterThan(2);
  const digest = /\b[0-9a-f]{12}\b/g;
  for (const [was = '', is = ''] of changed)
    expect(is.replace(digest, '').replaceAll(/\b6( ?min| minutes)/g, '8$1')).toBe(was.replace(digest, ''));
});
