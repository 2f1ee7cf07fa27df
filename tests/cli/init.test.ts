import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { run, temporaryFolder } from './run.js';

it('makes a clinic that checks and builds, keeps comments, and takes the name', async () => {
  const folder = temporaryFolder();
  const made = await run(
    ['init', 'my-clinic', '--from', 'harrow-mills', '--name', 'Sea & "Sky" Dental', '--phone', '555-0100'],
    folder,
  );
  expect(made.code).toBe(0);
  const text = readFileSync(join(folder, 'my-clinic/clinic.yaml'), 'utf8');
  expect(text).toContain('# ');
  expect(text).toContain('id: my-clinic');
  expect((await run(['check', 'my-clinic'], folder)).code).toBe(0);
  expect((await run(['build', 'my-clinic'], folder)).code).toBe(0);
  const manual = readFileSync(join(folder, 'my-clinic/out/manual.html'), 'utf8');
  expect(manual).toContain('Sea &#x26; "Sky" Dental');
  expect(manual).not.toContain('Harrow Mills Dental');
});

it('overwrites nothing', async () => {
  const folder = temporaryFolder();
  mkdirSync(join(folder, 'taken'));
  writeFileSync(join(folder, 'taken/notes.txt'), 'mine');
  const { code, err } = await run(['init', 'taken'], folder);
  expect(code).toBe(2);
  expect(err).toContain('the folder `taken` is not empty');
  expect(readdirSync(join(folder, 'taken'))).toEqual(['notes.txt']);
});

it('names the nearest sample', async () => {
  const folder = temporaryFolder();
  const { code, err } = await run(['init', 'new', '--from', 'harow-mills'], folder);
  expect(code).toBe(2);
  expect(err).toContain('did you mean `harrow-mills`?');
  expect(existsSync(join(folder, 'new'))).toBe(false);
});
