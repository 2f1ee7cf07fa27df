import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { largestFile, type ParsedYaml, parseYaml } from '../../src/read/parse-yaml.js';

const parseText = (text: string) => parseYaml('file.yaml', new TextEncoder().encode(text));

function sound(text: string): ParsedYaml {
  const { parsed, findings } = parseText(text);
  if (parsed === undefined) throw new Error(findings.map(({ message }) => message).join('; '));
  return parsed;
}

describe('places', () => {
  const text = 'kind: terms\nlist:\n  - { "1": a, b: 1.50 }\n  -\nlong: >-\n  one two\n  three [](limit:x) four\n';
  const { at, atKey, atWords, written } = sound(text);
  const shown = ({ line, column }: { line: number; column: number }) => `${line}:${column}`;

  it('are those of values, of keys, and of words in a text', () => {
    expect(shown(at(['kind']))).toBe('1:7');
    expect(shown(at(['list', 0, 'b']))).toBe('3:18');
    expect(shown(atKey(['list', 0, 'b']))).toBe('3:15');
    expect(shown(at(['list', 0, 1]))).toBe('3:12');
    expect(shown(atWords(['long'], '[](limit:x)'))).toBe('7:9');
  });

  it('of what is not there are those of the nearest part that is', () => {
    expect(shown(at(['list', 0, 'c', 'd']))).toBe('3:5');
    expect(shown(atKey(['list', 7]))).toBe('3:3');
    expect(shown(atWords(['kind'], 'x'))).toBe('1:7');
    expect(shown(at(['nothing']))).toBe('1:1');
  });

  it('give a plain value as it is written', () => {
    expect(written(['list', 0, 'b'])).toBe('1.50');
    expect(written(['list'])).toBeUndefined();
  });
});

describe('what is read', () => {
  it('is YAML 1.2: yes is a word, a date is a text', () => {
    expect(sound('a: yes\nb: 2026-02-03\nc: 0o17\nd: 1_000\n').data).toEqual({ a: 'yes', b: '2026-02-03', c: 15, d: '1_000' });
  });

  it('may end its lines as on Windows and start with a byte order mark', () => {
    expect(sound('\u{feff}a: >-\r\n  b\r\n  c\r\n').data).toEqual({ a: 'b c' });
  });

  it('may be as large as the limit and no larger', () => {
    const text = (size: number) => `a: "${'x'.repeat(size - 6)}"\n`;
    expect(parseText(text(largestFile)).findings).toEqual([]);
    expect(parseText(text(largestFile + 1)).findings.map(({ code }) => code)).toEqual(['E101']);
  });

  it('may hold brackets in its texts', () => {
    expect(parseText(`a: ${'"[" '.repeat(1)}\nb: |\n${'  [[[[\n'.repeat(20)}`).findings).toEqual([]);
  });
});

describe('whatever is given', () => {
  const size = largestFile - 20;
  const fill = (part: string) => part.repeat(Math.floor(size / part.length));

  it.each([
    ['many keys', Array.from({ length: 40_000 }, (_, number) => `a${number}:`).join('\n')],
    ['many aliases', `a: &a b\nc: [${fill('*a,')}]`],
    ['many closing brackets', fill('}')],
    ['many documents', fill('---\n')],
    ['many directives', `${fill('%A b\n')}---\na: b`],
    ['many anchors', fill('&a ')],
    ['a tower of question marks', fill('? ')],
    ['a tower of dashes', fill('- ')],
    ['a tower of brackets', fill('[')],
    ['a tower of maps', Array.from({ length: 900 }, (_, depth) => `${' '.repeat(depth)}a:`).join('\n')],
  ])('%s: refused, and soon', { timeout: 30_000 }, (_, text) => {
    expect(parseText(text).findings.length).toBeGreaterThan(0);
  });

  const fragment = fc.constantFrom(
    ...[
      'a: ',
      'kind: terms\n',
      '- ',
      '  ',
      '\n',
      '\t',
      '{',
      '}',
      '[',
      ']',
      ',',
      ': ',
      '? ',
      '"',
      "'",
      '|',
      '>-',
      '#',
      '&a ',
      '*a',
    ],
    ...[
      '!!str ',
      '!x ',
      '%YAML 1.1\n',
      '---\n',
      '...\n',
      '<<: ',
      '__proto__: ',
      '\r\n',
      '\0',
      '\u{feff}',
      '\u{1b}',
      '1e3',
      '.inf',
      '~',
      'null',
    ],
  );
  const text = fc.oneof(
    fc.array(fragment, { maxLength: 40 }).map((parts) => parts.join('')),
    fc.string({ unit: 'binary' }),
  );

  it('there is either a document or a finding, each in the file', () => {
    fc.assert(
      fc.property(text, (each) => {
        const { parsed, findings } = parseText(each);
        expect(parsed === undefined).toBe(findings.length > 0);
        const lines = each.split('\n');
        for (const { place, message } of findings) {
          expect(place.line).toBeLessThanOrEqual(lines.length);
          expect(message).not.toMatch(/\n|undefined/);
        }
      }),
      { numRuns: 1500 },
    );
  });

  it('bytes of any kind do not matter', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 200 }), (bytes) => {
        const { parsed, findings } = parseYaml('file.yaml', bytes);
        expect(parsed === undefined).toBe(findings.length > 0);
      }),
    );
  });
});
