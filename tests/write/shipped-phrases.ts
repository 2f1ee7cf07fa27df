import { readFileSync } from 'node:fs';
import { parse } from 'yaml';
import type { Phrase } from '../../src/link/rulebook.js';

/** The phrases of the base pack. */
export function shippedPhrases(): Record<string, Phrase> {
  const file = new URL('../../rules/base/vocabulary/phrases.yaml', import.meta.url);
  const { phrases = {}, counted = {} } = parse(readFileSync(file, 'utf8')) as {
    phrases?: Record<string, string>;
    counted?: Record<string, Phrase>;
  };
  return { ...phrases, ...counted };
}
