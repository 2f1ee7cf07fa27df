import { describe, expect, it } from 'vitest';
import { fillTemplate } from '../../src/write/text/fill-template.js';

const fill = (source: string, view: object) => fillTemplate(new Map([['t', source]]), 't', view);

describe('templates', () => {
  it('make every string safe, with two braces or three', () => {
    expect(fill('{{a}} {{{a}}} {{b}}', { a: '*x*', b: { markdown: '*x*' } })).toBe('&#42;x&#42; &#42;x&#42; *x*');
  });

  it.each([
    '{{missing}}',
    '{{#if missing}}x{{/if}}',
    '{{#each missing}}x{{/each}}',
    '{{#each list}}{{missing}}{{/each}}',
    '{{#with inner}}{{missing}}{{/with}}',
    '{{> missing}}',
    '{{helper list}}',
  ])('fail on %s', (source) => {
    expect(() => fill(source, { list: [{ a: 1 }], inner: { a: 1 } })).toThrow(/missing|helper/);
  });

  it('fail on a template that does not exist', () => {
    expect(() => fillTemplate(new Map(), 'manual/manual', {})).toThrow('no template `manual/manual`');
  });
});
