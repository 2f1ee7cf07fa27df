import { readdirSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { expect, it } from 'vitest';
import { sampleClinics } from '../../src/cli/load-rulebook.js';
import { keptClinics } from '../tools/kept-clinics.js';
import { project, run, temporaryFolder } from './run.js';

const kept = join(project, 'out/harrow-mills');

it('what stands in out/ is what the sources make, byte for byte, twice', async () => {
  const printed = new Map<string, Buffer>();
  for (const folder of [temporaryFolder(), temporaryFolder()]) {
    const { code, err } = await run(['build', 'seeds/harrow-mills', '--out', folder], project);
    expect(err).toBe('');
    expect(code).toBe(0);
    const names = readdirSync(folder).sort();
    expect(names).toEqual([
      'cards-a5.pdf',
      'cards.pdf',
      'evaluator.d.mts',
      'evaluator.json',
      'evaluator.mjs',
      'evaluator.schema.json',
      'evaluator.sql',
      'forms.pdf',
      'manual.docx',
      'manual.html',
      'manual.md',
      'manual.pdf',
      'rulebook.json',
      'trace.json',
    ]);
    for (const name of names.filter((each) => /\.(docx|pdf)$/.test(each))) {
      const bytes = readFileSync(join(folder, name));
      expect(bytes.equals(printed.get(name) ?? bytes), `${name} differs from the last time`).toBe(true);
      printed.set(name, bytes);
    }
    // Word and PDF are built, not kept; what they are made from stands in `manual.md`.
    for (const name of names.filter((each) => !/\.(docx|pdf)$/.test(each)))
      expect(
        readFileSync(join(folder, name)).equals(readFileSync(join(kept, name))),
        `out/harrow-mills/${name} is stale: run \`npm run demo\``,
      ).toBe(true);
  }
});

it('a build does not depend on where it is started', async () => {
  const folder = temporaryFolder();
  expect((await run(['build', join(project, 'seeds/harrow-mills'), '--out', 'here'], folder)).code).toBe(0);
  expect((await run(['build', 'seeds/harrow-mills', '--out', join(folder, 'there')], project)).code).toBe(0);
  for (const name of ['manual.md', 'manual.html', 'rulebook.json'])
    expect(readFileSync(join(folder, 'here', name)).equals(readFileSync(join(folder, 'there', name))), name).toBe(true);
});

it.each(
  sampleClinics()
    .map((folder) => basename(folder))
    .filter((clinic) => clinic !== 'harrow-mills'),
)(
  'everything that is printed for %s is the same bytes twice',
  async (clinic) => {
    const [first, second] = [temporaryFolder(), temporaryFolder()];
    for (const folder of [first, second])
      expect(await run(['build', `seeds/${clinic}`, '--out', folder], project)).toMatchObject({ code: 0 });
    const names = readdirSync(first);
    expect(names).toEqual(readdirSync(second));
    expect(names).toEqual(
      expect.arrayContaining(['cards.pdf', 'forms.pdf', 'manual.docx', 'manual.html', 'manual.md', 'manual.pdf']),
    );
    for (const name of names) expect(readFileSync(join(first, name)).equals(readFileSync(join(second, name))), name).toBe(true);
  },
  180_000,
);

it.each(keptClinics)('the manual of %s that is kept is what the sources make', async (clinic) => {
  const folder = temporaryFolder();
  expect(await run(['build', `seeds/${clinic}`, '--formats', 'md', '--out', folder], project)).toMatchObject({
    code: 0,
    err: '',
  });
  const built = readFileSync(join(folder, 'manual.md'), 'utf8');
  const stands = readFileSync(join(project, 'out', clinic, 'manual.md'), 'utf8');
  expect(built === stands, `out/${clinic}/manual.md is stale: run \`npm run manuals\``).toBe(true);
});

it.each(sampleClinics().map((folder) => basename(folder)))('%s has no error and no warning', async (clinic) => {
  const { code, out } = await run(['check', `seeds/${clinic}`], project);
  expect(out).toContain('0 errors, 0 warnings');
  expect(code).toBe(0);
});
