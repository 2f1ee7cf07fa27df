import { execFileSync } from 'node:child_process';
import { chmodSync, mkdirSync, mkdtempSync, realpathSync, rmSync, symlinkSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { loadFolder } from '../../src/cli/load-folder.js';

let base = '';
const clinic = () => join(base, 'clinic');

beforeEach(() => {
  base = realpathSync(mkdtempSync(join(tmpdir(), 'rulebook-folder-')));
  mkdirSync(clinic());
  writeFileSync(join(clinic(), 'clinic.yaml'), 'kind: clinic\n');
});
afterEach(() => rmSync(base, { recursive: true, force: true }));

function load(): string[] {
  const { files, findings } = loadFolder(clinic(), base);
  return [...files.map(({ file }) => file), ...findings.map(({ place, code, message }) => `${place.file} ${code} ${message}`)];
}

/** Root may read everything, so nothing can be closed to it. */
const asRoot = process.getuid?.() === 0;

describe('a folder', () => {
  it('gives its YAML files sorted by path, named from where one stands', () => {
    mkdirSync(join(clinic(), 'equipment'));
    writeFileSync(join(clinic(), 'equipment', 'washer.yml'), '');
    writeFileSync(join(clinic(), 'notes.md'), '');
    expect(load()).toEqual(['clinic/clinic.yaml', 'clinic/equipment/washer.yml']);
  });

  it('is named as it was given, even when it is a link itself', () => {
    symlinkSync('clinic', join(base, 'mine'));
    expect(loadFolder(join(base, 'mine'), base).files.map(({ file }) => file)).toEqual(['mine/clinic.yaml']);
  });

  it('reads a link to a file of its own', () => {
    symlinkSync('clinic.yaml', join(clinic(), 'same.yaml'));
    expect(load()).toEqual(['clinic/clinic.yaml', 'clinic/same.yaml']);
  });

  it('does not wait for a pipe', () => {
    execFileSync('mkfifo', [join(clinic(), 'pipe.yaml')]);
    expect(load()).toEqual(['clinic/clinic.yaml', 'clinic/pipe.yaml E111 this is no plain file']);
  });

  it('does not make room for a file of a terabyte', () => {
    writeFileSync(join(clinic(), 'huge.yaml'), '');
    truncateSync(join(clinic(), 'huge.yaml'), 2 ** 40);
    expect(load()).toEqual([
      'clinic/clinic.yaml',
      'clinic/huge.yaml E101 the file has 1099511627776 bytes, more than the 500000 that are read',
    ]);
  });

  it('says once when it holds more files than any clinic has', () => {
    for (let number = 0; number < 2005; number += 1) writeFileSync(join(clinic(), `${number}.yaml`), '');
    expect(load().filter((line) => line.includes('E111'))).toEqual(['clinic E111 the folder holds more than 2000 YAML files']);
  });

  it('shows names with control characters on one line', () => {
    writeFileSync(join(clinic(), 'a\u001b[2Jb\n.yaml'), '');
    expect(load()).toContain('clinic/a\u{fffd}[2Jb\u{fffd}.yaml');
  });

  // Skipped for root, who may read everything.
  it.skipIf(asRoot)('says what it may not read', () => {
    mkdirSync(join(clinic(), 'closed'));
    chmodSync(join(clinic(), 'closed'), 0);
    chmodSync(join(clinic(), 'clinic.yaml'), 0);
    expect(load()).toEqual([
      'clinic/clinic.yaml E111 the file cannot be read: permission denied',
      'clinic/closed E111 the folder cannot be read: permission denied',
    ]);
    chmodSync(join(clinic(), 'closed'), 0o700);
  });
});
