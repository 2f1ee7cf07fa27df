import { existsSync } from 'node:fs';
import { join, relative } from 'node:path';
import { checkRulebook } from '../../check/check-rulebook.js';
import { type Finding, hasErrors } from '../../read/finding.js';
import { colors } from '../colors.js';
import { type CommonOptions, type Context, openClinic } from '../context.js';
import { manualOf } from '../load-manual.js';
import { packsRulebookOn, sampleClinics } from '../load-rulebook.js';
import { countFindings, plural, printFindings } from '../print-findings.js';

export interface CheckOptions extends CommonOptions {
  json?: boolean;
}

/** `rulebook check`: reads, links and proves clinics, and tries their manuals; exit code 1 when there are errors. */
export function runCheck(context: Context, folders: readonly string[], options: CheckOptions): number {
  const clinics = folders.length > 0 ? folders : findClinics(context.cwd);
  const reports = clinics.map((folder) => checkOne(context, folder, options));
  if (options.json) context.out(JSON.stringify(reports, undefined, 2));
  return reports.some(({ findings }) => hasErrors(findings)) ? 1 : 0;
}

function checkOne(context: Context, folder: string, options: CheckOptions): { clinic: string; findings: Finding[] } {
  const opened = openClinic(context, folder, options);
  const { rulebook, loaded, on } = opened;
  const say = options.json ? () => {} : context.out;
  say(colors.bold(on === undefined ? folder : `${folder} on ${on}`));
  if (rulebook === undefined) {
    printFindings(opened.findings, say);
    say(countFindings(opened.findings));
    return { clinic: folder, findings: opened.findings };
  }
  const report = checkRulebook(rulebook, loaded.fixtures, (date) => packsRulebookOn(loaded, date));
  const proved = [...opened.findings, ...report.findings];
  const findings = hasErrors(proved) ? proved : [...proved, ...manualOf(rulebook).findings];
  printFindings(findings, say);
  const { coverage } = report;
  say(`  packs     ${rulebook.packs.map(({ id, version }) => `${id} ${version}`).join(', ')}`);
  say(
    `  rules     ${plural(rulebook.decisions.size, 'decision')} with ${plural(coverage.rules, 'rule')}, ${plural(rulebook.limits.size, 'limit')}, ${plural(rulebook.tasks.size, 'task')}, ${plural(rulebook.procedures.size, 'procedure')}, ${plural(rulebook.forms.size, 'form')}`,
  );
  say(
    `  clinic    ${plural(rulebook.machines.size, 'machine')}, ${plural(rulebook.instruments.size, 'instrument family', 'instrument families')}, ${plural(rulebook.changes.filter(({ layer }) => layer === 'clinic').length, 'change')} of its own`,
  );
  say(`  proof     ${plural(report.examples, 'example')} and ${plural(report.fixtures, 'published value')} run`);
  say(
    `  unproved  ${coverage.withNeither.length} of ${plural(coverage.rules, 'rule')} have no example and no published value; ${coverage.withoutFixture.length} have no published value`,
  );
  say(`  result    ${countFindings(findings)}`);
  return { clinic: folder, findings };
}

/** The clinic one stands in, or else the sample clinics of the tool. */
function findClinics(cwd: string): string[] {
  if (existsSync(join(cwd, 'clinic.yaml'))) return ['.'];
  return sampleClinics().map((folder) => relative(cwd, folder));
}
