import fc from 'fast-check';
import { expect, it } from 'vitest';
import { quoted, quotedList } from '../../src/read/quoted.js';

it.each([
  ['steel', '`steel`'],
  ['two\n  lines', '`two lines`'],
  ['rub\bout', '`rub\u{fffd}out`'],
  ['x'.repeat(80), `\`${'x'.repeat(80)}\``],
  ['x'.repeat(81), `\`${'x'.repeat(79)}…\``],
])('%j is shown as %s', (words, shown) => {
  expect(quoted(words)).toBe(shown);
});

it('fits on a line, whatever was written', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'binary', maxLength: 500 }), (words) => {
      const shown = quoted(words);
      expect(shown).not.toMatch(/[\n\r]|\p{Cc}/u);
      expect(shown.length).toBeLessThanOrEqual(82);
    }),
  );
});

it('lists names with commas between', () => {
  expect(quotedList(['a', 'b'])).toBe('`a`, `b`');
});
