import { Command, CommanderError } from 'commander';
import { BadUse } from './bad-use.js';
import { colors } from './colors.js';
import type { AnalyseOptions } from './commands/analyse.js';
import type { BuildOptions } from './commands/build.js';
import type { CheckOptions } from './commands/check.js';
import type { DecideOptions } from './commands/decide.js';
import type { ExplainOptions } from './commands/explain.js';
import type { ImpactOptions } from './commands/impact.js';
import type { InitOptions } from './commands/init.js';
import { type ListOptions, listable } from './commands/list.js';
import type { RegionsOptions } from './commands/list-regions.js';
import type { TextsOptions } from './commands/list-texts.js';
import type { ReleaseOptions } from './commands/release.js';
import type { ReviewOptions } from './commands/review.js';
import type { VerifyOptions } from './commands/verify.js';
import type { Context } from './context.js';
import { documentCache } from './document-cache.js';
import { toolVersion } from './tool-version.js';

/**
 * Runs the command line and returns its exit code: 0 fine, 1 findings, 2 bad use or bad input. A command is
 * loaded when it is asked for: what prints a manual takes longer to load than an answer takes.
 */
export async function main(args: readonly string[], context: Context, input: AsyncIterable<string>): Promise<number> {
  let code = 0;
  const program = new Command('rulebook')
    .description('The rules of a clinic for reprocessing instruments: checked, answered and printed from one source.')
    .version(toolVersion)
    .exitOverride()
    .configureOutput({
      writeOut: (text) => context.out(text.replace(/\n$/, '')),
      writeErr: (text) => context.err(text.replace(/\n$/, '')),
    })
    .addHelpText('after', '\nExit codes: 0 fine, 1 findings, 2 bad use or bad input.');
  const command = (name: string, description: string) =>
    program
      .command(name)
      .description(description)
      .option('--on <date>', 'choose values for this date, YYYY-MM-DD (default: the date from which the clinic’s manual holds)')
      .option('--rules <folder>', 'read the rules from this folder (default: those that come with the tool)');

  command('check', 'read and prove the rules of clinics')
    .argument('[clinic...]', 'clinic folders (default: this folder, or the sample clinics)')
    .option('--citations', 'list the values that nobody has compared with their source, ever or for too long')
    .option('--wording', 'look at how texts are worded too: steps of many orders, long sentences, reading level')
    .option('--json', 'print the findings as JSON')
    .action(async (folders: string[], options: CheckOptions) => {
      const { runCheck } = await import('./commands/check.js');
      code = runCheck(context, folders, options);
    });
  command('decide', 'answer a question about one situation, or about many')
    .argument('<decision>', 'id of the decision')
    .argument('[facts...]', 'facts as key=value or as a JSON object')
    .option('-c, --clinic <folder>', 'folder of the clinic (default: this folder)')
    .option('--from <file>', 'answer from a rulebook.json that `build` made, instead of a clinic folder')
    .option('-i, --instrument <family>', 'take the facts of this family from the instrument register')
    .option('--json', 'print the answer as JSON')
    .option('--lines', 'read JSON Lines of facts on standard input, print an answer a line')
    .action(async (decision: string, facts: string[], options: DecideOptions) => {
      const { runDecide } = await import('./commands/decide.js');
      code = await runDecide(context, decision, facts, options, input);
    });

  command('analyse', 'look at every situation: gaps, rules without effect, ties')
    .argument('[clinic]', 'clinic folder (default: this folder)')
    .option('-d, --decision <id>', 'look at this decision only')
    .option('--mutants', 'make every mistake in every rule of the packs, and list those that no proof notices')
    .option('--drafts', 'print examples and published values that would notice them, for a person to accept')
    .option('--json', 'print it as JSON')
    .action(async (folder: string | undefined, options: AnalyseOptions) => {
      const { runAnalyse } = await import('./commands/analyse.js');
      code = runAnalyse(context, folder, options);
    });
  command('impact', 'say which situations get another answer after a change')
    .argument('[clinic]', 'clinic folder (default: this folder)')
    .option(
      '--from <reference>',
      'what it was: a commit, branch or tag, a date, a clinic folder, a folder of rules, or a rulebook.json (default: HEAD)',
    )
    .option('--to <reference>', 'what it becomes (default: the working copy)')
    .option('--regions <number>', 'list at most so many regions of each change (default: 12)')
    .option('--json', 'print it as JSON')
    .option('--markdown', 'print it as Markdown')
    .action(async (folder: string | undefined, options: ImpactOptions) => {
      const { runImpact } = await import('./commands/impact.js');
      code = runImpact(context, folder, options);
    });
  command('build', 'write a clinic’s manual, its evaluators, and what changed since its last release')
    .argument('[clinic]', 'clinic folder (default: this folder)')
    .option('-o, --out <folder>', 'write into this folder (default: `out` in the clinic folder)')
    .option('--formats <list>', 'print only these formats, such as `md,html` (default: all)')
    .action(async (folder: string | undefined, options: BuildOptions) => {
      const { runBuild } = await import('./commands/build.js');
      code = await runBuild(context, folder, options);
    });
  command('explain', 'say where one value, rule or word comes from and where it is printed')
    .argument('<id>', 'id of a limit, task, decision, rule, fact, term, procedure, form, instrument family or source')
    .option('-c, --clinic <folder>', 'folder of the clinic (default: this folder)')
    .option('--json', 'print it as JSON')
    .action(async (id: string, options: ExplainOptions) => {
      const { runExplain } = await import('./commands/explain.js');
      code = await runExplain(context, id, options);
    });
  command('list', 'list what a clinic’s rulebook holds')
    .argument('<kind>', listable.join(', '))
    .option('-c, --clinic <folder>', 'folder of the clinic (default: this folder)')
    .option('--compare', 'of regions: a table of what they change')
    .option('--language <language>', 'of texts: the language that they are translated into, such as fr-CA')
    .option('--of <whose>', 'of texts: a pack, a folder of a pack such as base/cleaning, or templates')
    .option('--missing', 'of texts: only those that nobody has translated')
    .option('--json', 'print it as JSON')
    .action(async (kind: string, options: ListOptions & RegionsOptions & TextsOptions) => {
      if (kind === 'regions') code = (await import('./commands/list-regions.js')).runListRegions(context, options);
      else if (kind === 'texts') code = (await import('./commands/list-texts.js')).runListTexts(context, options);
      else code = (await import('./commands/list.js')).runList(context, kind, options);
    });
  command('release', 'freeze the manual and the evaluators into the history of the clinic folder')
    .argument('[clinic]', 'clinic folder (default: this folder)')
    .option('--approved-on <date>', 'the day of approval, YYYY-MM-DD (default: today)')
    .option('--sign-with <file>', 'sign the lock with this private Ed25519 key (PEM)')
    .action(async (folder: string | undefined, options: ReleaseOptions) => {
      const { runRelease } = await import('./commands/release.js');
      code = await runRelease(context, folder, options, today());
    });
  program
    .command('verify')
    .description('say whether the releases of a clinic are as they were released')
    .argument('[clinic]', 'clinic folder (default: this folder)')
    .option('--release <version>', 'make this release again (default: the last one)')
    .option('--all', 'make every release again')
    .option('--only-files', 'compare files and signatures, and make nothing again')
    .option('--trust <file>', 'the public Ed25519 key (PEM) that releases must be signed with (default: CLINIC_RULEBOOK_KEY)')
    .option('--json', 'print it as JSON')
    .action(async (folder: string | undefined, options: VerifyOptions) => {
      const { runVerify } = await import('./commands/verify.js');
      code = await runVerify(context, folder, options);
    });
  program
    .command('review')
    .description('list what falls due: the manual, deviations, citations, tasks without an owner')
    .argument('[clinic]', 'clinic folder (default: this folder)')
    .option('--on <date>', 'the day to look from, YYYY-MM-DD (default: today)')
    .option('--within <time>', 'how far to look ahead (default: 3 mo)')
    .option('--rules <folder>', 'read the rules from this folder (default: those that come with the tool)')
    .option('--json', 'print it as JSON')
    .action(async (folder: string | undefined, options: ReviewOptions) => {
      const { runReview } = await import('./commands/review.js');
      code = runReview(context, folder, options, today());
    });
  program
    .command('init')
    .description('make a clinic folder of your own from a sample clinic')
    .argument('<folder>', 'the new folder')
    .option('--from <sample>', 'which sample clinic to copy')
    .option('--name <name>', 'what the clinic is called')
    .option('--phone <number>', 'its telephone')
    .action(async (folder: string, options: InitOptions) => {
      const { runInit } = await import('./commands/init.js');
      code = await runInit(context, folder, options);
    });

  const measure = program
    .command('measure')
    .description('work out A0, F0, steam, water and other quantities, or measure the record of a cycle');
  if (args.includes('measure')) {
    const { addMeasurements } = await import('./commands/add-measure.js');
    addMeasurements(measure, context, (each) => {
      code = each;
    });
  }

  try {
    await program.parseAsync(args, { from: 'user' });
    return code;
  } catch (error) {
    if (error instanceof CommanderError) return error.exitCode === 0 ? 0 : 2;
    if (!(error instanceof BadUse)) throw error;
    context.err(`${colors.red('error:')} ${error.message}`);
    if (error.help !== undefined) context.err(`  ${colors.dim('help:')} ${error.help}`);
    return 2;
  } finally {
    documentCache().save();
  }
}

/** The day by the clock of this machine, YYYY-MM-DD. */
function today(): string {
  const now = new Date();
  return [now.getFullYear(), String(now.getMonth() + 1).padStart(2, '0'), String(now.getDate()).padStart(2, '0')].join('-');
}
