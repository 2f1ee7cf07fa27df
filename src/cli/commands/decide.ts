import { resolve } from 'node:path';
import { decide } from '../../decide/decide.js';
import type { Rulebook, Situation } from '../../link/rulebook.js';
import { didYouMean } from '../../read/nearest.js';
import { BadUse } from '../bad-use.js';
import { type CommonOptions, type Context, openPacks, openSoundClinic } from '../context.js';
import { readBuilt } from '../open-side.js';
import { printAnswer } from '../print-answer.js';
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
    options.from === undefined ? openRulebook(context, options) : readBuilt(resolve(context.cwd, options.from), options.from);
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

/** The rulebook of a clinic folder, without the published values that prove it. */
function openRulebook(context: Context, options: DecideOptions): Rulebook | undefined {
  return openSoundClinic(context, options.clinic, options, openPacks(context, options, 'rules'))?.rulebook;
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
