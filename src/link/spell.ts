import type { Located } from '../read/read-documents.js';
import type { Layer } from './linking.js';
import { mapTexts } from './texts.js';

/** Words as one pack writes them, in lower case, and as a region writes them. */
export type Wording = Readonly<Record<string, string>>;

/** The words that the `wording` documents of all layers change; a later layer wins. */
export function wordingOf(layers: readonly Layer[]): Wording {
  return Object.assign(
    {},
    ...layers.flatMap(({ documents }) => documents.map(({ data }) => (data.kind === 'wording' ? data.words : {}))),
  );
}

/**
 * Writes the texts of each layer as the layers above it do: with the words of their `wording` documents, and with the
 * names that they give to roles.
 */
export function spellLayers<L extends Layer>(layers: readonly L[]): L[] {
  return layers.map((layer, index) => {
    const above = layers.slice(index + 1);
    return spellLayer(layer, { ...wordingOf(above), ...renamedRoles(layers, above) });
  });
}

/** As `spellLayers`, with the names of roles alone. */
export function spellRoles<L extends Layer>(layers: readonly L[]): L[] {
  return layers.map((layer, index) => spellLayer(layer, renamedRoles(layers, layers.slice(index + 1))));
}

/** The names of roles as they are first given, in lower case, and as the layers above rename them. */
function renamedRoles(layers: readonly Layer[], above: readonly Layer[]): Wording {
  const words: Record<string, string> = {};
  for (const { data } of above.flatMap(({ documents }) => documents))
    for (const change of data.kind === 'overrides' ? data.changes : []) {
      if (change.change !== 'term') continue;
      const term = termOf(layers, change.term);
      if (term?.domain !== 'role') continue;
      words[term.label.toLowerCase()] = change.label;
      if (term.plural !== undefined && change.plural !== undefined) words[term.plural.toLowerCase()] = change.plural;
    }
  return words;
}

function termOf(layers: readonly Layer[], id: string) {
  for (const { data } of layers.flatMap(({ documents }) => documents))
    if (data.kind === 'terms' && Object.hasOwn(data.terms, id)) return data.terms[id];
  return undefined;
}

function spellLayer<L extends Layer>(layer: L, words: Wording): L {
  if (Object.keys(words).length === 0) return layer;
  const spell = speller(words);
  return { ...layer, documents: layer.documents.map((each) => ({ ...each, data: spellDocument(each.data, spell) })) };
}

function spellDocument(data: Located['data'], spell: (text: string) => string): Located['data'] {
  if (data.kind === 'sources') return data;
  return mapTexts(data, (words) => {
    if (typeof words === 'string') return spell(words);
    return { ...mapValues(words, spell), other: spell(words.other) };
  });
}

function mapValues(forms: Readonly<Record<string, string>>, change: (text: string) => string): Record<string, string> {
  return Object.fromEntries(Object.entries(forms).map(([form, text]) => [form, change(text)]));
}

/**
 * Spells a text: whole words, with their case, outside of references such as `[](limit:id)` and of `{{expressions}}` of
 * a template.
 */
export function speller(words: Wording): (text: string) => string {
  const known = Object.keys(words);
  if (known.length === 0) return (text) => text;
  const longestFirst = known.sort((a, b) => b.length - a.length);
  const pattern = new RegExp(
    `\\]\\([^)]*\\)|\\{\\{[^}]*\\}\\}|(?<![\\p{L}\\p{N}-])(?:${longestFirst.map(escapeForRegExp).join('|')})(?![\\p{L}\\p{N}])`,
    'giu',
  );
  return (text) =>
    text.replace(pattern, (found) => {
      const spelt = words[found.toLowerCase()];
      return spelt === undefined ? found : inCaseOf(found, spelt);
    });
}

function inCaseOf(found: string, spelt: string): string {
  if (found === found.toLowerCase()) return spelt;
  if (found === found.toUpperCase() && found.length > 1) return spelt.toUpperCase();
  return spelt.slice(0, 1).toUpperCase() + spelt.slice(1);
}

function escapeForRegExp(word: string): string {
  return word.replace(/[.*+?^${}()|[\]\\/]/g, String.raw`\$&`);
}
