// How long reading takes, side by side: `npm run bench:reading`. Medians of several runs, in milliseconds.
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { createDocumentCache } from '../../src/cli/document-cache.js';
import { inColumns } from '../../src/cli/in-columns.js';
import { loadFolder } from '../../src/cli/load-folder.js';
import { createReader, type DocumentCache } from '../../src/read/read-documents.js';

const project = fileURLToPath(new URL('../../', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'rulebook-bench-'));

try {
  const rows = [...reading(), ...validators(), ...commands()];
  for (const line of inColumns(rows, 80)) console.log(line);
} finally {
  rmSync(folder, { recursive: true, force: true });
}

/** All rules and one clinic, in this process. */
function reading(): string[][] {
  const files = ['rules', 'seeds/harrow-mills'].flatMap((each) => loadFolder(join(project, each), project).files);
  const schemaFolder = join(project, 'rules/schema');
  const schemas = readdirSync(schemaFolder).map((name) => JSON.parse(readFileSync(join(schemaFolder, name), 'utf8')) as object);
  const read = (cache?: DocumentCache) => createReader(schemas, cache)(files);
  const filled = createDocumentCache(folder);
  read(filled);
  filled.save();
  return compared(
    `reading ${files.length} files`,
    ['each time', () => read()],
    ['kept in the process', () => read(filled)],
    ['kept on disk', () => read(createDocumentCache(folder))],
  );
}

/** Validators of all kinds of document, ready in a new process; what the process itself takes is left out. */
function validators(): string[][] {
  const inNode = (script: string) => () => Number(execFileSync(process.execPath, ['--input-type=module', '-e', timed(script)]));
  const compile = `
    const { compileSchemas } = await import('./dist/read/validators.js');
    const schemas = readdirSync('rules/schema').map((name) => JSON.parse(readFileSync('rules/schema/' + name, 'utf8')));
    const validators = compileSchemas(schemas);
    for (const { $id } of schemas) validators($id.replace('.json', ''));`;
  return compared(
    'validators ready',
    ['compiled now', inNode(compile)],
    ['made ahead of time', inNode("await import('./dist/read/validators.gen.js');")],
  );
}

function timed(script: string): string {
  return `import { readdirSync, readFileSync } from 'node:fs'; process.chdir(${JSON.stringify(project)});
    const { pathToFileURL } = await import('node:url'); const start = performance.now();
    ${script.replaceAll("import('./", `import(pathToFileURL(${JSON.stringify(project)}) + '`)}
    console.log(performance.now() - start);`;
}

/** `decide` as it is run from a terminal. */
function commands(): string[][] {
  const run = (cache: string) => () => {
    const args = ['dist/cli/bin.js', 'decide', 'waiting', '--clinic', 'seeds/harrow-mills', 'load.wait=25min'];
    const env = { ...process.env, XDG_CACHE_HOME: folder, LOCALAPPDATA: folder, CLINIC_RULEBOOK_CACHE: cache };
    execFileSync(process.execPath, args, { cwd: project, env });
  };
  run('on')();
  return compared(
    'decide, from a terminal',
    ['without cache', run('off')],
    ['with cache', run('on')],
    ['node by itself', () => execFileSync(process.execPath, ['-e', '0'])],
  );
}

/** A row each: what, how, the median, and how many times as fast as the first. */
function compared(what: string, ...ways: [how: string, run: () => unknown][]): string[][] {
  const medians = ways.map(([, run]) => median(run));
  return ways.map(([how], index) => {
    const [first = 0, time = 0] = [medians[0], medians[index]];
    return [
      index === 0 ? what : '',
      how,
      `${time.toFixed(1)} ms`,
      index === 0 ? '' : `${(first / time).toFixed(1)} times as fast`,
    ];
  });
}

/** The median time of a call; what it returns is taken for the time when it is a number. */
function median(run: () => unknown): number {
  const times = Array.from({ length: 7 }, () => {
    const start = performance.now();
    const result = run();
    return typeof result === 'number' ? result : performance.now() - start;
  });
  return times.sort((a, b) => a - b)[3] ?? 0;
}
