const old = { family: 'Source Sans 3', postScript: 'SourceSans3' };

/** Names that a font goes by. The copyright, the trademark and the licence keep their words. */
const calls = new Set([1, 3, 4, 6, 16, 18]);

/**
 * A TrueType font under another family name. A subset is a modified font, and the licence of Source Sans reserves its name
 * for the original.
 *
 * @param bytes the font, with one name table.
 * @param family the new name: `Rulebook Sans`.
 * @returns the font with a new name table behind its last byte; checksums stay as they were, for the subsetter makes them anew.
 */
export function renameFont(bytes: Uint8Array, family: string): Uint8Array {
  const font = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const entry = findTable(font, 'name');
  const names = renamed(readNames(font, font.getUint32(entry + 8)), family);
  const table = writeNames(names);
  const start = Math.ceil(bytes.length / 4) * 4;
  const result = new Uint8Array(start + table.length);
  result.set(bytes);
  result.set(table, start);
  const view = new DataView(result.buffer);
  view.setUint32(entry + 8, start);
  view.setUint32(entry + 12, table.length);
  return result;
}

interface Name {
  /** Platform, encoding, language and kind. */
  key: readonly [number, number, number, number];
  text: string;
}

function findTable(font: DataView, tag: string): number {
  for (let index = 0; index < font.getUint16(4); index++) {
    const entry = 12 + 16 * index;
    if ([0, 1, 2, 3].every((i) => font.getUint8(entry + i) === tag.charCodeAt(i))) return entry;
  }
  throw new RangeError(`a font without a table \`${tag}\``);
}

/** The names in UTF-16, which every font of today has. */
function readNames(font: DataView, table: number): Name[] {
  const texts = table + font.getUint16(table + 4);
  return Array.from({ length: font.getUint16(table + 2) }, (_, index): Name => {
    const at = (field: number) => font.getUint16(table + 6 + 12 * index + 2 * field);
    const signs = Array.from({ length: at(4) / 2 }, (_, i) => font.getUint16(texts + at(5) + 2 * i));
    return { key: [at(0), at(1), at(2), at(3)], text: String.fromCharCode(...signs) };
  }).filter(({ key: [platform] }) => platform === 3);
}

function renamed(names: readonly Name[], family: string): Name[] {
  const postScript = family.replaceAll(' ', '');
  return names.map(({ key, text }) => ({
    key,
    text: calls.has(key[3]) ? text.replaceAll(old.family, family).replaceAll(old.postScript, postScript) : text,
  }));
}

function writeNames(names: readonly Name[]): Uint8Array {
  const head = 6 + 12 * names.length;
  const table = new DataView(new ArrayBuffer(head + names.reduce((sum, { text }) => sum + 2 * text.length, 0)));
  table.setUint16(2, names.length);
  table.setUint16(4, head);
  let offset = 0;
  for (const [index, { key, text }] of names.entries()) {
    for (const [field, value] of [...key, 2 * text.length, offset].entries()) table.setUint16(6 + 12 * index + 2 * field, value);
    for (let i = 0; i < text.length; i++) table.setUint16(head + offset + 2 * i, text.charCodeAt(i));
    offset += 2 * text.length;
  }
  return new Uint8Array(table.buffer);
}
