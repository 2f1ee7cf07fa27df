import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import pc from 'picocolors';
import type { Answer } from '../../decide/answer.js';
import { decide } from '../../decide/decide.js';
import { rulebookFromJson } from '../../emit/rulebook-json.js';
import { referencesIn } from '../../link/references.js';
import type { Decision, Rulebook, Situation } from '../../link/rulebook.js';
import { formatInterval } from '../../measure/interval.js';
import { formatQuantity } from '../../measure/quantity.js';
import { didYouMean } from '../../read/nearest.js';
import { BadUse } from '../bad-use.js';
import { type CommonOptions, type Context, openSoundClinic } from '../context.js';
import { parseFacts, parseJson, readFacts } from '../read-facts.js';

export interface DecideOptions extends CommonOptions {
  clinic?: string;
  /** A file that `rulebook build` made. */
  from?: string;
  instrument?: string;
  json?: boolean;
  lines?: boolean;
}

/** `rulebook decide`: answers one question, or with `--lines` one a line of JSON on standard input. */
export async function runDecide(
  context: Context,
  decisionId: string,
  facts: readonly string[],
  options: DecideOptions,
  input: AsyncIterable<string>,
): Promise<number> {
  const rulebook =
    options.from === undefined ? openSoundClinic(context, options.clinic, options)?.rulebook : readBuilt(context, options.from);
  if (rulebook === undefined) return 1;
  const decision = rulebook.decisions.get(decisionId);
  if (decision === undefined)
    throw new BadUse(
      `unknown decision \`${decisionId}\``,
      didYouMean(decisionId, rulebook.decisions.keys()) ?? '`rulebook list decisions` shows them',
    );
  const given = { ...instrumentFacts(rulebook, options.instrument), ...readFacts(rulebook, parseFacts(facts)) };
  if (options.lines) return answerLines(context, rulebook, decisionId, given, input);
  const answer = decide(rulebook, decisionId, given);
  if (options.json) context.out(JSON.stringify(answer, undefined, 2));
  else printAnswer(context, rulebook, decision, answer);
  return 0;
}

function readBuilt(context: Context, file: string): Rulebook {
  try {
    return rulebookFromJson(readFileSync(resolve(context.cwd, file), 'utf8'));
  } catch (error) {
    throw new BadUse(
      `cannot read a rulebook from \`${file}\`: ${error instanceof Error ? error.message : String(error)}`,
      'give the `rulebook.json` that `rulebook build` made',
    );
  }
}

async function answerLines(
  context: Context,
  rulebook: Rulebook,
  decision: string,
  given: Situation,
  input: AsyncIterable<string>,
): Promise<number> {
  let number = 0;
  let bad = 0;
  for await (const line of input) {
    number += 1;
    if (line.trim() === '') continue;
    try {
      context.out(JSON.stringify(decide(rulebook, decision, { ...given, ...readFacts(rulebook, parseJson(line)) })));
    } catch (error) {
      if (!(error instanceof BadUse)) throw error;
      bad += 1;
      context.out(JSON.stringify({ error: error.message, ...(error.help !== undefined && { help: error.help }), line: number }));
    }
  }
  return bad > 0 ? 2 : 0;
}

function instrumentFacts(rulebook: Rulebook, id: string | undefined): Situation {
  if (id === undefined) return {};
  const family = rulebook.instruments.get(id);
  if (family === undefined)
    throw new BadUse(
      `unknown instrument family \`${id}\``,
      didYouMean(id, rulebook.instruments.keys()) ?? '`rulebook list instruments` shows them',
    );
  return family.facts;
}

/** Prints an answer for people. */
export function printAnswer({ out }: Context, rulebook: Rulebook, decision: Decision, answer: Answer): void {
  const row = (label: string, text: string, more = '') =>
    out(`  ${pc.dim(label.padEnd(8))} ${plainText(rulebook, text)}${more && ` ${pc.dim(more)}`}`);
  out(decision.question);
  out(`  ${pc.bold(sayOutcome(rulebook, decision, answer.outcome))} ${pc.dim(`(${answer.outcome})`)}`);
  if (!answer.settled)
    row('open', `could still be ${answer.possible.map((each) => sayOutcome(rulebook, decision, each)).join(' / ')}`);
  for (const { because, rule, certain, source } of answer.reasons)
    row(
      certain ? 'because' : 'perhaps',
      because,
      `[${[rule, source && citationText(rulebook, source)].filter(Boolean).join('; ')}]`,
    );
  for (const { program, meets, lacks } of answer.offers ?? [])
    row(
      meets ? 'offers' : 'not',
      programName(rulebook, program),
      lacks
        .map(({ rule, facts }) => `${rule} (${facts.map((fact) => rulebook.facts.get(fact)?.label ?? fact).join(', ')})`)
        .join('; '),
    );
  for (const id of answer.instead)
    row('instead', rulebook.procedures.get(id)?.title ?? rulebook.notHere.get(id) ?? id, `[${id}]`);
  for (const caution of answer.cautions) row('caution', caution);
  for (const id of answer.needed) row('ask', rulebook.facts.get(id)?.question ?? id, `[${id}]`);
}

function sayOutcome(rulebook: Rulebook, decision: Decision, outcome: string): string {
  if (decision.kind === 'verdict') return plainText(rulebook, decision.say[outcome] ?? outcome);
  return outcome === 'none' ? 'No program of this clinic is known to do it.' : programName(rulebook, outcome);
}

function programName(rulebook: Rulebook, id: string): string {
  const machine = rulebook.machines.get(id.split('/')[0] ?? '');
  const program = machine?.programs.find((each) => each.id === id);
  return machine && program ? `${machine.name}, ${program.name}` : id;
}

/** A citation in words: title and clause, and whether the value is recalled. */
export function citationText(rulebook: Rulebook, source: { id: string; at?: string; evidence?: string }): string {
  const title = rulebook.sources.get(source.id)?.title ?? source.id;
  return [title, source.at, source.evidence === 'recalled' ? 'recalled' : undefined]
    .filter((each) => each !== undefined)
    .join(', ');
}

/** A text with its references filled in, for the terminal. */
export function plainText(rulebook: Rulebook, text: string): string {
  return referencesIn(text).reduce(
    (said, { scheme, id }) => said.replace(`[](${scheme}:${id})`, () => sayReference(rulebook, scheme, id)),
    text,
  );
}

function sayReference(rulebook: Rulebook, scheme: string, id: string): string {
  const names = (all: { name: string }[]) => all.map(({ name }) => name).join(' and ') || id;
  switch (scheme) {
    case 'limit': {
      const limit = rulebook.limits.get(id);
      return limit === undefined ? id : formatQuantity(limit.value);
    }
    case 'every': {
      const every = rulebook.tasks.get(id)?.every;
      return every === undefined ? id : formatInterval(every);
    }
    case 'role':
      return names(rulebook.clinic.people.filter(({ roles }) => roles.includes(id)));
    case 'machine':
      return names([...rulebook.machines.values()].filter(({ kind }) => kind === id));
    case 'zone':
      return names(rulebook.clinic.rooms.filter(({ zones }) => zones.includes(id)));
    case 'contact': {
      const contact = rulebook.clinic.contacts.find((each) => each.id === id);
      return contact === undefined ? id : `${contact.name}, ${contact.phone}`;
    }
    case 'term':
      return rulebook.terms.get(id)?.label ?? id;
    default:
      return (
        rulebook.procedures.get(id)?.title ??
        rulebook.decisions.get(id)?.title ??
        rulebook.tasks.get(id)?.title ??
        rulebook.forms.get(id)?.title ??
        rulebook.sources.get(id)?.title ??
        rulebook.notHere.get(id) ??
        id
      );
  }
}
