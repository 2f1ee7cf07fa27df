import { lstatSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { codesReported } from './codes.js';
import { readCase, writeCase } from './read-case.js';
import { runCase } from './run-case.js';

/** Rewrites the expected part of every case: look at the difference before you commit it. */
const update = process.env['UPDATE_CASES'] === '1';

describe.each([
  { folder: 'bad', atLeast: 50 },
  { folder: 'good', atLeast: 12 },
])('tests/language/$folder', ({ folder, atLeast }) => {
  const path = fileURLToPath(new URL(`./${folder}/`, import.meta.url));
  const names = readdirSync(path).sort();

  it('holds cases and nothing else', () => {
    expect(names.filter((name) => !name.endsWith('.case'))).toEqual([]);
    expect(names.length).toBeGreaterThanOrEqual(atLeast);
  });

  it.each(names)('%s', async (name) => {
    const each = readCase(readFileSync(path + name, 'utf8'));
    const missing: string[] = [];
    const printed = await runCase(each, (house) => {
      const expected = update ? undefined : each.expected;
      for (const file of findingsIn([...(expected?.out ?? []), ...(expected?.err ?? [])]).map((finding) => finding.file))
        if (lstatSync(join(house, file), { throwIfNoEntry: false }) === undefined) missing.push(file);
    });
    if (update) writeFileSync(path + name, writeCase(each, printed));
    else expect(printed).toEqual(each.expected);
    expect(missing, 'files that the case names and that do not exist').toEqual([]);
    const findings = findingsIn([...printed.out, ...printed.err]);
    expect(codesReported().filter((code) => findings.some((finding) => finding.code === code))).toEqual(
      [...new Set(findings.map(({ code }) => code))].sort(),
    );
    if (folder === 'bad') expect(printed.exit !== 0 || findings.length > 0, 'a bad case finds something').toBe(true);
    else expect(printed.exit, 'a good case ends well').toBe(0);
    expect([...printed.out, ...printed.err].join('\n')).not.toContain('<folder>');
  });
});

function findingsIn(lines: readonly string[]): { file: string; code: string }[] {
  return lines.flatMap((line) => {
    const [, file, code] = /^(\S.*?):\d+:\d+ ([EW]\d+) /.exec(line) ?? [];
    return file === undefined || code === undefined ? [] : [{ file, code }];
  });
}
