import { readdirSync, readFileSync } from 'node:fs';
import { parse } from 'yaml';
import type { Phrase } from '../../src/link/rulebook.js';

/** The phrases of the base pack. */
export function shippedPhrases(): Record<string, Phrase> {
  const folder = new URL('../../rules/base/vocabulary/', import.meta.url);
  const files = readdirSync(folder).filter((name) => name.startsWith('phrases'));
  return Object.assign({}, ...files.map((name) => phrasesIn(new URL(name, folder))));
}

function phrasesIn(file: URL): Record<string, Phrase> {
  const { phrases = {}, counted = {} } = parse(readFileSync(file, 'utf8')) as {
    phrases?: Record<string, string>;
    counted?: Record<string, Phrase>;
  };
  return { ...phrases, ...counted };
}
