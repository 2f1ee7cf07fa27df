import { describe, expect, it } from 'vitest';
import { proveStrict } from '../../src/analyse/prove-strict.js';
import { manualOf } from '../../src/cli/load-manual.js';
import { home, loadPacks } from '../../src/cli/load-rulebook.js';
import { packsAlone, regionsOf } from '../../src/link/packs-alone.js';

const { packs } = loadPacks(`${home}rules`, home, 'rules');
const on = '2026-12-01';

/** Not every region has a sample clinic: its packs are printed by themselves, with every task and no machine. */
describe('the gate lets the packs pass', () => {
  it.each(regionsOf(packs).map((region) => [region.region, region] as const))('of %s', (_, region) => {
    const rulebook = packsAlone(packs, region, on, proveStrict).rulesOn(on);
    if (rulebook === undefined) throw new Error('the packs do not link');
    const duties = [...rulebook.tasks.keys()].map((task) => ({ task }));
    const { findings, sections } = manualOf({ ...rulebook, duties }, home);
    expect(sections.length).toBeGreaterThan(30);
    // What belongs to machines has no page without one, and nothing leads there.
    expect(findings.filter(({ code }) => code !== 'E608' && code !== 'E602')).toEqual([]);
  });
});
