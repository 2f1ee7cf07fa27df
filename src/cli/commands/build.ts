import { rmSync } from 'node:fs';
import { join, relative, resolve } from 'node:path';
import { proveStrict } from '../../analyse/prove-strict.js';
import { type Comparison, isSame } from '../../change/comparison.js';
import { checkRulebook } from '../../check/check-rulebook.js';
import { packsAlone } from '../../link/packs-alone.js';
import { type Finding, hasErrors } from '../../read/finding.js';
import { groupBy } from '../../write/text/group-by.js';
import { colors } from '../colors.js';
import { type CommonOptions, type Context, clinicFolderOf, openSoundClinic } from '../context.js';
import type { Loaded } from '../load-rulebook.js';
import { countFindings, plural, printFindings } from '../print-findings.js';
import { allFormats, formatsOf, makeProducts } from '../products.js';
import { openRelease, readReleases, textFile } from '../releases.js';
import { reportTranslation } from '../translation-report.js';
import { writeFiles } from '../write-files.js';

export interface BuildOptions extends CommonOptions {
  out?: string;
  formats?: string;
}

/**
 * `rulebook build`: checks a clinic, then writes its manual, the evaluators, and what changed since the last release; nothing
 * where there are errors.
 */
export async function runBuild(context: Context, folder: string | undefined, options: BuildOptions): Promise<number> {
  const { progress } = context;
  const formats = formatsOf(options.formats);
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
  const { releases, findings: history } = readReleases(clinicFolderOf(context, folder), context.cwd);
  const last = releases.at(-1);
  const { released, findings: opening } = last === undefined ? { findings: [] } : openRelease(last, context.cwd);
  const made = await makeProducts(rulebook, { progress, base: context.cwd, formats, ...(released && { released }) });
  const translation = reportTranslation(opened.loaded, rulebook);
  const findings = [
    ...opened.findings,
    ...report.findings,
    ...(translation?.findings ?? []),
    ...history,
    ...opening,
    ...made.findings,
  ];
  if (last !== undefined && made.comparison !== undefined)
    findings.push(...sameVersion(opened.loaded, last.version, made.comparison));
  progress.done();
  printFindings(findings, context.err);
  if (hasErrors(findings)) {
    context.err(`${countFindings(findings)}; nothing was written`);
    return 1;
  }
  const target = options.out === undefined ? join(resolve(context.cwd, folder ?? '.'), 'out') : resolve(context.cwd, options.out);
  // The text is kept with a release only; the manual itself is its printed form.
  made.files.delete(textFile);
  progress.step('saving');
  writeFiles(target, made.files);
  for (const name of staleNames) if (!made.files.has(name)) rmSync(join(target, name), { force: true });
  progress.done();
  const shown = (name: string) => relative(context.cwd, join(target, name)) || name;
  context.out(
    `${colors.bold(rulebook.clinic.name)}, ${rulebook.clinic.document.title} version ${rulebook.clinic.document.version}, rules of ${rulebook.on}`,
  );
  context.out(
    `  proved    ${plural(report.examples, 'example')} and ${plural(report.fixtures, 'published value')}; ${countFindings(findings)}`,
  );
  for (const [kind, names] of groupBy([...made.files.keys()], kindOf))
    context.out(
      `  ${kind.padEnd(9)} ${shown(names[0] ?? '')}${names
        .slice(1)
        .map((name) => `, ${name}`)
        .join('')}`,
    );
  if (last !== undefined && made.comparison !== undefined) context.out(`  since     ${sayChange(last.version, made.comparison)}`);
  context.out(`  digest    ${rulebook.digest.slice(0, 12)}`);
  return 0;
}

/** A notice of an earlier build says what no longer holds. */
const staleNames = allFormats.flatMap((extension) => [`notice.${extension}`, `redline.${extension}`]);

function kindOf(name: string): string {
  const [kind = ''] = name.split(/[.-]/);
  return kind === 'rulebook' ? 'evaluator' : kind;
}

/** A released version that has other pages now needs a number of its own. */
function sameVersion({ clinicDocuments }: Loaded, released: string, comparison: Comparison): Finding[] {
  const clinic = clinicDocuments.find(({ data }) => data.kind === 'clinic');
  if (clinic === undefined || comparison.after.clinic.document.version !== released || isSame(comparison)) return [];
  const message = `version \`${released}\` was released, and the manual is another now`;
  return [
    {
      code: 'W520',
      message,
      place: clinic.at(['document', 'version']),
      help: 'give the clinic document its next version, and the day from which it holds',
    },
  ];
}

/** `version 1.0: 3 changes in practice, 2 decisions with other answers, 5 sections with other words`. */
export function sayChange(version: string, comparison: Comparison): string {
  if (isSame(comparison)) return `version ${version}: nothing changed`;
  const { practice, impact, sections } = comparison;
  const answers = impact.decisions.filter(({ verdict }) => verdict !== 'same').length;
  const words = sections.filter(({ fate }) => fate === 'changed' || fate === 'new' || fate === 'gone').length;
  return `version ${version}: ${plural(practice.length, 'change')} in practice, ${plural(answers, 'decision')} with other answers, ${plural(words, 'section')} with other words`;
}
