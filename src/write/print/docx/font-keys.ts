import { strFromU8, strToU8 } from 'fflate';

const [table, relationships] = ['word/fontTable.xml', 'word/_rels/fontTable.xml.rels'] as const;

/** Embedded fonts are veiled with a key. Gives each one a key of its own that is always the same, in place. */
export function fixFontKeys(parts: Record<string, Uint8Array>): void {
  const [fonts, list] = [parts[table], parts[relationships]];
  if (fonts === undefined || list === undefined) return;
  const files = filesOf(strFromU8(list));
  let count = 0;
  const fixed = strFromU8(fonts).replace(/r:id="([^"]+)" w:fontKey="(\{[^}]+\})"/g, (_, id: string, old: string) => {
    count += 1;
    const key = `{00000000-0000-4000-8000-${count.toString(16).toUpperCase().padStart(12, '0')}}`;
    const file = files.get(id) ?? '';
    const bytes = parts[file];
    if (bytes === undefined) throw new RangeError(`no font file for the relationship ${id}`);
    parts[file] = veil(veil(bytes, old), key);
    return `r:id="${id}" w:fontKey="${key}"`;
  });
  parts[table] = strToU8(fixed);
}

/** The files that relationships lead to, by their id. */
function filesOf(list: string): Map<string, string> {
  return new Map(
    [...list.matchAll(/<Relationship\b[^>]*>/g)].map(([tag]) => {
      const value = (name: string) => new RegExp(`\\b${name}="([^"]*)"`).exec(tag)?.[1] ?? '';
      return [value('Id'), `word/${value('Target').replace(/^\/?(?:word\/)?/, '')}`];
    }),
  );
}

/** The first 32 bytes are combined with the key, read backwards. Done twice, it is undone. */
function veil(bytes: Uint8Array, key: string): Uint8Array {
  const secret = (key.replace(/[{}-]/g, '').match(/../g) ?? []).map((pair) => Number.parseInt(pair, 16)).reverse();
  return bytes.map((byte, index) => (index < 32 ? byte ^ (secret[index % 16] ?? 0) : byte));
}
