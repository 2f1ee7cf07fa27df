import fc from 'fast-check';
import type { Nodes } from 'mdast';
import { toString as textOf } from 'mdast-util-to-string';
import { describe, expect, it } from 'vitest';
import { tidy } from '../../src/write/text/markdown.js';
import { markdownSafe, ruleText, saidText } from '../../src/write/text/markdown-safe.js';
import { parseMarkdown } from '../../src/write/tree/dialect.js';

/** Every place in which a template puts a text. */
const contexts = [
  (x: string) => x,
  (x: string) => `# ${x}`,
  (x: string) => `- ${x}\n- two`,
  (x: string) => `1. ${x}`,
  (x: string) => `**${x}**`,
  (x: string) => `| ${x} | b |\n| --- | --- |\n| c | ${x} |`,
  (x: string) => `:::caution\n${x}\n:::`,
  (x: string) => `::::sheet\n:::table{look="x"}\n| ${x} |\n| --- |\n:::\n::::`,
  (x: string) => `[${x}](said:clinic)`,
];

/** The tree without its words: types, depths and places to go. */
function shapeOf(node: Nodes): unknown {
  const kind = [
    node.type,
    'depth' in node ? node.depth : '',
    'name' in node ? node.name : '',
    'url' in node ? node.url : '',
  ].join(' ');
  return 'children' in node ? [kind, ...node.children.map(shapeOf)] : kind;
}

const nasty = fc.oneof(
  fc.string({ unit: 'grapheme', minLength: 1, maxLength: 40 }),
  fc.string({ unit: 'binary', minLength: 1, maxLength: 40 }),
  fc
    .array(
      fc.constantFrom(
        '*',
        '_',
        '`',
        '<b>',
        '</style>',
        '|',
        ':::',
        '::',
        '#',
        '- ',
        '1. ',
        '[',
        '](',
        ')',
        '![',
        '&',
        '&#42;',
        '\n',
        '\\',
        '{',
        '}}',
        '{{x}}',
        '~~~',
        '[^1]',
        '[ ]',
        'www.a.b',
        'a@b.co',
        'http://x',
        ':',
        '10:30',
        '=',
        '$&',
        '§',
        '[](limit:a)x',
      ),
      { minLength: 1, maxLength: 12 },
    )
    .map((parts) => parts.join('')),
);

describe('text made safe', () => {
  it('never changes the shape of the tree, and reads as what was written', () => {
    fc.assert(
      fc.property(nasty, fc.constantFrom(...contexts), (text, context) => {
        const safe = markdownSafe(text);
        fc.pre(safe !== '');
        const tree = parseMarkdown(context(safe));
        expect(shapeOf(tree)).toEqual(shapeOf(parseMarkdown(context('word'))));
        expect(textOf(parseMarkdown(safe))).toBe(tidy(text).trim());
      }),
      { numRuns: 1500 },
    );
  });

  it('keeps only references of what the clinic says', () => {
    fc.assert(
      fc.property(nasty, (text) => {
        const tree = parseMarkdown(`| ${saidText(text.replaceAll('[](limit:a)', ''), 'clinic').markdown} |\n| --- |`);
        expect(tree.children.map(({ type }) => type)).toEqual(['table']);
        expect(JSON.stringify(shapeOf(tree))).not.toMatch(/html|image|emphasis|strong|code|delete|footnote|Directive|limit/);
      }),
      { numRuns: 500 },
    );
  });

  it.each([
    ['<script>alert(1)</script>', '<script>alert(1)</script>'],
    ['a | b', 'a | b'],
    ['two\nlines', 'two lines'],
    ['1. not a list', '1. not a list'],
    ['10:30, 1:20 and *that*', '10:30, 1:20 and *that*'],
  ])('prints %j as it is', (text, printed) => {
    expect(textOf(parseMarkdown(markdownSafe(text)))).toBe(printed);
  });
});

describe('texts of the rules', () => {
  it('keep references and emphasis, and nothing else', () => {
    const tree = parseMarkdown(ruleText('Within [](limit:a.b), *slowly*, **never** <b>fast</b> [x](y) a*b').markdown);
    expect(JSON.stringify(shapeOf(tree))).toBe(
      '["root   ",["paragraph   ","text   ",["link   limit:a.b"],"text   ",["emphasis   ","text   "],"text   ",["strong   ","text   "],"text   "]]',
    );
    expect(textOf(tree)).toBe('Within , slowly, never <b>fast</b> [x](y) a*b');
  });

  it('do not reach the inner schemes', () => {
    expect(textOf(parseMarkdown(saidText('[](id:rule:x)[](said:me)', 'clinic').markdown))).toBe('[](id:rule:x)[](said:me)');
  });
});
