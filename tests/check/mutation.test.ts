import { describe, expect, it } from 'vitest';
import { checkFixtures } from '../../src/check/check-fixtures.js';
import { home, loadPacks } from '../../src/cli/load-rulebook.js';
import type { Pack } from '../../src/link/choose-packs.js';
import { packsAlone, regionsOf, sourcesOf } from '../../src/link/packs-alone.js';
import type { Finding } from '../../src/read/finding.js';
import type { Located } from '../../src/read/read-documents.js';
import type { Document, Source } from '../../src/read/types.gen.js';

const { packs, fixtures } = loadPacks(`${home}rules`, home);
const sources = sourcesOf(packs);
const regions = regionsOf(packs);
const published = (source: Source): string | undefined => {
  const id = typeof source === 'string' ? source : source.id;
  const type = sources.get(id)?.type;
  return type === 'common-practice' || type === 'clinic' || type === 'maker' ? undefined : id;
};

/** One value of a pack that cites a published source: where it is written, and how to write another there. */
interface Sourced {
  pack: Pack;
  document: Located;
  name: string;
  source: string;
  text: string;
  write(data: Document, text: string): void;
}

describe('a published value that drifts away from its source', () => {
  const values = packs.flatMap(sourcedIn);
  it.each(regions.map(({ id }) => id).concat('base'))('is noticed in %s, either way, with its source named', (id) => {
    const region = regions.find((each) => each.id === id) ?? regions.find((each) => each.id === 'us');
    if (region === undefined) throw new Error('no region');
    const mine = values.filter(({ pack }) => pack.id === id);
    const survivors = mine.flatMap((value) =>
      [1.02, 1 / 1.02].flatMap((factor) => {
        const text = scaled(value.text, factor);
        const title = sources.get(value.source)?.title ?? value.source;
        const findings = checkWith(value, text, region);
        const named = findings.some(
          ({ code, message, help = '' }) => code.startsWith('E') && `${message} ${help}`.includes(title),
        );
        return named ? [] : [`${value.name}: ${value.text} -> ${text} (${value.source})`];
      }),
    );
    const mutants = mine.length * 2;
    console.log(`${id}: ${mutants - survivors.length} of ${mutants} changed values noticed`);
    expect(survivors).toEqual([]);
    expect(mutants).toBeGreaterThan(0);
  });
});

/** What a check of a region finds when one value of a pack is written otherwise. */
function checkWith(value: Sourced, text: string, region: (typeof regions)[number]): Finding[] {
  const changed = packs.map((pack) => {
    if (pack !== value.pack) return pack;
    const documents = pack.documents.map((each) => {
      if (each !== value.document) return each;
      const data = structuredClone(each.data);
      value.write(data, text);
      return { ...each, data };
    });
    return { ...pack, documents };
  });
  const alone = packsAlone(changed, region, '2026-12-01', () => undefined);
  const linked = alone.findingsOn(alone.on);
  if (linked.length > 0) return linked;
  const first = checkFixtures(fixtures.map(about(value.name)), alone).findings;
  return first.length > 0 ? first : checkFixtures(fixtures, alone).findings;
}

/** Only the fixtures that compare one limit or task: they are quick, and most often enough. */
function about(name: string): (document: (typeof fixtures)[number]) => (typeof fixtures)[number] {
  return (document) => {
    const kept = Object.entries(document.data.fixtures).filter(
      ([, fixture]) =>
        (fixture.prove === 'limit' && fixture.limit === name) || (fixture.prove === 'interval' && fixture.task === name),
    );
    return { ...document, data: { ...document.data, fixtures: Object.fromEntries(kept) } };
  };
}

function sourcedIn(pack: Pack): Sourced[] {
  return pack.documents.flatMap((document): Sourced[] => {
    const { data } = document;
    const value = (name: string, cited: Source, text: string, write: Sourced['write']): Sourced[] => {
      const source = published(cited);
      return source === undefined ? [] : [{ pack, document, name, source, text, write }];
    };
    if (data.kind === 'limits')
      return Object.entries(data.limits).flatMap(([id, { values }]) =>
        values.flatMap((each, index) =>
          value(id, each.source, each.value, (clone, text) => {
            const target = clone.kind === 'limits' ? clone.limits[id]?.values[index] : undefined;
            if (target !== undefined) target.value = text;
          }),
        ),
      );
    if (data.kind === 'tasks')
      return Object.entries(data.tasks).flatMap(([id, { every, source }]) =>
        every === undefined
          ? []
          : value(id, source, every, (clone, text) => {
              const target = clone.kind === 'tasks' ? clone.tasks[id] : undefined;
              if (target !== undefined) target.every = text;
            }),
      );
    if (data.kind !== 'overrides') return [];
    return data.changes.flatMap((change, index) => {
      if (change.change !== 'limit' && change.change !== 'interval') return [];
      const [name, text] = change.change === 'limit' ? [change.limit, change.value] : [change.task, change.every];
      return value(name, change.source, text, (clone, other) => {
        const target = clone.kind === 'overrides' ? clone.changes[index] : undefined;
        if (target?.change === 'limit') target.value = other;
        if (target?.change === 'interval') target.every = other;
      });
    });
  });
}

/** The same text with its first number scaled. */
function scaled(text: string, factor: number): string {
  const [number = ''] = /(?<![A-Za-z])\d+(?:\.\d+)?/.exec(text.replace('A0 ', '   ')) ?? [];
  const at = text.lastIndexOf(number);
  return `${text.slice(0, at)}${Number((Number(number) * factor).toPrecision(6))}${text.slice(at + number.length)}`;
}
