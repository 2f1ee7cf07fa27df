import type { LineCounter, Node, YAMLError, Document as YamlDocument } from 'yaml';
import type { Finding, Place } from './finding.js';
import { fields, lineStarts, type Outline, type Places, placesIn } from './places.js';
import { quoted } from './quoted.js';
import { yaml } from './yaml.js';

/** Largest file that is read, in bytes. */
export const largestFile = 500_000;
/** Deepest nesting of maps and lists. */
const deepest = 40;
/** Deepest nesting that is shown to the parser, which calls itself for each level. */
const deepestParsed = 400;
/** Most entries of one map or list. */
const mostEntries = 5000;

/** A parsed file that can tell where each part of it stands. */
export interface ParsedYaml extends Places {
  file: string;
  data: unknown;
  /** A plain value as it is written: `1.0`, `.inf`, `2026-02-30`. */
  written(path: readonly (string | number)[]): string | undefined;
  /** From which all places can be worked out again, together with the data and the text; absent where they could not. */
  outline?: Outline;
}

/**
 * Parses one YAML 1.2 document and refuses what a rules file never needs and an attacker might: aliases and anchors,
 * tags, directives, duplicate keys, keys that aren't text, `__proto__`, control characters, several documents in a file,
 * deep nesting, large files, and bytes that aren't UTF-8.
 */
export function parseYaml(file: string, bytes: Uint8Array): { parsed?: ParsedYaml; findings: Finding[] } {
  const start: Place = { file, line: 1, column: 1 };
  const refuse = (code: Finding['code'], message: string, help: string, place = start) => ({
    findings: [{ code, message, place, help }],
  });
  if (bytes.byteLength > largestFile) return { findings: [tooLarge(file, bytes.byteLength)] };
  const text = decode(bytes);
  if (text === undefined) return refuse('E102', 'the file is not UTF-8 text', 'save it again with the encoding UTF-8');
  const control = controlCharacter.exec(text);
  if (control !== null)
    return refuse('E102', `the file holds ${named(control[0])}`, 'take it out', placeIn(file, text, control.index));
  if (boundOfNesting(text) > deepestParsed) return refuse('E108', tooDeep, tooDeepHelp);

  const { isScalar, LineCounter, parseAllDocuments } = yaml();
  const lines = new LineCounter();
  const documents = parseAllDocuments(text, {
    lineCounter: lines,
    uniqueKeys: false,
    merge: false,
    prettyErrors: false,
    version: '1.2',
  });
  const placeOf = (offset: number): Place => {
    const { line, col } = lines.linePos(offset);
    return { file, line: Math.max(1, line), column: Math.max(1, col) };
  };
  const [document, second] = Array.isArray(documents) ? documents : [];
  if (document === undefined) return refuse('E109', 'the file holds no document', 'start it with `kind:`, or remove the file');
  const wrong = syntaxFinding(document, placeOf);
  if (wrong !== undefined) return { findings: [wrong] };
  if (second !== undefined)
    return refuse('E107', 'the file holds more than one document', 'put each into a file of its own', placeOf(second.range[0]));
  if (document.contents === null || (isScalar(document.contents) && document.contents.value === null))
    return refuse('E109', 'the file holds no document', 'start it with `kind:`, or remove the file');
  const findings = hostileFindings(document, placeOf);
  if (findings.length > 0) return { findings };
  return { parsed: locate(file, text, document, document.contents, lines, placeOf), findings: [] };
}

/** The finding for a file that has too many bytes. */
export function tooLarge(file: string, bytes: number): Finding {
  return {
    code: 'E101',
    message: `the file has ${bytes} bytes, more than the ${largestFile} that are read`,
    place: { file, line: 1, column: 1 },
    help: 'split it into several files',
  };
}

const tooDeep = `the file nests more than ${deepest} levels deep`;
const tooDeepHelp = 'no kind of document needs that';
const controlCharacter = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f]/;

function named(character: string): string {
  return `the control character U+${character.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')}`;
}

function placeIn(file: string, text: string, offset: number): Place {
  const before = text.slice(0, offset).split('\n');
  return { file, line: before.length, column: (before.at(-1)?.length ?? 0) + 1 };
}

/** The text of a file; nothing where its bytes are not UTF-8. */
export function decode(bytes: Uint8Array): string | undefined {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return undefined;
  }
}

/** An upper bound of the nesting, by indentation and open brackets, so that the parser never sees a tower of brackets. */
function boundOfNesting(text: string): number {
  let brackets = 0;
  let most = 0;
  for (const character of text) {
    if (character === '[' || character === '{') most = Math.max(most, ++brackets);
    else if (character === ']' || character === '}') brackets = Math.max(0, brackets - 1);
  }
  for (const line of text.split('\n')) most = Math.max(most, Math.ceil((/^[\s?:-]*/.exec(line)?.[0].length ?? 0) / 2));
  return most;
}

const inOurWords: Partial<Record<YAMLError['code'], [message: string, help: string]>> = {
  TAB_AS_INDENT: ['this line is indented with a tab', 'indent it with spaces'],
  BLOCK_AS_IMPLICIT_KEY: ['a second `: ` stands in this line', 'put quotes around the text that holds it'],
  BAD_INDENT: ['this line is not indented like the ones it belongs to', 'line it up with them'],
  MULTILINE_IMPLICIT_KEY: ['this is neither a key nor a value', 'is `: ` missing, or the indentation of the line below?'],
  BAD_SCALAR_START: ['no value starts with this character', 'put quotes around the value'],
  BAD_DQ_ESCAPE: ['there is no such escape in double quotes', 'use single quotes, or write `\\\\` for a backslash'],
  BAD_DIRECTIVE: ['directives such as `%YAML` are not read', 'take the line out'],
};

/** The first thing that is not YAML. What follows is mostly its echo. */
function syntaxFinding(document: YamlDocument, placeOf: (offset: number) => Place): Finding | undefined {
  const errors = [...document.errors, ...document.warnings].filter(({ code }) => code !== 'TAG_RESOLVE_FAILED');
  const first = errors.reduce<YAMLError | undefined>((a, b) => (a === undefined || b.pos[0] < a.pos[0] ? b : a), undefined);
  if (first === undefined) return undefined;
  const opening = first.code === 'MISSING_CHAR' ? openQuote(document, first.pos[0]) : undefined;
  if (opening !== undefined)
    return { code: 'E103', message: 'this quote is not closed', place: placeOf(opening), help: 'close it where the text ends' };
  const place = placeOf(first.pos[0]);
  const words = inOurWords[first.code];
  if (words !== undefined) return { code: 'E103', message: words[0], place, help: words[1] };
  const message = first.message.replace(/\s+/g, ' ').replace(/^[A-Z]/, (letter) => letter.toLowerCase());
  const help = 'check the indentation, colons, brackets and quotes on this line and the one above';
  return { code: 'E103', message: `this is not YAML: ${message}`, place, help };
}

/** Where the quote stands whose text ends at an offset, if there is one. */
function openQuote(document: YamlDocument, end: number): number | undefined {
  let opening: number | undefined;
  yaml().visit(document, {
    Scalar(_, { type, range }) {
      if ((type === 'QUOTE_DOUBLE' || type === 'QUOTE_SINGLE') && range && range[0] < end && range[1] >= end) opening = range[0];
    },
  });
  return opening;
}

function hostileFindings(document: YamlDocument, placeOf: (offset: number) => Place): Finding[] {
  const { isAlias, isCollection, isMap, isNode, isScalar, visit } = yaml();
  const findings: Finding[] = [];
  const add = (code: Finding['code'], message: string, help: string, offset: number | undefined) =>
    findings.push({ code, message, place: placeOf(offset ?? 0), help });
  if (document.directives?.yaml.explicit === true || Object.keys(document.directives?.tags ?? {}).length > 1)
    add('E105', 'directives such as `%YAML` are not read', 'take the line out', 0);
  const labels = new Set<string>();
  visit(document, {
    Node(_, node, path) {
      const offset = node.range?.[0];
      const label = isAlias(node) ? node.source : node.anchor;
      if (label !== undefined && labels.has(label)) return undefined;
      if (label !== undefined) labels.add(label);
      if (isAlias(node)) add('E106', `aliases such as ${quoted(`*${node.source}`)} are not read`, 'write the value out', offset);
      else if (node.anchor !== undefined)
        add('E106', `anchors such as ${quoted(`&${node.anchor}`)} are not read`, 'write the value out', offset);
      if (!isAlias(node) && node.tag !== undefined)
        add('E105', 'tags such as `!name` are not read', 'write the plain value', offset);
      if (isScalar(node) && typeof node.value === 'string') {
        const control = controlCharacter.exec(node.value);
        if (control !== null) add('E102', `this text holds ${named(control[0])}`, 'take it out', offset);
      }
      if (!isCollection(node)) return undefined;
      if (node.items.length > mostEntries)
        add(
          'E101',
          `this ${isMap(node) ? 'map' : 'list'} has ${node.items.length} entries, more than the ${mostEntries} that are read`,
          'split it',
          offset,
        );
      if (isMap(node)) duplicateKeys(node.items, placeOf, findings);
      if (path.filter(isCollection).length < deepest) return undefined;
      add('E108', tooDeep, tooDeepHelp, offset);
      return visit.SKIP;
    },
    Pair(_, pair) {
      const key = isScalar(pair.key) ? pair.key.value : undefined;
      const offset = isNode(pair.key) ? pair.key.range?.[0] : undefined;
      if (typeof key !== 'string') add('E110', 'this key is not text', 'put quotes around it', offset);
      else if (['__proto__', 'constructor', 'prototype'].includes(key))
        add('E110', `the key \`${key}\` is not allowed`, 'choose another name', offset);
    },
  });
  return findings;
}

function duplicateKeys(items: readonly { key: unknown }[], placeOf: (offset: number) => Place, findings: Finding[]): void {
  const first = new Map<unknown, number>();
  for (const { key } of items) {
    if (!yaml().isScalar(key)) continue;
    const [offset, earlier] = [key.range?.[0] ?? 0, first.get(key.value)];
    if (earlier === undefined) first.set(key.value, offset);
    else
      findings.push({
        code: 'E104',
        message: `the key ${quoted(String(key.value))} stands twice in the same map`,
        place: placeOf(offset),
        help: `the first one stands on line ${placeOf(earlier).line}; keep one of the two`,
      });
  }
}

function locate(
  file: string,
  text: string,
  document: YamlDocument,
  contents: Node,
  lines: LineCounter,
  placeOf: (offset: number) => Place,
): ParsedYaml {
  const data = document.toJS({ maxAliasCount: 0 }) as unknown;
  const outline = outlineOf(contents, data);
  const starts = lineStarts(text);
  const isPlain = starts.length === lines.lineStarts.length && starts.every((start, index) => start === lines.lineStarts[index]);
  return {
    file,
    data,
    ...placesIn(data, outline, () => ({ text, placeOf })),
    written: (path) => {
      const node = path.reduce<Node | undefined>(childOf, contents);
      return yaml().isScalar(node) ? node.source : undefined;
    },
    ...(isPlain && { outline }),
  };
}

/** The outline of parsed YAML and the plain data made of it. */
function outlineOf(contents: Node, data: unknown): Outline {
  const { isMap, isNode, isScalar, isSeq } = yaml();
  const numbers: number[] = [];
  const add = (node: unknown, value: unknown, keyAt: number): void => {
    const here = numbers.length;
    const range = isNode(node) ? node.range : undefined;
    numbers.push(range?.[0] ?? -1, range?.[1] ?? -1, keyAt, 1);
    if (isSeq(node) && Array.isArray(value)) value.forEach((each, index) => add(node.items[index], each, -1));
    else if (isMap(node) && isRecord(value)) {
      const pairs = new Map(node.items.map((pair) => [isScalar(pair.key) ? pair.key.value : undefined, pair]));
      for (const [name, each] of Object.entries(value)) {
        const pair = pairs.get(name);
        add(pair?.value, each, (isNode(pair?.key) ? pair.key.range?.[0] : undefined) ?? -1);
      }
    }
    numbers[here + fields - 1] = (numbers.length - here) / fields;
  };
  add(contents, data, -1);
  return Int32Array.from(numbers);
}

function childOf(node: Node | undefined, part: string | number): Node | undefined {
  const { isMap, isNode, isScalar, isSeq } = yaml();
  const child: unknown = isSeq(node)
    ? node.items[Number(part)]
    : isMap(node)
      ? node.items.find(({ key }) => isScalar(key) && key.value === String(part))?.value
      : undefined;
  return isNode(child) ? child : undefined;
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return value !== null && typeof value === 'object' && !Array.isArray(value);
}
