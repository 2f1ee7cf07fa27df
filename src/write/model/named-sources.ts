import { phrase, type Spoken } from '../text/phrase.js';

const phraseOfSource: Readonly<Record<string, string>> = {
  'common-practice': 'cite.practice',
  maker: 'cite.maker',
  clinic: 'cite.clinic',
};

/** How a source that is no publication is named in a citation; nothing for one that is. */
export function nameOfSource(rulebook: Spoken, id: string): string | undefined {
  const name = phraseOfSource[id];
  return name === undefined ? undefined : phrase(rulebook, name);
}
