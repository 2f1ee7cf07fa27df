import { join, relative, resolve } from 'node:path';
import { proveStrict } from '../../analyse/prove-strict.js';
import { checkRulebook } from '../../check/check-rulebook.js';
import { emitEvaluators } from '../../emit/emit-evaluators.js';
import { packsAlone } from '../../link/packs-alone.js';
import { hasErrors } from '../../read/finding.js';
import { printers } from '../../write/print/printers.js';
import { colors } from '../colors.js';
import { type CommonOptions, type Context, openSoundClinic } from '../context.js';
import { loadAssets } from '../load-assets.js';
import { manualOf } from '../load-manual.js';
import { countFindings, plural, printFindings } from '../print-findings.js';
import { writeFiles } from '../write-files.js';

export interface BuildOptions extends CommonOptions {
  out?: string;
}

/** `rulebook build`: checks a clinic, then writes its manual and the evaluator's input; nothing where there are errors. */
export async function runBuild(context: Context, folder: string | undefined, options: BuildOptions): Promise<number> {
  const { progress } = context;
  progress.step('reading and linking the rules');
  const open = openSoundClinic(context, folder, options);
  if (open === undefined) return 1;
  const { rulebook, opened } = open;
  progress.step('proving the rules');
  const report = checkRulebook(
    rulebook,
    opened.loaded.fixtures,
    packsAlone(opened.loaded.packs, rulebook.clinic, rulebook.on, proveStrict),
  );
  progress.step('writing the manual');
  const manual = manualOf(rulebook);
  progress.step('making the evaluators');
  const evaluators = emitEvaluators(rulebook);
  const findings = [...opened.findings, ...report.findings, ...manual.findings, ...evaluators.findings];
  progress.done();
  printFindings(findings, context.err);
  if (hasErrors(findings)) {
    context.err(`${countFindings(findings)}; nothing was written`);
    return 1;
  }
  const target = options.out === undefined ? join(resolve(context.cwd, folder ?? '.'), 'out') : resolve(context.cwd, options.out);
  const files = new Map<string, string | Uint8Array>(evaluators.files);
  for (const printer of printers) {
    progress.step(`printing ${printer.format}`);
    files.set(`manual.${printer.extension}`, await printer.print(manual, loadAssets()));
  }
  progress.step('saving');
  writeFiles(target, files);
  progress.done();
  const shown = (name: string) => relative(context.cwd, join(target, name)) || name;
  context.out(
    `${colors.bold(rulebook.clinic.name)}, ${rulebook.clinic.document.title} version ${rulebook.clinic.document.version}, rules of ${rulebook.on}`,
  );
  context.out(
    `  proved    ${plural(report.examples, 'example')} and ${plural(report.fixtures, 'published value')}; ${countFindings(findings)}`,
  );
  for (const printer of printers) context.out(`  manual    ${shown(`manual.${printer.extension}`)}`);
  for (const name of evaluators.files.keys()) context.out(`  evaluator ${shown(name)}`);
  context.out(`  digest    ${rulebook.digest.slice(0, 12)}`);
  return 0;
}
