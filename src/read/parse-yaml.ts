import { isAlias, isMap, isNode, isScalar, LineCounter, parseAllDocuments, visit, type Document as YamlDocument } from 'yaml';
import type { Finding, Place } from './finding.js';

/** Largest file that is read, in bytes. */
export const largestFile = 1_000_000;
/** Deepest nesting of maps and lists. */
const deepest = 40;

/** A parsed file that can tell where each part of it stands. */
export interface ParsedYaml {
  file: string;
  data: unknown;
  /** Where the value at a path stands, or the nearest part above it that exists. */
  at(path: readonly (string | number)[]): Place;
  /** Where the key at the end of a path stands. */
  atKey(path: readonly (string | number)[]): Place;
}

/**
 * Parses one YAML 1.2 document and refuses what a rules file never needs and an attacker might: aliases and anchors,
 * tags, duplicate keys, keys that aren't text, `__proto__`, several documents in a file, deep nesting, large files, and
 * bytes that aren't UTF-8.
 */
export function parseYaml(file: string, bytes: Uint8Array): { parsed?: ParsedYaml; findings: Finding[] } {
  const start: Place = { file, line: 1, column: 1 };
  const refuse = (code: Finding['code'], message: string, help: string, place = start) => ({
    findings: [{ code, message, place, help }],
  });
  if (bytes.byteLength > largestFile)
    return refuse(
      'E101',
      `the file has ${bytes.byteLength} bytes, more than the ${largestFile} that are read`,
      'split it into several files',
    );
  const text = decode(bytes);
  if (text === undefined) return refuse('E102', 'the file is not UTF-8 text', 'save it again with the encoding UTF-8');
  if (nestingOf(text) > deepest)
    return refuse('E108', `the file nests more than ${deepest} levels deep`, 'no kind of document needs that');

  const lines = new LineCounter();
  const documents = parseAllDocuments(text, {
    lineCounter: lines,
    uniqueKeys: true,
    merge: false,
    prettyErrors: false,
    version: '1.2',
  });
  const placeOf = (offset: number): Place => {
    const { line, col } = lines.linePos(offset);
    return { file, line: Math.max(1, line), column: Math.max(1, col) };
  };
  const [document, second] = Array.isArray(documents) ? documents : [];
  if (document === undefined || document.contents === null || (isScalar(document.contents) && document.contents.value === null))
    return refuse('E109', 'the file holds no document', 'start it with `kind:`, or remove the file');
  if (second !== undefined)
    return refuse(
      'E107',
      'the file holds more than one document',
      'put each into a file of its own',
      placeOf(second.range?.[0] ?? 0),
    );
  const findings = [...syntaxFindings(document, placeOf), ...hostileFindings(document, placeOf)];
  if (findings.length > 0) return { findings };
  return { parsed: locate(file, document, placeOf), findings: [] };
}

function decode(bytes: Uint8Array): string | undefined {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return undefined;
  }
}

/** An upper bound of the nesting, by indentation and open brackets, so that a parser never sees a tower of brackets. */
function nestingOf(text: string): number {
  let brackets = 0;
  let most = 0;
  for (const character of text) {
    if (character === '[' || character === '{') most = Math.max(most, ++brackets);
    else if (character === ']' || character === '}') brackets = Math.max(0, brackets - 1);
    else if (character === '\n') brackets = Math.min(brackets, deepest);
  }
  const indents = text.split('\n').map((line) => Math.ceil((/^[ -]*/.exec(line)?.[0].length ?? 0) / 2));
  return Math.max(
    most,
    indents.reduce((a, b) => Math.max(a, b), 0),
  );
}

function syntaxFindings(document: YamlDocument, placeOf: (offset: number) => Place): Finding[] {
  const errors = [...document.errors, ...document.warnings].filter(({ code }) => code !== 'TAG_RESOLVE_FAILED');
  return errors.map((error) => {
    const place = placeOf(error.pos[0]);
    if (error.code === 'DUPLICATE_KEY')
      return { code: 'E104', message: 'this key stands twice in the same map', place, help: 'keep one of the two' };
    const message = error.message.replace(/\s+/g, ' ').replace(/^[A-Z]/, (letter) => letter.toLowerCase());
    return {
      code: 'E103',
      message: `this is not YAML: ${message}`,
      place,
      help: 'check the indentation, colons and quotes on this line and the one above',
    };
  });
}

function hostileFindings(document: YamlDocument, placeOf: (offset: number) => Place): Finding[] {
  const findings: Finding[] = [];
  const add = (code: Finding['code'], message: string, help: string, offset: number | undefined) =>
    findings.push({ code, message, place: placeOf(offset ?? 0), help });
  visit(document, {
    Node(_, node) {
      if (isAlias(node)) add('E106', `aliases such as \`*${node.source}\` are not read`, 'write the value out', node.range?.[0]);
      else if (node.anchor)
        add('E106', `anchors such as \`&${node.anchor}\` are not read`, 'write the value out', node.range?.[0]);
      if (!isAlias(node) && node.tag !== undefined)
        add('E105', 'tags such as `!name` are not read', 'write the plain value', node.range?.[0]);
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

function locate(file: string, document: YamlDocument, placeOf: (offset: number) => Place): ParsedYaml {
  const offsetOf = (path: readonly (string | number)[]): number => {
    const node = path.length === 0 ? document.contents : document.getIn(path, true);
    if (isNode(node) && node.range) return node.range[0];
    return path.length === 0 ? 0 : offsetOf(path.slice(0, -1));
  };
  const keyOffsetOf = (path: readonly (string | number)[]): number => {
    const parent = path.length <= 1 ? document.contents : document.getIn(path.slice(0, -1), true);
    if (isMap(parent))
      for (const { key } of parent.items) if (isScalar(key) && key.value === path.at(-1) && key.range) return key.range[0];
    return offsetOf(path);
  };
  return {
    file,
    data: document.toJS({ maxAliasCount: 0 }) as unknown,
    at: (path) => placeOf(offsetOf(path)),
    atKey: (path) => placeOf(keyOffsetOf(path)),
  };
}
