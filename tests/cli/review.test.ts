import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { dueItems } from '../../src/check/review.js';
import { loadClinic, loadPacks, rulebookOn } from '../../src/cli/load-rulebook.js';
import { project, run } from './run.js';

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

  it('names tasks that nobody answers for, and no others', () => {
    const packs = loadPacks(join(project, 'rules'), project, 'rules');
    const { rulebook } = rulebookOn(loadClinic(packs, join(project, 'seeds/harrow-mills'), project), '2026-12-01');
    if (rulebook === undefined) throw new Error('the sample clinic does not link');
    const ownerless = (clinic: typeof rulebook.clinic) =>
      dueItems({ ...rulebook, clinic }, '2026-12-01', { value: 1, unit: 'mo' }).filter(({ what }) => what === 'owner');
    expect(ownerless(rulebook.clinic)).toEqual([]);
    const alone = rulebook.clinic.people.map((person) => ({ ...person, roles: person.roles.filter((role) => role !== 'owner') }));
    const owned = [...rulebook.tasks.values()].filter(({ role }) => role === 'owner').map(({ id }) => id);
    expect(owned.length).toBeGreaterThan(0);
    expect(ownerless({ ...rulebook.clinic, people: alone }).map(({ about }) => about)).toEqual(owned);
    const without = ownerless({ ...rulebook.clinic, contacts: rulebook.clinic.contacts.filter(({ id }) => id !== 'service') });
    expect(without.map(({ about }) => about)).toContain('care.washer-service');
    expect(new Set(without.map(({ because }) => because))).toEqual(new Set(['there is no contact `service` to call']));
  });

  it('refuses what is no date and no time', async () => {
    expect(await review('--on', 'tomorrow')).toMatchObject({ code: 2 });
    expect(await review('--within', '3 K')).toMatchObject({ code: 2 });
  });
});
