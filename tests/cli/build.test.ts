import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { writeFiles } from '../../src/cli/write-files.js';
import { copyOfProject, run, temporaryFolder } from './run.js';

describe('a refused build', () => {
  it('leaves what was built before as it was', async () => {
    const folder = copyOfProject();
    const before = readFileSync(join(folder, 'out/harrow-mills/manual.md'));
    const overrides = join(folder, 'seeds/harrow-mills/overrides.yaml');
    writeFileSync(overrides, readFileSync(overrides, 'utf8').replace('value: 8 min', 'value: 15 min'));
    const { code, err } = await run(['build', 'seeds/harrow-mills', '--rules', 'rules', '--out', 'out/harrow-mills'], folder);
    expect(code).toBe(1);
    expect(err).toContain(
      'seeds/harrow-mills/overrides.yaml:6:12 E314 changing `holding.longest-dry-wait` from 10 minutes to 15 minutes is less strict',
    );
    expect(readFileSync(join(folder, 'out/harrow-mills/manual.md')).equals(before)).toBe(true);
    expect(readdirSync(join(folder, 'out/harrow-mills')).filter((name) => name.endsWith('.part'))).toEqual([]);
  });
});

describe('writing files', () => {
  it('leaves all as it was when one of them cannot be written', () => {
    const folder = temporaryFolder();
    writeFileSync(join(folder, 'a.txt'), 'old');
    mkdirSync(join(folder, 'b.txt.part'));
    const files = new Map([
      ['a.txt', 'new'],
      ['b.txt', 'new'],
    ]);
    expect(() => writeFiles(folder, files)).toThrow();
    expect(readFileSync(join(folder, 'a.txt'), 'utf8')).toBe('old');
    expect(existsSync(join(folder, 'a.txt.part'))).toBe(false);
  });
});
