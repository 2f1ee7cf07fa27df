import type { ErrorObject } from 'ajv/dist/2020.js';
import type { Finding } from './finding.js';
import { didYouMean } from './nearest.js';
import type { ParsedYaml } from './parse-yaml.js';

/** Turns the schema validator's errors into findings that a person who edits the file can act on. */
export function explainSchemaErrors(errors: readonly ErrorObject[], parsed: ParsedYaml): Finding[] {
  return errors.flatMap((error) => explain(error, parsed) ?? []);
}

function explain(error: ErrorObject, parsed: ParsedYaml): Finding | undefined {
  const path = error.instancePath
    .split('/')
    .slice(1)
    .map((part) => part.replaceAll('~1', '/').replaceAll('~0', '~'))
    .map((part) => (/^\d+$/.test(part) ? Number(part) : part));
  const here = parsed.at(path);
  const name = String(path.at(-1) ?? 'document');
  const params: Record<string, unknown> = error.params;
  const value = show(error.data);
  const schema: Record<string, unknown> = isRecord(error.parentSchema) ? error.parentSchema : {};
  switch (error.keyword) {
    case 'additionalProperties': {
      const key = String(params['additionalProperty']);
      const known = isRecord(schema['properties']) ? Object.keys(schema['properties']) : [];
      return finding(
        'E202',
        `unknown key \`${key}\``,
        parsed.atKey([...path, key]),
        didYouMean(key, known) ?? `keys here are ${list(known)}`,
      );
    }
    case 'propertyNames':
      return undefined;
    case 'required':
      return finding(
        'E203',
        `missing key \`${String(params['missingProperty'])}\``,
        here,
        describe(schema, String(params['missingProperty'])),
      );
    case 'type':
      return finding('E204', `expected ${typeNames(params['type'])} for \`${name}\`, got ${value}`, here, typeHelp(error));
    case 'enum': {
      const allowed = Array.isArray(params['allowedValues']) ? params['allowedValues'].map(String) : [];
      return finding(
        'E205',
        `unexpected ${value} for \`${name}\``,
        here,
        didYouMean(String(error.data), allowed) ?? `one of ${list(allowed)}`,
      );
    }
    case 'const':
      return finding('E205', `unexpected ${value} for \`${name}\``, here, `it must be \`${String(params['allowedValue'])}\``);
    case 'discriminator': {
      if (params['tagValue'] === undefined) return undefined;
      const tag = String(params['tag']);
      return finding(
        'E205',
        `unexpected \`${String(params['tagValue'])}\` for \`${tag}\``,
        parsed.at([...path, tag]),
        discriminatorHelp(error, String(params['tagValue'])),
      );
    }
    case 'pattern':
      return error.propertyName === undefined
        ? finding('E206', `${value} is not written as \`${name}\` must be`, here, patternHelp(schema))
        : finding(
            'E206',
            `the key \`${error.propertyName}\` is not written as an id`,
            parsed.atKey([...path, error.propertyName]),
            patternHelp(schema),
          );
    case 'minLength':
      return finding('E207', `\`${name}\` is empty`, here, 'write something, or leave the key out');
    case 'maxLength':
      return finding(
        'E207',
        `\`${name}\` has more than ${String(params['limit'])} characters`,
        here,
        'say it in fewer words, or split it',
      );
    case 'minItems':
    case 'minProperties':
      return finding(
        'E207',
        `\`${name}\` needs at least ${String(params['limit'])}`,
        here,
        'add what is missing, or leave the key out',
      );
    case 'maxItems':
      return finding('E207', `\`${name}\` takes at most ${String(params['limit'])}`, here, 'take some out');
    case 'minimum':
    case 'maximum':
      return finding(
        'E207',
        `${value} is out of range for \`${name}\``,
        here,
        `it must be ${String(params['comparison'])} ${String(params['limit'])}`,
      );
    case 'uniqueItems':
      return finding('E208', `\`${name}\` names the same thing twice`, here, 'keep one of the two');
    default:
      return finding('E209', `\`${name}\` ${error.message ?? 'does not fit its schema'}`, here, undefined);
  }
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

function patternHelp(schema: Record<string, unknown>): string | undefined {
  return typeof schema['description'] === 'string' ? lowerFirst(schema['description']) : undefined;
}

function discriminatorHelp(error: ErrorObject, value: string): string | undefined {
  const branches = isRecord(error.parentSchema) && Array.isArray(error.parentSchema['oneOf']) ? error.parentSchema['oneOf'] : [];
  const allowed = branches.flatMap((branch: unknown) => {
    const properties = isRecord(branch) && isRecord(branch['properties']) ? branch['properties'] : {};
    const tag = properties[String(error.params['tag'])];
    return isRecord(tag) && typeof tag['const'] === 'string' ? [tag['const']] : [];
  });
  return didYouMean(value, allowed) ?? `one of ${list(allowed)}`;
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

function show(value: unknown): string {
  if (value === null) return 'nothing';
  if (Array.isArray(value)) return 'a list';
  if (typeof value === 'object') return 'a map';
  const text = String(value);
  return `\`${text.length > 60 ? `${text.slice(0, 57)}…` : text}\``;
}

function list(names: readonly string[]): string {
  return names.map((name) => `\`${name}\``).join(', ');
}

function lowerFirst(sentence: string): string {
  const first = /^[A-Z][a-z]*\b/.test(sentence) ? sentence.charAt(0).toLowerCase() : sentence.charAt(0);
  return first + sentence.slice(1).replace(/\.$/, '');
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return value !== null && typeof value === 'object' && !Array.isArray(value);
}
