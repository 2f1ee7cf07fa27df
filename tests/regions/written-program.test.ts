import { describe, expect, it } from 'vitest';
import { answersHere, checkRequirements } from '../../src/check/check-requirements.js';
import { manualOf } from '../../src/cli/load-manual.js';
import { home, loadClinic, loadPacks, rulebookOn } from '../../src/cli/load-rulebook.js';
import type { Rulebook } from '../../src/link/rulebook.js';
import { walk } from '../../src/write/tree/walk.js';

const rules = loadPacks(`${home}rules`, home);

function rulebookOf(clinic: string): Rulebook {
  const { rulebook, findings } = rulebookOn(loadClinic(rules, `${home}seeds/${clinic}`, home), '2026-12-01');
  if (rulebook === undefined) throw new Error(findings.map(({ message }) => message).join('\n'));
  return rulebook;
}

const everyClinic = ['harrow-mills', 'piedra-alta', 'fenny-marlow', 'ellernbrueck'];

describe.each(['harrow-mills', 'piedra-alta'])('the written program of %s', (clinic) => {
  const rulebook = rulebookOf(clinic);
  const manual = manualOf(rulebook);
  const items = [...rulebook.requirements.values()];

  it('answers every item of the checklist and of the exposure control plan', () => {
    const count = (source: string) => items.filter((item) => item.source.id === source).length;
    expect(count('cdc-2016-checklist')).toBe(143);
    expect(count('osha-1910-1030')).toBe(35);
    expect(checkRequirements(rulebook)).toEqual([]);
  });

  it('says of every item whether it was read or recalled, and of what it is about', () => {
    for (const { id, source, item, section, text } of items) {
      expect(['read', 'recalled'], id).toContain(source.evidence);
      expect(rulebook.sources.get(source.id)?.year, id).toBeDefined();
      expect(
        [item, section, text].every((words) => words.length > 0),
        id,
      ).toBe(true);
    }
  });

  it('prints every item with the section that answers it', () => {
    expect(manual.findings).toEqual([]);
    const rows = new Map<string, number>();
    walk(manual.tree, (node, parents) => {
      if (node.type !== 'reference') return;
      const row = parents.flatMap(({ data }) => data?.marks ?? []).find(({ kind }) => kind === 'requirement');
      if (row === undefined) return;
      expect(node.anchor, `${row.id}: ${node.scheme}:${node.target}`).toBeDefined();
      rows.set(row.id, (rows.get(row.id) ?? 0) + 1);
    });
    for (const item of items) expect(rows.get(item.id), item.id).toBe(answersHere(rulebook, item).length);
  });

  it('leaves an item open as soon as what answers it is gone', () => {
    const withoutPolicies: Rulebook = { ...rulebook, policies: new Map() };
    const open = checkRequirements(withoutPolicies).map(({ message }) => message);
    expect(open.some((message) => message.includes('policy:laundry'))).toBe(true);
    expect(open.length).toBeLessThan(items.length);
  });
});

it.each(everyClinic)('%s prints the policies of its region, each point with a source', (clinic) => {
  const rulebook = rulebookOf(clinic);
  expect(rulebook.policies.size).toBeGreaterThanOrEqual(25);
  for (const { points } of rulebook.policies.values())
    for (const { id, source } of points) {
      expect(rulebook.sources.has(source.id), id).toBe(true);
      const published = rulebook.sources.get(source.id)?.type !== 'common-practice';
      if (published) expect(source.at !== undefined && source.evidence !== undefined, id).toBe(true);
    }
});

it.each(everyClinic)('%s has every contact that a policy sends people to', (clinic) => {
  const { clinic: own } = rulebookOf(clinic);
  const ids = own.contacts.map(({ id }) => id);
  for (const contact of ['waste-collection', 'staff-health', 'health-authority', 'post-exposure-care'])
    expect(ids, contact).toContain(contact);
});

it('prints the table only where publications of the region ask for something', () => {
  const sections = manualOf(rulebookOf('fenny-marlow')).sections.map(({ id }) => id);
  expect(sections).not.toContain('section:coverage');
  expect(manualOf(rulebookOf('harrow-mills')).sections.map(({ id }) => id)).toContain('section:coverage');
});

it('leaves a point out that does not hold for the clinic', () => {
  const pointsOf = (clinic: string) =>
    rulebookOf(clinic)
      .policies.get('surgical-asepsis')
      ?.points.map(({ name }) => name);
  expect(pointsOf('harrow-mills')).not.toContain('implants');
  expect(pointsOf('piedra-alta')).toContain('implants');
});
