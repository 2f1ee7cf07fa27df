import { proveStrict } from '../analyse/prove-strict.js';
import { lifeOf } from '../check/check-fixtures.js';
import type { Fixture } from '../check/fixture-parts.js';
import { isFor } from '../link/choose-packs.js';
import { citationOf } from '../link/linking.js';
import { packsAlone, regionsOf, sourcesOf } from '../link/packs-alone.js';
import type { Rulebook, Source } from '../link/rulebook.js';
import { formatInterval } from '../measure/interval.js';
import { formatQuantity } from '../measure/quantity.js';
import type { Source as RawSource } from '../read/types.gen.js';
import { groupBy } from '../write/text/group-by.js';
import type { Loaded } from './load-rulebook.js';
import { citationText } from './say.js';

/** A published value as `explain` shows it: a label and a text. */
export type Line = [label: string, text: string];

/**
 * What publications of all regions say about a limit or task, what the packs of each region say, and where the
 * sources of the clinic's region disagree.
 */
export function publishedAbout(loaded: Loaded, rulebook: Rulebook, id: string): Line[] {
  const sources = sourcesOf(loaded.packs);
  const fixtures = loaded.fixtures.flatMap(({ data }) =>
    Object.values(data.fixtures).map((fixture) => ({ fixture, region: data.region })),
  );
  const values = fixtures.flatMap(({ fixture, region }): Line[] => {
    if (!((fixture.prove === 'limit' && fixture.limit === id) || (fixture.prove === 'interval' && fixture.task === id)))
      return [];
    const { equals, 'at-least-as-strict-as': atLeast } = fixture;
    const value = equals ?? `${atLeast} or stricter`;
    return [['published', `${value}: ${sayCitation(sources, fixture.source)}${region === undefined ? '' : ` (${region})`}`]];
  });
  const disagreements = fixtures.flatMap(({ fixture, region }) =>
    fixture.prove === 'disagreement' && fixture.about === id && isFor(region, rulebook.clinic.region)
      ? sayDisagreement(sources, fixture)
      : [],
  );
  const distinct = new Map(values.map((line) => [line[1], line]));
  return [...distinct.values(), ...sayRegions(loaded, rulebook, id), ...disagreements];
}

/** One published value by its own id; nothing where there is no such fixture. */
export function explainFixture(loaded: Loaded, id: string): { kind: string; lines: Line[] } | undefined {
  const sources = sourcesOf(loaded.packs);
  for (const document of loaded.fixtures) {
    const fixture = Object.hasOwn(document.data.fixtures, id) ? document.data.fixtures[id] : undefined;
    if (fixture === undefined) continue;
    const { from, until } = lifeOf(fixture, sources);
    const region = document.data.region ?? 'everywhere';
    const place = document.atKey(['fixtures', id]);
    const lines: Line[] = [
      ['title', fixture.title],
      ['proves', sayProof(fixture)],
      ...(fixture.prove === 'disagreement'
        ? sayDisagreement(sources, fixture)
        : [['source', sayCitation(sources, fixture.source)] satisfies Line]),
      ['region', region],
      ...(from === undefined && until === undefined ? [] : [['in force', `${from ?? ''} to ${until ?? 'now'}`] satisfies Line]),
      ['at', `${place.file}:${place.line}:${place.column}`],
    ];
    return { kind: 'published value', lines };
  }
  return undefined;
}

/** The ids of all fixtures. */
export function fixtureIds(loaded: Loaded): string[] {
  return loaded.fixtures.flatMap(({ data }) => Object.keys(data.fixtures));
}

function sayProof(fixture: Fixture): string {
  switch (fixture.prove) {
    case 'limit':
      return `limit ${fixture.limit} ${sayTest(fixture)}`;
    case 'interval':
      return `task ${fixture.task} ${sayTest(fixture)}`;
    case 'situation':
      return `${fixture.decision} answers ${fixture.outcome ?? (fixture['at-least'] === undefined ? `anything but ${fixture.not}` : `at least ${fixture['at-least']}`)} in ${sayFacts(fixture.given)}`;
    case 'program':
      return `${fixture.decision} ${fixture.fits ? 'offers' : 'does not offer'} ${sayFacts(fixture.program)} in ${sayFacts(fixture.given)}`;
    case 'boundary': {
      const sides = (['below', 'at', 'above'] as const).flatMap((side) =>
        fixture[side] === undefined ? [] : [`${side} ${fixture[side]}`],
      );
      return `${fixture.decision} where ${fixture.fact} crosses ${fixture.threshold}: ${sides.join(', ')}`;
    }
    case 'calculation':
      return `${fixture.calculation} of ${sayFacts(fixture.given)} is ${fixture.result}`;
    case 'disagreement':
      return 'that these sources do not say the same';
  }
}

function sayTest({ equals, 'at-least-as-strict-as': atLeast }: { equals?: string; 'at-least-as-strict-as'?: string }): string {
  return equals === undefined ? `is ${atLeast} or stricter` : `is ${equals}`;
}

function sayFacts(facts: Readonly<Record<string, unknown>>): string {
  const said = Object.entries(facts).map(([fact, value]) => `${fact} ${Array.isArray(value) ? value.join('+') : String(value)}`);
  return said.length === 0 ? 'any situation' : said.join(', ');
}

function sayDisagreement(sources: Map<string, Source>, fixture: Extract<Fixture, { prove: 'disagreement' }>): Line[] {
  return [
    ['disagree', fixture.title],
    ...fixture.positions.map(({ region, says, value, source }): Line => {
      const where = region === undefined ? '' : `${region}: `;
      return ['', `- ${where}${says}${value === undefined ? '' : ` [${value}]`} ${sayCitation(sources, source)}`];
    }),
    ['', fixture.because],
  ];
}

/** What each region's packs say, where they do not all say the same. */
function sayRegions({ packs }: Loaded, { on }: Rulebook, id: string): Line[] {
  const said = regionsOf(packs).flatMap((region) => {
    const rules = packsAlone(packs, region, on, proveStrict).rulesOn(on);
    const limit = rules?.limits.get(id);
    const task = rules?.tasks.get(id);
    if (limit !== undefined) return [{ region: region.id, value: formatQuantity(limit.value) }];
    if (task === undefined) return [];
    return [{ region: region.id, value: task.every === undefined ? 'only after events' : formatInterval(task.every) }];
  });
  const byValue = groupBy(said, ({ value }) => value);
  if (byValue.size < 2) return [];
  return [
    ['regions', [...byValue].map(([value, regions]) => `${regions.map(({ region }) => region).join(', ')}: ${value}`).join('; ')],
  ];
}

function sayCitation(sources: Map<string, Source>, raw: RawSource): string {
  const source = citationOf(raw);
  return `${citationText({ sources }, source)}${source.evidence === 'computed' ? ', computed' : ''}`;
}
