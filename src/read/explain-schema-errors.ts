import type { ErrorObject } from 'ajv/dist/2020.js';
import type { Finding } from './finding.js';
import { didYouMean } from './nearest.js';
import type { ParsedYaml } from './parse-yaml.js';
import { quoted, quotedList } from './quoted.js';

/** Turns the schema validator's errors into findings that a person who edits the file can act on. */
export function explainSchemaErrors(errors: readonly ErrorObject[], parsed: ParsedYaml): Finding[] {
  return errors.flatMap((error) => explain(error, parsed) ?? []);
}

function explain(error: ErrorObject, parsed: ParsedYaml): Finding | undefined {
  const path = error.instancePath
    .split('/')
    .slice(1)
    .map((part) => part.replaceAll('~1', '/').replaceAll('~0', '~'));
  const here = parsed.at(path);
  const name = nameOf(path);
  const params: Record<string, unknown> = error.params;
  const value = show(error.data, parsed.written(path));
  const schema: Record<string, unknown> = isRecord(error.parentSchema) ? error.parentSchema : {};
  if (error.propertyName !== undefined)
    return explainKey(error.keyword, error.propertyName, parsed.atKey([...path, error.propertyName]), schema);
  switch (error.keyword) {
    case 'additionalProperties': {
      const key = String(params['additionalProperty']);
      const known = isRecord(schema['properties']) ? Object.keys(schema['properties']) : [];
      const help = didYouMean(key, known) ?? `keys here are ${quotedList(known)}`;
      return finding('E202', `unknown key ${quoted(key)}`, parsed.atKey([...path, key]), help);
    }
    case 'propertyNames':
      return undefined;
    case 'required': {
      const key = String(params['missingProperty']);
      return finding('E203', `missing key \`${key}\``, here, describe(schema, key));
    }
    case 'type':
      return finding('E204', `expected ${typeNames(params['type'])} for ${name}, got ${value}`, here, typeHelp(error));
    case 'enum': {
      const allowed = Array.isArray(params['allowedValues']) ? params['allowedValues'].map(String) : [];
      const help = didYouMean(String(error.data), allowed) ?? `one of ${quotedList(allowed)}`;
      return finding('E205', `unexpected ${value} for ${name}`, here, help);
    }
    case 'const':
      return finding('E205', `unexpected ${value} for ${name}`, here, `it must be \`${String(params['allowedValue'])}\``);
    case 'discriminator': {
      if (params['tagValue'] === undefined) return undefined;
      const tag = String(params['tag']);
      const message = `unexpected ${show(params['tagValue'], undefined)} for \`${tag}\``;
      return finding('E205', message, parsed.at([...path, tag]), discriminatorHelp(error, String(params['tagValue'])));
    }
    case 'pattern':
      return finding('E206', `${value} is not written as ${name} must be`, here, patternHelp(schema));
    case 'minLength':
      return finding('E207', `${name} is empty`, here, 'write something, or leave the key out');
    case 'maxLength':
      return finding(
        'E207',
        `${name} has more than ${String(params['limit'])} characters`,
        here,
        'say it in fewer words, or split it',
      );
    case 'minItems':
    case 'minProperties':
      return finding(
        'E207',
        `${name} needs at least ${entries(params['limit'])}`,
        here,
        'add what is missing, or leave the key out',
      );
    case 'maxItems':
      return finding('E207', `${name} takes at most ${entries(params['limit'])}`, here, 'take some out');
    case 'minimum':
    case 'maximum':
      return finding('E207', `${value} is out of range for ${name}`, here, rangeHelp(schema));
    case 'uniqueItems': {
      const [first, second] = [Number(params['j']), Number(params['i'])];
      const twice = Array.isArray(error.data) ? show(error.data[second], undefined) : value;
      return finding(
        'E208',
        `${name} names ${twice} twice`,
        parsed.at([...path, Math.max(first, second)]),
        'keep one of the two',
      );
    }
    default:
      return finding('E205', `unexpected ${value} for ${name}`, here, error.message);
  }
}

/** A key that is not written as an id must be. */
function explainKey(keyword: string, key: string, place: Finding['place'], schema: Record<string, unknown>): Finding {
  if (keyword === 'maxLength') return finding('E206', `the key ${quoted(key)} is too long`, place, 'say it in fewer words');
  return finding('E206', `the key ${quoted(key)} is not written as an id`, place, patternHelp(schema));
}

/** What stands at a path, in words: its key, or which entry of a list it is. */
function nameOf(path: readonly string[]): string {
  const last = path.at(-1);
  if (last === undefined) return 'the document';
  const list = path.at(-2);
  return /^\d+$/.test(last) && list !== undefined ? `entry ${Number(last) + 1} of ${quoted(list)}` : quoted(last);
}

function finding(code: Finding['code'], message: string, place: Finding['place'], help: string | undefined): Finding {
  return help === undefined ? { code, message, place } : { code, message, place, help };
}

function describe(schema: Record<string, unknown>, key: string): string | undefined {
  const properties = isRecord(schema['properties']) ? schema['properties'] : {};
  const property = properties[key];
  return isRecord(property) && typeof property['description'] === 'string'
    ? lowerFirst(property['description'])
    : `add \`${key}:\``;
}

function typeHelp(error: ErrorObject): string | undefined {
  const wanted = [error.params['type']].flat();
  if (wanted.includes('string') && (typeof error.data === 'number' || typeof error.data === 'boolean'))
    return 'put quotes around it';
  if (wanted.includes('array')) return 'write it as a list: `[a, b]`';
  return undefined;
}

/** What the patterns of the schemas ask for that do not say it themselves. */
const patternsInWords: Record<string, string> = {
  '^https://': 'it starts with `https://`',
  '^[A-Z]{2}(?:-[A-Z0-9]{1,3})?$': 'an ISO 3166 code: `US`, `US-CA`',
  '^[a-z]{2}(?:-[A-Z]{2})?$': 'a language: `en`, `en-US`',
};

function patternHelp(schema: Record<string, unknown>): string | undefined {
  const inWords = patternsInWords[String(schema['pattern'])];
  return inWords ?? (typeof schema['description'] === 'string' ? lowerFirst(schema['description']) : undefined);
}

function discriminatorHelp(error: ErrorObject, value: string): string | undefined {
  const branches = isRecord(error.parentSchema) && Array.isArray(error.parentSchema['oneOf']) ? error.parentSchema['oneOf'] : [];
  const allowed = branches.flatMap((branch: unknown) => {
    const properties = isRecord(branch) && isRecord(branch['properties']) ? branch['properties'] : {};
    const tag = properties[String(error.params['tag'])];
    return isRecord(tag) && typeof tag['const'] === 'string' ? [tag['const']] : [];
  });
  return didYouMean(value, allowed) ?? `one of ${quotedList(allowed)}`;
}

const typeWords: Record<string, string> = {
  string: 'text',
  number: 'a number',
  integer: 'a whole number',
  boolean: 'true or false',
  array: 'a list',
  object: 'a map',
};

function typeNames(types: unknown): string {
  return [types]
    .flat()
    .map((type) => typeWords[String(type)] ?? String(type))
    .join(' or ');
}

function show(value: unknown, written: string | undefined): string {
  if (value === null) return 'nothing';
  if (Array.isArray(value)) return 'a list';
  if (typeof value === 'object') return 'a map';
  return quoted(typeof value === 'string' ? value : (written ?? String(value)));
}

function entries(count: unknown): string {
  return count === 1 ? '1 entry' : `${String(count)} entries`;
}

function rangeHelp({ minimum, maximum }: Record<string, unknown>): string {
  if (minimum === undefined || maximum === undefined)
    return minimum === undefined ? `at most ${String(maximum)}` : `at least ${String(minimum)}`;
  return `from ${String(minimum)} to ${String(maximum)}`;
}

function lowerFirst(sentence: string): string {
  const first = /^[A-Z][a-z]*\b/.test(sentence) ? sentence.charAt(0).toLowerCase() : sentence.charAt(0);
  return first + sentence.slice(1).replace(/\.$/, '');
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return value !== null && typeof value === 'object' && !Array.isArray(value);
}
