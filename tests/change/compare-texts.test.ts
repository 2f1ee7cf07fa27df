import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compareTexts } from '../../src/change/compare-texts.js';
import type { FrozenText } from '../../src/change/frozen-text.js';
import { redlineWords } from '../../src/change/redline-words.js';

type Blocks = readonly (readonly [key: string, text: string])[];

function textOf(sections: Record<string, { number?: string; title?: string; blocks: Blocks }>): FrozenText {
  return {
    format: 'clinic-rulebook/text/1',
    version: '1.0',
    sections: Object.entries(sections).map(([id, { number = '1', title = id, blocks }]) => ({
      id,
      number,
      title,
      blocks: blocks.map(([key, text]) => ({ key, text, unnumbered: text.replace(/ \(\d+\)/g, '') })),
    })),
  };
}

const fates = (before: Blocks, after: Blocks) =>
  compareTexts(textOf({ a: { blocks: before } }), textOf({ a: { blocks: after } })).flatMap(({ blocks }) =>
    blocks.map(({ key, fate }) => `${fate} ${key}`),
  );

describe('the texts of two manuals', () => {
  it('are the same where no word differs', () => {
    const text = textOf({ a: { blocks: [['step:x', 'Rinse.']] } });
    expect(compareTexts(text, text).map(({ fate }) => fate)).toEqual(['same']);
  });

  it('show a reworded block under its id, and only that', () => {
    const before = [
      ['step:x', 'Rinse.'],
      ['step:y', 'Dry.'],
    ] as const;
    expect(fates(before, [before[0], ['step:y', 'Dry it well.']])).toEqual(['same step:x', 'reworded step:y']);
  });

  it('show a block that moved within its section as moved, not as deleted and inserted', () => {
    const [x, y, z] = [['step:x', 'Rinse.'] as const, ['step:y', 'Dry.'] as const, ['step:z', 'Look.'] as const];
    expect(fates([x, y, z], [y, z, x])).toEqual(['same step:y', 'same step:z', 'moved step:x']);
  });

  it('show a block that moved to another section there, and where it went', () => {
    const changes = compareTexts(
      textOf({ a: { blocks: [['step:x', 'Rinse.']] }, b: { number: '2', blocks: [['step:y', 'Dry.']] } }),
      textOf({
        a: { blocks: [] },
        b: {
          number: '2',
          blocks: [
            ['step:y', 'Dry.'],
            ['step:x', 'Rinse.'],
          ],
        },
      }),
    );
    expect(changes.map(({ fate }) => fate)).toEqual(['moved', 'moved']);
    expect(changes[0]?.blocks).toEqual([{ key: 'step:x', fate: 'moved-away', before: 'Rinse.', section: 'b' }]);
    expect(changes[1]?.blocks[1]).toEqual({ key: 'step:x', fate: 'moved', after: 'Rinse.', section: 'a' });
  });

  it('tell numbers of sections from words', () => {
    expect(fates([['step:x', 'See Storage (9).']], [['step:x', 'See Storage (10).']])).toEqual(['renumbered step:x']);
    const [section] = compareTexts(
      textOf({ a: { number: '4', blocks: [['step:x', 'Rinse.']] } }),
      textOf({ a: { number: '5', blocks: [['step:x', 'Rinse.']] } }),
    );
    expect(section?.fate).toBe('renumbered');
  });

  it('do not shift what has no id when something is put in front of it', () => {
    const before = [
      ['paragraph-1', 'One.'],
      ['paragraph-2', 'Two.'],
    ] as const;
    const after = [
      ['paragraph-1', 'Zero.'],
      ['paragraph-2', 'One.'],
      ['paragraph-3', 'Two.'],
    ] as const;
    expect(fates(before, after)).toEqual(['inserted paragraph-1', 'same paragraph-2', 'same paragraph-3']);
    expect(fates(after, before)).toEqual(['deleted paragraph-1-before', 'same paragraph-1', 'same paragraph-2']);
  });

  it('say which sections are new and which are gone', () => {
    const changes = compareTexts(
      textOf({ a: { blocks: [] }, b: { blocks: [] } }),
      textOf({ b: { blocks: [] }, c: { blocks: [] } }),
    );
    expect(changes.map(({ id, fate }) => `${fate} ${id}`)).toEqual(['gone a', 'same b', 'new c']);
  });

  it('lose no block and no word, whatever changed', () => {
    const blocks = fc.uniqueArray(
      fc.tuple(
        fc.constantFrom('step:a', 'step:b', 'step:c', 'row-1', 'row-2', 'row-3'),
        fc.constantFrom('One.', 'Two.', 'Three.'),
      ),
      { selector: ([key]) => key },
    );
    fc.assert(
      fc.property(blocks, blocks, blocks, blocks, (a1, b1, a2, b2) => {
        const changes = compareTexts(
          textOf({ a: { blocks: a1 }, b: { blocks: b1 } }),
          textOf({ a: { blocks: a2 }, b: { blocks: b2 } }),
        );
        for (const [id, before, after] of [
          ['a', a1, a2],
          ['b', b1, b2],
        ] as const) {
          const own = changes.find((each) => each.id === id)?.blocks ?? [];
          const side = (which: 'before' | 'after') => own.flatMap((each) => each[which] ?? []).sort();
          expect(side('after')).toEqual(after.map(([, text]) => text).sort());
          expect(side('before')).toEqual(before.map(([, text]) => text).sort());
          // The order of the new manual is kept.
          expect(own.flatMap(({ after: text }) => text ?? [])).toEqual(after.map(([, text]) => text));
        }
      }),
    );
  });
});

describe('a redline', () => {
  it('marks the words that differ', () => {
    expect(redlineWords('Dry for 8 minutes, then look.', 'Dry for 6 minutes, then look.')).toEqual([
      { what: 'kept', text: 'Dry for ' },
      { what: 'deleted', text: '8' },
      { what: 'inserted', text: '6' },
      { what: 'kept', text: ' minutes, then look.' },
    ]);
  });

  it('puts the new text whole behind the old one where little is kept', () => {
    expect(redlineWords('Rinse the tray.', 'Call the owner.').map(({ what }) => what)).toEqual(['deleted', 'inserted']);
  });

  it('holds both texts in full', () => {
    fc.assert(
      fc.property(fc.string(), fc.string(), (before, after) => {
        const pieces = redlineWords(before, after);
        const without = (what: 'inserted' | 'deleted') =>
          pieces
            .filter((piece) => piece.what !== what)
            .map(({ text }) => text)
            .join('');
        expect(without('deleted')).toBe(after);
        expect(without('inserted')).toBe(before);
      }),
    );
  });
});
