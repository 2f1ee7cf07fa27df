import { readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { describe, expect, it } from 'vitest';
import { sampleClinics } from '../../src/cli/load-rulebook.js';
import { copyOfProject, project, run } from './run.js';

const shellLines = (file: string) =>
  [...readFileSync(join(project, file), 'utf8').matchAll(/```sh\n([\s\S]*?)```/g)].flatMap(([, block = '']) =>
    block
      .replaceAll(/\\\n\s*/g, '')
      .trim()
      .split('\n')
      .map((line) => line.trim()),
  );
const documents = [
  'README.md',
  'seeds/README.md',
  ...sampleClinics().map((folder) => relative(project, join(folder, 'README.md'))),
];
const scripts = (JSON.parse(readFileSync(join(project, 'package.json'), 'utf8')) as { scripts: Record<string, string> }).scripts;

/** Splits a line as a shell does, as far as the READMEs go: words, quotes, one pipe from printf. */
function wordsOf(line: string): string[] {
  return [...line.matchAll(/'([^']*)'|"([^"]*)"|([^\s'"]+(?:'[^']*'|"[^"]*")?)/g)].map(
    ([, single, double, plain]) => single ?? double ?? plain ?? '',
  );
}

describe('the READMEs', () => {
  it('name scripts that exist', () => {
    const named = documents.flatMap(shellLines).flatMap((line) => /^npm (?:run (?:--silent )?)?(\w+)/.exec(line)?.[1] ?? []);
    expect(named.length).toBeGreaterThan(5);
    for (const script of named) expect(scripts).toHaveProperty([script]);
  });

  it.each(documents)(
    '%s shows commands that run',
    async (document) => {
      const folder = copyOfProject();
      for (const line of shellLines(document).filter((each) => each.includes('npm run --silent rulebook -- '))) {
        const [before = '', command = ''] = line.split('npm run --silent rulebook -- ');
        const input = before.startsWith('printf') ? wordsOf(before.replace(/\|\s*$/, '')).slice(2) : [];
        const { code, err } = await run(wordsOf(command), folder, input);
        expect(err, line).toBe('');
        expect(code, line).toBe(0);
      }
    },
    240_000,
  );
});
