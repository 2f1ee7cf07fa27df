#!/usr/bin/env node
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { Command, CommanderError } from 'commander';
import pc from 'picocolors';
import { BadUse } from './bad-use.js';
import { type CheckOptions, runCheck } from './commands/check.js';
import { type DecideOptions, runDecide } from './commands/decide.js';
import type { Context } from './context.js';
import { home } from './load-rulebook.js';

const version = (JSON.parse(readFileSync(join(home, 'package.json'), 'utf8')) as { version: string }).version;

/** Runs the command line and returns its exit code: 0 fine, 1 findings, 2 bad use or bad input. */
export async function main(args: readonly string[], context: Context, input: AsyncIterable<string>): Promise<number> {
  let code = 0;
  const program = new Command('rulebook')
    .description('The rules of a clinic for reprocessing instruments: checked, answered and printed from one source.')
    .version(version)
    .exitOverride()
    .configureOutput({ writeOut: (text) => context.out(text.replace(/\n$/, '')), writeErr: (text) => context.err(text.replace(/\n$/, '')) })
    .addHelpText('after', '\nExit codes: 0 fine, 1 findings, 2 bad use or bad input.');
  const command = (name: string, description: string) =>
    program
      .command(name)
      .description(description)
      .option('--on <date>', 'choose values for this date, YYYY-MM-DD (default: the date from which the clinic’s manual holds)')
      .option('--rules <folder>', 'read the rules from this folder (default: those that come with the tool)');

  command('check', 'read and prove the rules of clinics')
    .argument('[clinic...]', 'clinic folders (default: this folder, or the sample clinics)')
    .option('--json', 'print the findings as JSON')
    .action((folders: string[], options: CheckOptions) => {
      code = runCheck(context, folders, options);
    });
  command('decide', 'answer a question about one situation, or about many')
    .argument('<decision>', 'id of the decision')
    .argument('[facts...]', 'facts as key=value or as a JSON object')
    .option('-c, --clinic <folder>', 'folder of the clinic (default: this folder)')
    .option('-i, --instrument <family>', 'take the facts of this family from the instrument register')
    .option('--json', 'print the answer as JSON')
    .option('--lines', 'read JSON Lines of facts on standard input, print an answer a line')
    .action(async (decision: string, facts: string[], options: DecideOptions) => {
      code = await runDecide(context, decision, facts, options, input);
    });

  try {
    await program.parseAsync(args, { from: 'user' });
    return code;
  } catch (error) {
    if (error instanceof CommanderError) return error.exitCode === 0 ? 0 : 2;
    if (!(error instanceof BadUse)) throw error;
    context.err(`${pc.red('error:')} ${error.message}`);
    if (error.help !== undefined) context.err(`  ${pc.dim('help:')} ${error.help}`);
    return 2;
  }
}

if (process.argv[1] !== undefined && import.meta.filename === process.argv[1]) {
  const context: Context = { cwd: process.cwd(), out: (line) => process.stdout.write(`${line}\n`), err: (line) => process.stderr.write(`${line}\n`) };
  const lines = { [Symbol.asyncIterator]: () => createInterface({ input: process.stdin })[Symbol.asyncIterator]() };
  process.exitCode = await main(process.argv.slice(2), context, lines);
}
