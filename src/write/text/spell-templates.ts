import { dictionaryOf, untranslatedMark } from '../../link/dictionary.js';
import type { Rulebook } from '../../link/rulebook.js';
import { speller } from '../../link/spell.js';
import { mapTemplate, ownerOfTemplate, tokenPattern } from '../../link/template-texts.js';
import type { Templates } from './fill-template.js';

/**
 * Templates in the language of the rulebook, or as its region spells them. A line that nobody has translated stays in
 * English behind a mark.
 */
export function spellTemplates(
  templates: Templates,
  { translation, wording }: Pick<Rulebook, 'translation' | 'wording'>,
): Templates {
  const spell = speller(wording);
  if (translation === undefined) return new Map([...templates].map(([name, text]) => [name, spell(text)]));
  const dictionary = dictionaryOf(translation.templates);
  const say = (of: string, line: string): string => {
    const said = dictionary(of, line);
    return typeof said === 'string' ? said : marked(spell(line));
  };
  return new Map(
    [...templates].map(([name, text]) => [name, mapTemplate(text, (line) => say(ownerOfTemplate(name), line))] as const),
  );
}

const beforeWords = new RegExp(String.raw`^(?:${tokenPattern}|[^\p{L}])*`, 'u');

/** The mark stands before the first word, behind what lays out the line. */
function marked(line: string): string {
  return line.replace(beforeWords, (layout) => `${layout}${untranslatedMark}`);
}
