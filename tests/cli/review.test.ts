import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { copyOfProject, project, run } from './run.js';

const review = (...args: string[]) => run(['review', 'seeds/harrow-mills', ...args], project);

describe('review', () => {
  it('lists what falls due within the time asked for, and nothing later', async () => {
    const near = await review('--on', '2026-12-01', '--within', '3 mo', '--json');
    const items = (JSON.parse(near.out) as { items: { what: string; about: string; by?: string; state: string }[] }).items;
    expect(near.code).toBe(0);
    expect(items.filter(({ what }) => what === 'manual')).toEqual([]);
    expect(items.filter(({ what }) => what === 'citation').length).toBeGreaterThan(3);
    const year = await review('--on', '2026-12-01', '--within', '13 mo', '--json');
    expect((JSON.parse(year.out) as { items: unknown[] }).items).toContainEqual(
      expect.objectContaining({ what: 'manual', about: 'HMD-IR-01', by: '2027-12-01', state: 'due' }),
    );
  });

  it('says what is overdue, and exits with 1', async () => {
    const { code, out } = await review('--on', '2028-01-02');
    expect(code).toBe(1);
    expect(out).toMatch(/overdue {2}2027-12-01 {2}HMD-IR-01/);
    expect(out).toMatch(/\d+ items, [1-9]\d* overdue$/);
  });

  it('names tasks whose role nobody holds', async () => {
    const folder = copyOfProject();
    const rules = join(folder, 'rules/base/care/tasks-clinic.yaml');
    const text = readFileSync(rules, 'utf8');
    expect(text).toContain('role: reprocessing');
    writeFileSync(rules, text.replace('role: reprocessing', 'role: service-engineer'));
    const { out } = await run(['review', 'seeds/harrow-mills', '--rules', 'rules', '--on', '2026-12-01', '--json'], folder);
    const { items } = JSON.parse(out) as { items: { what: string; because: string }[] };
    expect(items).toContainEqual(
      expect.objectContaining({ what: 'owner', because: 'nobody holds the role `service-engineer`', state: 'open' }),
    );
  });

  it('refuses what is no date and no time', async () => {
    expect(await review('--on', 'tomorrow')).toMatchObject({ code: 2 });
    expect(await review('--within', '3 K')).toMatchObject({ code: 2 });
  });
});
