import { type Comparison, compareWithRelease, isSame, type Released, textOf } from '../change/comparison.js';
import { writeNotice } from '../change/write-notice.js';
import { writeRedline } from '../change/write-redline.js';
import { canonicalJson } from '../decide/canonical-json.js';
import { emitEvaluators } from '../emit/emit-evaluators.js';
import type { Rulebook } from '../link/rulebook.js';
import type { Finding } from '../read/finding.js';
import type { Printed } from '../write/print/printer.js';
import { printers } from '../write/print/printers.js';
import type { Writing } from '../write/writing.js';
import { BadUse } from './bad-use.js';
import { loadAssets } from './load-assets.js';
import { loadTemplates, manualOf } from './load-manual.js';
import type { Progress } from './progress.js';
import { textFile } from './releases.js';
import { toolVersion } from './tool-version.js';

/** Everything that is made for a clinic from its rulebook. */
export interface Products {
  files: Map<string, Printed>;
  findings: Finding[];
  /** What changed since the last release; absent where there is none. */
  comparison?: Comparison;
}

/** All formats, by the extension of their files. */
export const allFormats: readonly string[] = printers.map(({ extension }) => extension);

/**
 * The formats of a list such as `md,html`; all where there is none.
 *
 * @throws BadUse when one of them is unknown.
 */
export function formatsOf(list: string | undefined): readonly string[] {
  if (list === undefined) return allFormats;
  const wanted = list.split(',').map((each) => each.trim());
  const unknown = wanted.find((each) => !allFormats.includes(each));
  if (unknown !== undefined)
    throw new BadUse(`there is no format \`${unknown}\``, `formats are ${allFormats.join(', ')}, separated by commas`);
  return wanted;
}

/**
 * Makes the manual in all formats, the evaluators, the frozen text and, where there is a release before it from which it differs, the
 * change notice and the redline. Where a finding is an error nothing is printed. `base` is the folder that files are named from.
 */
export async function makeProducts(
  rulebook: Rulebook,
  {
    progress,
    released,
    formats = allFormats,
    base,
  }: { progress: Progress; released?: Released; formats?: readonly string[]; base?: string },
): Promise<Products> {
  progress.step('writing the manual');
  const manual = manualOf(rulebook, base);
  progress.step('making the evaluators');
  const evaluators = emitEvaluators(rulebook);
  const findings = [...manual.findings, ...evaluators.findings];
  const files = new Map<string, Printed>(evaluators.files);
  files.set(textFile, `${canonicalJson(textOf(manual), 1)}\n`);
  const writings: [name: string, writing: Writing][] = [['manual', manual]];
  const comparison = released && compareWithRelease(released, rulebook, manual);
  if (comparison !== undefined && !isSame(comparison)) {
    progress.step('comparing with the last release');
    const input = { comparison, manual, templates: loadTemplates(), tool: toolVersion };
    const notice = writeNotice(input);
    findings.push(...notice.findings);
    writings.push(['notice', notice], ['redline', writeRedline(input)]);
  }
  if (findings.some(({ code }) => code.startsWith('E'))) return { files, findings, ...(comparison && { comparison }) };
  for (const [name, writing] of writings)
    for (const printer of printers.filter(({ extension }) => formats.includes(extension))) {
      progress.step(`printing the ${name}, ${printer.format}`);
      files.set(`${name}.${printer.extension}`, await printer.print(writing, loadAssets()));
    }
  return { files, findings, ...(comparison && { comparison }) };
}
