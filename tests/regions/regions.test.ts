import { describe, expect, it } from 'vitest';
import { proveStrict } from '../../src/analyse/prove-strict.js';
import { loadTemplates, manualOf } from '../../src/cli/load-manual.js';
import { home, loadClinic, loadPacks, rulebookOn } from '../../src/cli/load-rulebook.js';
import { packsAlone, regionsOf, sourcesOf } from '../../src/link/packs-alone.js';
import { hasErrors } from '../../src/read/finding.js';
import { printMarkdown } from '../../src/write/print/print-markdown.js';

const on = '2026-12-01';
const rules = loadPacks(`${home}rules`, home);
const { packs, fixtures } = rules;
const regions = regionsOf(packs);
const sample = loadClinic(rules, `${home}seeds/harrow-mills`, home);

/** A manual without what keeps the spelling of somebody else: titles and clauses of sources, and the ids of rules. */
function withoutTitles(printed: string): string {
  const lines = printed.split('\n').filter((line) => !/^\| \d+ \| |^\*\*\[.*\)\.\*\* /.test(line));
  return lines.join('\n').replace(/\\\[\d+\][^|\n]*/g, '');
}

/** What the clinic itself says is never spelled anew. */
const clinicTexts = JSON.stringify(sample.clinicDocuments.map(({ data }) => data));
function saidByClinic(line: string, word: string): boolean {
  const around = new RegExp(String.raw`[\p{L} ]{0,12}${word}[\p{L} ]{0,12}`, 'u').exec(line)?.[0] ?? '';
  return clinicTexts.includes(around.trim());
}

describe.each(regions.map((region) => [region.id, region] as const))('the pack of %s', (id, region) => {
  const pack = packs.find((each) => each.id === id);
  const documents = pack?.documents ?? [];
  const words = documents.flatMap(({ data }) => (data.kind === 'wording' ? Object.entries(data.words) : []));

  /** What the region writes itself, it writes as it wants it. */
  const ownTexts = JSON.stringify(documents.filter(({ data }) => data.kind !== 'wording').map(({ data }) => data));

  it('prints a manual for a clinic of the same machines without a finding', () => {
    const clinicDocuments = sample.clinicDocuments
      .filter(({ data }) => data.kind !== 'overrides')
      .map((each) =>
        each.data.kind === 'clinic' ? { ...each, data: { ...each.data, region: region.region, packs: region.packs } } : each,
      );
    const { rulebook, findings } = rulebookOn({ ...sample, clinicDocuments }, on);
    expect(findings.filter(({ code }) => code.startsWith('E'))).toEqual([]);
    if (rulebook === undefined) throw new Error('no rulebook');
    const manual = manualOf(rulebook);
    expect(manual.findings).toEqual([]);
    const printed = printMarkdown(manual);
    // The annex that traces ids prints ids, which stand in the words of the pack.
    const trace = manual.sections.find(({ id }) => id === 'section:trace');
    const [before = ''] = withoutTitles(printed).split(`## ${trace?.number ?? ''} ${trace?.title ?? ''}\n`);
    const body = before;
    expect(body.length).toBeGreaterThan(100_000);
    for (const [word, spelt] of words) {
      if (!/^[a-z]+$/.test(word) || spelt.includes(word) || ownTexts.includes(word)) continue;
      const left = new RegExp(String.raw`^.*(?<![\p{L}-])${word}(?![\p{L}-]).*$`, 'gmu');
      expect(
        [...body.matchAll(left)].map(([line]) => line).filter((line) => !saidByClinic(line, word)),
        word,
      ).toEqual([]);
    }
  });

  it('spells only words that the base pack or the templates use', () => {
    const base = JSON.stringify(packs.find((each) => each.id === 'base')?.documents.map(({ data }) => data));
    const written = `${base}${[...loadTemplates().values()].join('')}`.toLowerCase();
    expect(words.filter(([word]) => !written.includes(word)).map(([word]) => word)).toEqual([]);
  });

  it('says which of its parts are recalled, and every source has a date or an edition', () => {
    const head = pack?.head.data;
    const recalled = packsAlone(packs, region, on, proveStrict)
      .rulesOn(on)
      ?.changes.some(({ source }) => source?.evidence === 'recalled');
    if (recalled) expect(head?.about).toMatch(/recalled/i);
    for (const [source, { type, year, edition }] of documents.flatMap(({ data }) =>
      data.kind === 'sources' ? Object.entries(data.sources) : [],
    ))
      if (!['common-practice', 'maker', 'clinic'].includes(type)) expect(year ?? edition, source).toBeDefined();
  });

  it('has published values of its own', () => {
    const own = fixtures.filter(({ data }) => data.region === region.region).flatMap(({ data }) => Object.values(data.fixtures));
    expect(own.length).toBeGreaterThanOrEqual(25);
    expect(hasErrors(packsAlone(packs, region, on, proveStrict).findingsOn(on))).toBe(false);
  });
});

it('every published value names a source with edition, clause and evidence, and none is there twice', () => {
  const sources = sourcesOf(packs);
  const all = fixtures.flatMap(({ data }) => Object.entries(data.fixtures));
  expect(new Set(all.map(([id]) => id)).size).toBe(all.length);
  expect(all.length).toBeGreaterThan(800);
  for (const [id, fixture] of all)
    for (const cited of fixture.prove === 'disagreement' ? fixture.positions.map(({ source }) => source) : [fixture.source]) {
      const source = sources.get(typeof cited === 'string' ? cited : cited.id);
      expect(source, id).toBeDefined();
      if (source === undefined || ['common-practice', 'maker', 'clinic'].includes(source.type)) continue;
      expect(
        typeof cited === 'object' && cited.at !== undefined && cited.evidence !== undefined,
        `${id} lacks clause or evidence`,
      ).toBe(true);
      expect(source.year ?? source.edition, `${id}: ${source.id}`).toBeDefined();
    }
});
