import { describe, expect, it } from 'vitest';
import { speller } from '../../src/link/spell.js';

const spell = speller({
  sterilizer: 'steriliser',
  color: 'colour',
  'boil-water notice': 'boil-water alert',
  'infection control lead': 'IPAC lead',
  lead: 'head',
});

describe('spelling', () => {
  it.each([
    ['The sterilizer is on.', 'The steriliser is on.'],
    ['Sterilizer 1, STERILIZER', 'Steriliser 1, STERILISER'],
    ['color-coded, colorless, discolor', 'colour-coded, colorless, discolor'],
    ['After a boil-water notice, flush.', 'After a boil-water alert, flush.'],
    ['Ask the infection control lead, or a lead.', 'Ask the IPAC lead, or a head.'],
    ['See [](machine:steam-sterilizer) and [](term:color).', 'See [](machine:steam-sterilizer) and [](term:color).'],
    ['{{#if sterilizer}}sterilizer{{/if}}', '{{#if sterilizer}}steriliser{{/if}}'],
    ['steam-sterilizer', 'steam-sterilizer'],
  ])('%s', (text, spelt) => {
    expect(spell(text)).toBe(spelt);
  });

  it('changes nothing without words', () => {
    expect(speller({})('The sterilizer is on.')).toBe('The sterilizer is on.');
  });
});
