import { fileURLToPath } from 'node:url';
import { Resvg } from '@resvg/resvg-js';
import { describe, expect, it } from 'vitest';
import { sampleClinics } from '../../../src/cli/load-rulebook.js';
import type { Machine, Rulebook } from '../../../src/link/rulebook.js';
import { drawSvg } from '../../../src/write/figures/draw-svg.js';
import type { Figure } from '../../../src/write/figures/figure.js';
import { figureIds, modelFigures } from '../../../src/write/figures/model-figures.js';
import { widthOf } from '../../../src/write/figures/svg/measure-text.js';
import { sayQuantity } from '../../../src/write/text/say-quantity.js';
import { sampleRulebook } from '../../emit/clinics.js';
import { smallRulebook } from '../small-rulebook.js';
import { overlaps, textsOf, wordsOf } from './svg-texts.js';

const names = sampleClinics().map((folder) => folder.split('/').at(-1) ?? '');
const books = new Map(names.map((name): [string, Rulebook] => [name, sampleRulebook(name)]));
const harrow = bookOf('harrow-mills');

const hostile = '</text><script>&\u202e"\'\u0000 ]]> --> {{x}} $& 〇 Überlangesammelwortohnejedetrennstellezwischenden';
const hostileBook = withMachines(
  {
    ...bookOf('piedra-alta'),
    clinic: {
      ...bookOf('piedra-alta').clinic,
      rooms: bookOf('piedra-alta').clinic.rooms.map((room) => ({ ...room, name: `${room.name} ${hostile}` })),
    },
  },
  (machine) => [{ ...machine, name: `${machine.name} ${hostile}` }],
);

function bookOf(name: string): Rulebook {
  const rulebook = books.get(name);
  if (rulebook === undefined) throw new Error(`no clinic ${name}`);
  return rulebook;
}

function withMachines(rulebook: Rulebook, change: (machine: Machine) => Machine[]): Rulebook {
  const machines = [...rulebook.machines.values()].flatMap(change);
  const kinds = [...new Set(machines.map(({ kind }) => kind))];
  return {
    ...rulebook,
    machines: new Map(machines.map((machine) => [machine.id, machine])),
    duties: rulebook.duties.filter(({ machine }) => machine === undefined || machines.some(({ id }) => id === machine)),
    clinic: { ...rulebook.clinic, facts: { ...rulebook.clinic.facts, 'clinic.machines': kinds } },
  };
}

function figure(rulebook: Rulebook, id: string): Figure {
  const found = modelFigures(rulebook).get(id);
  if (found === undefined) throw new Error(`no figure ${id}`);
  return found;
}

const drawn = async (rulebook: Rulebook, id: string) => drawSvg(figure(rulebook, id));

/** A picture of the drawing; throws where it is no well-formed XML. */
const render = (svg: string) => new Resvg(svg, { font: { loadSystemFonts: false } }).render();

const cases = names.flatMap((name) => figureIds.map((id): [string, string, Rulebook] => [name, id, bookOf(name)]));

describe.each([...cases, ...figureIds.map((id): [string, string, Rulebook] => ['hostile names', id, hostileBook])])(
  '%s: the figure %s',
  (name, id, rulebook) => {
    it('is drawn well-formed, by itself, the same each time', async () => {
      const svg = await drawn(rulebook, id);
      expect(render(svg).width).toBeGreaterThan(400);
      expect(await drawn(rulebook, id)).toBe(svg);
      expect(svg).toMatch(
        /^<svg xmlns="http:\/\/www\.w3\.org\/2000\/svg" width="165mm" height="[\d.]+mm" viewBox="0 0 468 [\d.]+"/,
      );
      expect(svg.replace(' xmlns="http://www.w3.org/2000/svg"', '')).not.toMatch(
        /var\(|<style|foreignObject|<script|<image|<use|href|http|url\(| id=|<!|<\?|NaN|undefined/,
      );
      const colors = [...svg.matchAll(/(?:fill|stroke)="([^"]*)"/g)].map(([, color]) => color);
      expect(new Set(colors)).toEqual(new Set(['#000', '#fff', 'none'].filter((color) => colors.includes(color))));
    });

    it('fits on a page, in type of 8 points at least', async () => {
      const svg = await drawn(rulebook, id);
      const height = Number(/viewBox="0 0 468 ([\d.]+)"/.exec(svg)?.[1]);
      if (name !== 'hostile names') expect(height).toBeLessThan(640);
      for (const { left, right, top, bottom, size, words } of textsOf(svg)) {
        expect(size, words).toBeGreaterThanOrEqual(8);
        expect(Math.min(left, top), words).toBeGreaterThan(-2);
        expect(right, words).toBeLessThan(470);
        expect(bottom, words).toBeLessThan(height + 1);
      }
    });

    it('lays no text on another', async () => {
      expect(overlaps(textsOf(await drawn(rulebook, id)))).toEqual([]);
    });

    it('says in whole sentences what it shows', () => {
      const { alt, caption } = figure(rulebook, id);
      expect(alt).toMatch(/^\p{Lu}.{60,}[.!?]$/su);
      expect(caption).toMatch(/^\p{Lu}.{20,}\.$/su);
      expect(alt + caption).not.toMatch(name === 'hostile names' ? /\p{Cc}|\p{Cf}/u : /\[\]\(|\*\*|\{[a-z]/);
    });
  },
);

describe.each(names)('%s: what the figures show', (name) => {
  const rulebook = bookOf(name);

  it('is each machine where it stands, and each room in the order of the way', async () => {
    const { alt } = figure(rulebook, 'path');
    const words = wordsOf(await drawn(rulebook, 'path'));
    for (const machine of rulebook.machines.values()) {
      expect(words).toContain(machine.name);
      expect(alt).toContain(machine.name);
    }
    const way = ['treatment', 'dirty-side', 'clean-side', 'sterilizing-area', 'sterile-storage'];
    const rooms = way.flatMap((zone) => rulebook.clinic.rooms.filter(({ zones }) => zones.some((each) => each === zone)));
    let from = 0;
    for (const { name: room } of new Set(rooms)) {
      expect(words.replace(/ /g, '')).toContain(room.replace(/ /g, ''));
      const found = alt.indexOf(room, from);
      expect(found, room).toBeGreaterThanOrEqual(from);
      from = found;
    }
  });

  it('is the value of each limit of time that it names', async () => {
    const words = wordsOf(await drawn(rulebook, 'times'));
    const hasWasher = [...rulebook.machines.values()].some(({ kind }) => kind === 'washer');
    const ids = ['holding.longest-dry-wait', 'holding.longest-moist-hold', 'sterilize.cooling-time'];
    if (hasWasher) ids.push('washer.longest-stay');
    for (const limit of ids.flatMap((id) => rulebook.limits.get(id) ?? []))
      expect(words).toContain(`${limit.label} ${sayQuantity(rulebook, limit.value)}`.split(' ').slice(-2).join(' '));
    const { drawing, alt } = figure(rulebook, 'times');
    if (drawing.kind !== 'times') throw new Error('no times');
    const bars = drawing.groups.flatMap((group) => group.bars);
    expect(bars.length).toBeGreaterThan(12);
    for (const { value } of bars) {
      expect(textsOf(await drawn(rulebook, 'times')).map((text) => text.words)).toContain(value);
      expect(alt).toContain(value);
    }
  });

  it('is each task that comes round by the month or less often', async () => {
    const words = wordsOf(await drawn(rulebook, 'year'));
    const monthly = rulebook.duties.filter(({ every }) => ['mo', 'a'].includes(every?.time?.unit ?? ''));
    expect(monthly.length).toBeGreaterThan(15);
    for (const { task } of monthly) expect(words).toContain(rulebook.tasks.get(task)?.title);
  });

  it('is the questions about an instrument and the answers that are possible here', async () => {
    const words = wordsOf(await drawn(rulebook, 'instrument'));
    for (const id of ['device-class', 'processing-level', 'cleaning-route', 'packing', 'sterilizing-method'])
      expect(words).toContain(rulebook.decisions.get(id)?.question);
    const say = (id: string, outcome: string) => {
      const decision = rulebook.decisions.get(id);
      return decision?.kind === 'verdict' ? (decision.say[outcome] ?? '').slice(1).split(/[,.]/)[0] : undefined;
    };
    expect(words).toContain(say('cleaning-route', 'by-hand'));
    const hasOven = [...rulebook.machines.values()].some(({ kind }) => kind === 'dry-heat-sterilizer');
    expect(words.includes(say('sterilizing-method', 'dry-heat') ?? '?')).toBe(hasOven);
  });
});

describe('the way of an instrument', () => {
  it('ends where no method is allowed, and does not lead on to storage from there', async () => {
    const method = harrow.decisions.get('sterilizing-method');
    if (method?.kind !== 'verdict') throw new Error('no method');
    const rules = method.rules.map((rule) => (rule.outcome === 'steam' ? { ...rule, outcome: 'not-allowed' } : rule));
    const closed = { ...harrow, decisions: new Map([...harrow.decisions, [method.id, { ...method, rules }]]) };
    const { drawing } = figure(closed, 'instrument');
    if (drawing.kind !== 'instrument') throw new Error('no instrument');
    const [, methods, ...rest] = drawing.after;
    expect(methods?.lanes.map((answers) => answers.map(({ ends }) => ends))).toEqual([[false], [true]]);
    expect(rest.flatMap(({ lanes }) => lanes.flat())).toEqual([]);
    const heavy = (svg: string) => [...svg.matchAll(/<rect [^>]*height="3"\/>/g)].length;
    expect(heavy(await drawn(closed, 'instrument'))).toBe(heavy(await drawn(harrow, 'instrument')) + 1);
  });

  it('leads from a class to what an instrument of that class may need', () => {
    const { drawing } = figure(harrow, 'instrument');
    if (drawing.kind !== 'instrument') throw new Error('no instrument');
    // Only what touches skin alone is wiped; a cassette that does is sterilized all the same.
    expect(drawing.classes.boxes.map(({ words, lanes }) => [words, lanes])).toEqual([
      ['Noncritical', [0, 1]],
      ['Semicritical', [1]],
      ['Critical', [1]],
    ]);
  });
});

describe('what follows from a result', () => {
  it('is every answer with its procedures, those that depend on the reason dashed', async () => {
    for (const rulebook of books.values()) {
      const words = wordsOf(await drawn(rulebook, 'failure'));
      expect(words).toContain(rulebook.decisions.get('load-release')?.question);
      expect(words).toContain(rulebook.procedures.get('failed-spore-test')?.title);
    }
    const { drawing, alt } = figure(harrow, 'failure');
    if (drawing.kind !== 'failure') throw new Error('no failure');
    const spores = drawing.questions.find(({ question }) => question === harrow.decisions.get('spore-test-result')?.question);
    expect(spores?.answers.map(({ next }) => next.map(({ always }) => always))).toEqual([[], [false, false], [true], [true]]);
    expect(alt).toContain('proves nothing. Next, depending on the reason: Spore test or ');
    expect(await drawn(harrow, 'failure')).toContain('stroke-dasharray');
  });
});

describe('a clinic without a washer', () => {
  const without = withMachines(harrow, (machine) => (machine.kind === 'washer' ? [] : [machine]));

  it('has no branch, limit or task of one', async () => {
    expect(wordsOf(await drawn(harrow, 'instrument'))).toContain('Clean in the washer');
    for (const id of figureIds) expect(wordsOf(await drawn(without, id)), id).not.toMatch(/[Ww]asher/);
    expect(figure(without, 'path').alt).toContain('the dirty side with Bath 1,');
  });
});

describe('the path', () => {
  const rooms = (zones: [string, string[]][]): Rulebook => ({
    ...harrow,
    clinic: {
      ...harrow.clinic,
      rooms: zones.map(([id, own]) => ({ id, name: `Room ${id}`, zones: own })) as Rulebook['clinic']['rooms'],
    },
  });
  const heavy = (svg: string) =>
    [...svg.matchAll(/<polyline points="([^"]*)"[^>]*stroke-width="3"/g)].map(([, points]) => points);

  it('has one heavy line between dirty and clean, in one room or between rooms', async () => {
    for (const rulebook of books.values()) expect(heavy(await drawn(rulebook, 'path'))).toHaveLength(1);
    const apart = rooms([
      ['a', ['treatment']],
      ['b', ['dirty-side']],
      ['c', ['dirty-side']],
      ['d', ['dirty-side']],
      ['e', ['clean-side']],
      ['f', ['sterilizing-area']],
      ['g', ['sterile-storage']],
    ]);
    const [line = ''] = heavy(await drawn(apart, 'path'));
    const [start = '', end = ''] = line.split(' ');
    expect(start.split(',')[1]).toBe(end.split(',')[1]);
    expect(overlaps(textsOf(await drawn(apart, 'path')))).toEqual([]);
  });

  it('is drawn for a clinic of one room, and not where there is no way to show', async () => {
    const one = rooms([['instrument-room', ['treatment', 'dirty-side', 'clean-side', 'sterilizing-area', 'sterile-storage']]]);
    expect(wordsOf(await drawn(one, 'path'))).toMatch(/Where patients are treated\..*Washer 1/);
    expect(modelFigures(rooms([['office', ['office']]])).has('path')).toBe(false);
  });

  it('says of a machine that it is out of service', () => {
    expect(figure(bookOf('piedra-alta'), 'path').alt).toContain('Sterilizer 2 (out of service)');
  });
});

describe('figures of a rulebook that says little', () => {
  it('are those it has something to show in', async () => {
    const figures = modelFigures(smallRulebook());
    expect([...figures.keys()]).toEqual(['path']);
    for (const each of figures.values()) expect(render(await drawSvg(each)).height).toBeGreaterThan(50);
  });
});

describe('the year', () => {
  it('counts the most frequent tasks only, where there are too many to draw', () => {
    const many = withMachines(harrow, (machine) =>
      machine.kind === 'washer'
        ? Array.from({ length: 8 }, (_, index) => ({ ...machine, id: `w${index}`, name: `W ${index}` }))
        : [machine],
    );
    const duties = [...many.machines.values()].flatMap(({ id }, index) =>
      harrow.duties
        .filter(({ machine }) => machine === 'washer-1' && id.startsWith('w'))
        .map((duty) => ({ ...duty, machine: id, every: { time: { value: 30 + index, unit: 'd' } } })),
    );
    const { drawing } = figure({ ...many, duties: [...many.duties, ...duties] }, 'year');
    if (drawing.kind !== 'year') throw new Error('no year');
    expect(drawing.groups.flatMap(({ rows }) => rows).length).toBeLessThanOrEqual(44);
    expect(drawing.groups.map(({ often }) => often).join()).toMatch(/× every 3\d days/);
  });
});

describe('the width of a text', () => {
  const fontFiles = ['Regular', 'Bold'].map((face) =>
    fileURLToPath(new URL(`../../../node_modules/source-sans/TTF/SourceSans3-${face}.ttf`, import.meta.url)),
  );
  const measured = (text: string, bold: boolean) => {
    const weight = bold ? ' font-weight="700"' : '';
    const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="2000" height="200"><text x="0" y="120" font-family="Source Sans 3" font-size="100"${weight}>|${text}|</text></svg>`;
    const font = { loadSystemFonts: false, fontFiles, defaultFontFamily: 'Source Sans 3' };
    return new Resvg(svg, { font }).innerBBox()?.width ?? 0;
  };

  it.each(['Sterilizer', 'WASHER', 'illness', '10 minutes', 'Größe über Å', 'fnord (out)'])(
    'of `%s` is a little more than in the font',
    (text) => {
      for (const bold of [false, true]) {
        const estimate = widthOf(`|${text}|`, { size: 100, bold });
        expect(estimate).toBeGreaterThan(measured(text, bold));
        expect(estimate).toBeLessThan(measured(text, bold) * 1.25);
      }
    },
  );
});
