import { readFactValue } from '../link/read-values.js';
import type { FactValue, Rulebook, Situation } from '../link/rulebook.js';
import { didYouMean } from '../read/nearest.js';
import { BadUse } from './bad-use.js';

/** Facts given on the command line: `key=value` or a JSON object each. Lists of a set are separated by commas. */
export function parseFacts(args: readonly string[]): Record<string, unknown> {
  return Object.fromEntries(args.flatMap((each) => Object.entries(parseFact(each))));
}

/**
 * Facts as the rulebook knows them.
 *
 * @throws BadUse for an unknown fact or a value that does not fit.
 */
export function readFacts(rulebook: Rulebook, raw: unknown): Situation {
  if (raw === null || typeof raw !== 'object' || Array.isArray(raw))
    throw new BadUse('facts are a JSON object', 'write `{"fact.id": value}`');
  const situation: Record<string, FactValue> = {};
  for (const [id, value] of Object.entries(raw)) {
    const fact = rulebook.facts.get(id);
    if (fact === undefined)
      throw new BadUse(`unknown fact \`${id}\``, didYouMean(id, rulebook.facts.keys()) ?? '`rulebook list facts` shows them');
    const read = readFactValue(
      fact,
      fact.type === 'set' && typeof value === 'string' ? value.split(',').filter((each) => each !== '') : value,
    );
    if (!('value' in read)) throw new BadUse(read.message, read.help);
    situation[id] = read.value;
  }
  return situation;
}

function parseFact(text: string): Record<string, unknown> {
  if (text.trimStart().startsWith('{')) return parseJson(text);
  const [, key, value] = /^([^=\s]+)=(.*)$/s.exec(text) ?? [];
  if (key === undefined || value === undefined)
    throw new BadUse(`\`${text}\` is neither \`fact=value\` nor JSON`, 'write for example `load.wait=12min`');
  return { [key]: plainValue(value) };
}

function plainValue(text: string): unknown {
  if (text === 'true' || text === 'yes') return true;
  if (text === 'false' || text === 'no') return false;
  return /^-?\d+(\.\d+)?$/.test(text) ? Number(text) : text;
}

/** @throws BadUse when the text is not a JSON object. */
export function parseJson(text: string): Record<string, unknown> {
  try {
    const value: unknown = JSON.parse(text);
    if (value !== null && typeof value === 'object' && !Array.isArray(value)) return value as Record<string, unknown>;
  } catch {
    // Falls through to the one message for both.
  }
  throw new BadUse(
    `this is not a JSON object: \`${text.length > 60 ? `${text.slice(0, 57)}…` : text}\``,
    'write `{"fact.id": value}`',
  );
}
