import { describe, expect, it } from 'vitest';
import { readCase, writeCase } from './read-case.js';
import { runCase } from './run-case.js';

const run = '=== run list limits -c clinic --rules rules';
const runText = (text: string) => runCase(readCase(text));

describe('a case', () => {
  it('is read in its parts', () => {
    const text = `Title\n\n=== file a/b.yaml\nx: 1\n\n  y\n\n=== link c -> d\n=== input\n{}\n${run} 'two words'\n=== exit 2\n=== err\nno\n`;
    expect(readCase(text)).toEqual({
      title: 'Title',
      layers: [
        { kind: 'file', path: 'a/b.yaml', lines: ['x: 1', '', '  y'] },
        { kind: 'link', path: 'c', target: 'd' },
      ],
      input: ['{}'],
      args: ['list', 'limits', '-c', 'clinic', '--rules', 'rules', 'two words'],
      expected: { exit: 2, out: [], err: ['no'] },
      head: text.slice(0, text.indexOf('\n=== exit')),
    });
  });

  it('is written with its head as it stands', () => {
    const text = `Title\n\n${run}\n=== exit 1\n=== out\none\n\nthree\n`;
    const each = readCase(text);
    expect(writeCase(each, { exit: 1, out: ['one', '', 'three'], err: [] })).toBe(text);
    expect(readCase(writeCase(each, { exit: 0, out: [], err: ['e'] })).expected).toEqual({ exit: 0, out: [], err: ['e'] });
  });

  it.each([
    ['without a title', `${run}\n`, 'the first line of a case is its title'],
    ['that runs nothing', 'Title\n=== file a\nx: 1\n', 'the case runs nothing: add `=== run`'],
    ['with a misspelt part', `Title\n=== flie a\n${run}\n`, 'unknown part `=== flie`'],
    ['with words before its first part', `Title\nx: 1\n${run}\n`, '`x: 1` stands before the first `===`'],
    ['with output before the exit code', `Title\n${run}\n=== out\nx\n`, '`=== out` stands before `=== exit`'],
  ])('%s is refused', (_, text, message) => {
    expect(() => readCase(text)).toThrow(message);
  });

  it.each([
    ['that edits a file which is not there', '=== edit rules/base/limit.yaml\n-x\n+y', 'ENOENT'],
    ['that removes a file which is not there', '=== remove clinic/none.yaml', 'ENOENT'],
    ['that edits a line which is not there', '=== edit clinic/clinic.yaml\n-none', '0 places of the file read `none`'],
    ['with an edit that is none', '=== edit clinic/clinic.yaml\nnone', '`none` starts with neither - nor +'],
    ['with bytes that are none', '=== bytes clinic/a.yaml\nxyz', '`xyz` is neither hexadecimal nor text in quotes'],
  ])('%s fails', async (_, layer, message) => {
    await expect(runText(`Title\n${layer}\n${run}\n`)).rejects.toThrow(message);
  });

  it('sees what is laid over the house', async () => {
    const text = `Title\n=== edit rules/regions/north/overrides.yaml\n-    value: 12 min\n+    value: 11 min\n${run}\n`;
    expect((await runText(text)).out[2]).toMatch(/^longest-wait +11 minutes/);
  });
});
