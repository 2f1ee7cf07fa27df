import { describe, expect, it } from 'vitest';
import { project, run } from './run.js';

const commands = [
  'check',
  'decide',
  'analyse',
  'impact',
  'build',
  'release',
  'verify',
  'review',
  'explain',
  'list',
  'init',
  'measure',
];

describe('help', () => {
  it.each([[[]], ...commands.map((command) => [[command]])])('%j --help says what it does and exits with 0', async (args) => {
    const { code, out } = await run([...args, '--help'], project);
    expect(code).toBe(0);
    expect(out).toMatch(/^Usage: rulebook/);
  });

  it('names every command', async () => {
    const { out } = await run(['--help'], project);
    for (const command of commands) expect(out).toContain(`  ${command} `);
    expect(out).toContain('Exit codes: 0 fine, 1 findings, 2 bad use or bad input.');
  });
});

describe('what is printed', () => {
  it('has no color where it is not a terminal', async () => {
    const { out } = await run(['decide', 'waiting', '--clinic', 'seeds/harrow-mills', 'load.wait=25min'], project);
    expect(out).not.toContain('\u001b[');
  });
});
