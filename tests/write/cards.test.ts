import type { Nodes, Parents } from 'mdast';
import { toString as textOf } from 'mdast-util-to-string';
import { describe, expect, it } from 'vitest';
import { home, loadPacks } from '../../src/cli/load-rulebook.js';
import type { Card } from '../../src/link/rulebook.js';
import type { CardDocument } from '../../src/read/types.gen.js';
import { modelCardList, modelCards } from '../../src/write/model/model-cards.js';
import { printMarkdown } from '../../src/write/print/print-markdown.js';
import { walk } from '../../src/write/tree/walk.js';
import { writeCards } from '../../src/write/write-cards.js';
import { writeManual } from '../../src/write/write-manual.js';
import { allTemplates as templates } from './all-templates.js';
import { clinicCalled, shippedClinics } from './in-each-region.js';
import { smallRulebook } from './small-rulebook.js';

const documents = loadPacks(`${home}rules`, home).packs.flatMap((pack) =>
  pack.documents.flatMap(({ data }) => (data.kind === 'card' ? [data] : [])),
);
const write = (rulebook: Parameters<typeof writeCards>[0]['rulebook']) => writeCards({ rulebook, templates, tool: '9.9.9' });

/** The points of a card as they are printed, by the heading over them. */
function pointsOf(clinic: string): Map<string, string[]> {
  const found = new Map<string, string[]>();
  let card = '';
  for (const node of write(clinicCalled(clinic)).tree.children) {
    if (node.type === 'heading') card = textOf(node).trim();
    if (node.type === 'list')
      found.set(
        card,
        node.children.map((item) => textOf(item)),
      );
  }
  return found;
}

describe('the cards of the base pack', () => {
  it('are there for every place where work happens', () => {
    expect(documents.map(({ id }) => id).sort()).toEqual([
      'burn',
      'carrying',
      'chairside',
      'chemical-splash',
      'clean-by-hand',
      'dirty-side',
      'failed-cycle',
      'inspecting',
      'load-sterilizer',
      'load-washer',
      'opening-a-pack',
      'packing',
      'releasing',
      'run-dry-heat',
      'run-sterilizer',
      'run-washer',
      'sharps-injury',
      'storing',
      'ultrasonic-bath',
    ]);
  });

  it.each(documents.map((data) => [data.id, data] as const))('%s is short, and says what it restates', (_, data) => {
    expect(data.points.length).toBeLessThanOrEqual(9);
    for (const { say, from } of linesOf(data)) {
      expect(from.length, say).toBeGreaterThan(0);
      expect(say.replace(/\[\]\([^)]*\)/g, 'ten minutes').split(' ').length, say).toBeLessThanOrEqual(18);
      expect(say.replace(/\[\]\([^)]*\)/g, ''), 'numbers are limits').not.toMatch(/\d/);
    }
  });
});

function linesOf({ points, caution, stop }: CardDocument) {
  return [...points, ...(caution === undefined ? [] : [caution]), ...(stop === undefined ? [] : [stop])];
}

describe.each([...shippedClinics])('the cards of %s', (_, rulebook) => {
  const cards = write(rulebook);

  it('pass the gate', () => {
    expect(cards.findings).toEqual([]);
    expect(cards.kind).toBe('cards');
    expect(withoutMark(cards.meta.title)).toBe(rulebook.language.startsWith('fr') ? 'Fiches murales' : 'Wall cards');
  });

  it('hang under one heading each, with what they need', () => {
    const headings = cards.tree.children.filter((node) => node.type === 'heading');
    expect(headings.length).toBeGreaterThan(15);
    expect(headings.every(({ depth, data }) => depth === 1 && data?.number === undefined)).toBe(true);
    expect(new Set(headings.map((heading) => textOf(heading))).size).toBe(headings.length);
    const feet = cards.tree.children.filter((node) => node.type === 'paragraph' && node.data?.is === 'foot');
    expect(feet.length).toBe(headings.length);
    expect(feet.every((foot) => textOf(foot).includes(`version ${rulebook.clinic.document.version}`))).toBe(true);
  });

  it('print no number in a point but that of a limit', () => {
    const bare: string[] = [];
    const limits: string[] = [];
    walk(cards.tree, (node, parents) => {
      if (node.type === 'reference' && node.scheme === 'limit') limits.push(node.target);
      if (node.type === 'text' && isInPoint(parents) && !isOfRules(parents) && /\d/.test(node.value.replace('type 5', '')))
        bare.push(node.value);
    });
    expect(bare).toEqual([]);
    expect(limits.length).toBeGreaterThan(20);
    expect(limits.filter((id) => !rulebook.limits.has(id))).toEqual([]);
  });

  it('restate only what is in force', () => {
    const steps = [...rulebook.procedures.values()].flatMap((procedure) => procedure.steps.map(({ id }) => id));
    const rules = [...rulebook.decisions.values()].flatMap((decision) => decision.rules.map(({ id }) => id));
    const known = { step: steps, rule: rules, task: [...rulebook.tasks.keys()], limit: [...rulebook.limits.keys()] };
    for (const { from } of [...rulebook.cards.values()].flatMap(({ points }) => points))
      for (const { kind, id } of from) expect(kind === 'procedure' ? [...rulebook.procedures.keys()] : known[kind]).toContain(id);
  });

  it('fit on a page: few points of few words, also where a region says its own', () => {
    for (const card of modelCards(rulebook, '9').cards) expect(card.points.length, card.id).toBeLessThanOrEqual(11);
    walk(cards.tree, (node) => {
      if (node.type === 'listItem')
        expect(withoutMark(textOf(node)).split(/\s/).length, textOf(node)).toBeLessThanOrEqual(
          rulebook.language.startsWith('en') ? 22 : 28,
        );
    });
  });
});

/** A text without the mark that it is not translated yet. */
function withoutMark(text: string): string {
  return text.replaceAll('[en] ', '');
}

function isInPoint(parents: readonly Parents[]): boolean {
  return parents.some(({ type }) => type === 'listItem');
}

function isOfRules(parents: readonly Nodes[]): boolean {
  return parents.some(({ type }) => type === 'reference' || type === 'said');
}

describe('a card of a clinic', () => {
  it('leaves out what cannot arise there', () => {
    const points = 'An implant in it: quarantine until the spore test is negative.';
    expect(pointsOf('harrow-mills').get('Releasing a load')).not.toContain(points);
    expect(pointsOf('piedra-alta').get('Releasing a load')).toContain(points);
  });

  it('says what the clinic added for the wall, behind the step before it', () => {
    const points = pointsOf('harrow-mills').get('At the chair') ?? [];
    const added = 'Say it aloud: needles and blades opened, and thrown away. Same number.';
    expect(points.indexOf(added)).toBe(points.findIndex((point) => point.startsWith('Sharps out first')) + 1);
  });

  it('says a step in the words of the layer that wrote it anew', () => {
    expect(pointsOf('moved to au').has('Oven 3: running')).toBe(false);
    expect(pointsOf('moved to us').get('Cleaning by hand')).toContain(
      'Take the rest apart, into a basket. Lower the basket by its handles.',
    );
    expect(pointsOf('moved to au').get('Cleaning by hand')).toContain(
      'Take the rest apart. A few at a time, every sharp end in sight.',
    );
  });

  it('belongs to one machine: a step that holds for another one is not on it', () => {
    const own = pointsOf('piedra-alta');
    const detergent = 'Measure the detergent for the program. Pour it below your face.';
    expect(own.get('Washer 2: running and unloading')).toContain(detergent);
    expect(own.get('Washer 1: running and unloading')).not.toContain(detergent);
    expect(own.has('Sterilizer 2: loading'), 'a machine in reserve has no card').toBe(false);
  });

  it('names the program of a load where all of it gets the same one', () => {
    const of = (clinic: string, id: string) =>
      modelCards(clinicCalled(clinic), '9')
        .cards.find((card) => card.id === id)
        ?.programs.map(({ load, program }) => [load.markdown, program.markdown.replace(/^\[(.*)\]\(said.*$/, '$1')]);
    expect(of('harrow-mills', 'run-washer/washer-1')).toEqual([
      ['Lightly soiled, kept moist', 'Everyday wash'],
      ['Heavily soiled or dried on', 'Stubborn soil wash'],
      ['Keep a part load moist', 'Wet wait'],
    ]);
    expect(of('ellernbrueck', 'run-washer/washer-1')?.map(([load]) => load)).toEqual([
      'Lightly soiled cassettes',
      'Lightly soiled loose items',
      'Heavily soiled or dried on',
      'Keep a part load moist',
    ]);
  });

  it('gives the telephone number', () => {
    expect(printMarkdown(write(clinicCalled('harrow-mills')))).toContain(
      '| Every time | Harrow Valley Occupational Health | **802-555-0147** |',
    );
  });

  it('is listed for the room it hangs in', () => {
    const list = new Map(
      modelCardList(clinicCalled('piedra-alta')).map(({ room, cards }) => [room.markdown, cards.map(({ markdown }) => markdown)]),
    );
    const [washing] = [...list].filter(([room]) => room.includes('Washing room'));
    expect(washing?.[1].some((card) => card.includes('Washer 1'))).toBe(true);
    expect(washing?.[1].some((card) => card.includes('Sterilizer 1'))).toBe(false);
  });
});

describe('a card of the small rulebook', () => {
  const card: Card = {
    id: 'washing',
    title: 'Washing',
    places: ['dirty-side'],
    order: 1,
    points: [
      { id: 'start', say: 'Start [](machine:washer).', from: [{ kind: 'step', id: 'wash/start' }], layer: 'base' },
      { id: 'wait', say: 'Wait 10 minutes.', from: [{ kind: 'step', id: 'wash/look' }], layer: 'base' },
    ],
    call: [{ when: 'Hurt', whom: { kind: 'role', id: 'lead' } }],
    layer: 'base',
    place: { file: 'rules/base/card.yaml', line: 2, column: 5 },
  };

  it('is refused for a number that comes out of no rule, at the file of the card', () => {
    const { findings } = write(smallRulebook({ cards: new Map([[card.id, card]]) }));
    expect(findings.map(({ code, place }) => [code, place.file])).toEqual([['E609', 'rules/base/card.yaml']]);
  });

  it('names the section of the manual beside it', () => {
    const [start] = card.points;
    const points = start === undefined ? [] : [start, { ...start, id: 'again' }];
    const rulebook = smallRulebook({ cards: new Map([[card.id, { ...card, points }]]) });
    const manual = writeManual({ rulebook, templates, tool: '9.9.9' });
    expect(manual.findings).toEqual([]);
    const foot = (input: object) =>
      textOf(
        writeCards({ rulebook, templates, tool: '9', ...input })
          .tree.children.filter((node) => node.type === 'paragraph')
          .at(-1),
      );
    expect(foot({ manual })).toContain('In the manual: Wash by machine (5.1)');
    expect(foot({})).toMatch(/In the manual: Wash by machine$/);
  });

  it('writes nothing where there is no card', () => {
    expect(write(smallRulebook()).tree.children).toEqual([]);
  });
});
