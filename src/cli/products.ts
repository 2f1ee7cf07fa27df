import { type Comparison, compareWithRelease, isSame, type Released, textOf } from '../change/comparison.js';
import { writeNotice } from '../change/write-notice.js';
import { writeRedline } from '../change/write-redline.js';
import { canonicalJson } from '../decide/canonical-json.js';
import { emitEvaluators } from '../emit/emit-evaluators.js';
import type { Rulebook } from '../link/rulebook.js';
import type { Finding } from '../read/finding.js';
import { CannotPrint } from '../write/print/cannot-print.js';
import type { Printed, Printer } from '../write/print/printer.js';
import { printers } from '../write/print/printers.js';
import { traceOf } from '../write/trace-of.js';
import { writeCards } from '../write/write-cards.js';
import { writeForms } from '../write/write-forms.js';
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

export interface ProductOptions {
  progress: Progress;
  /** The folder that files are named from in findings. */
  base?: string;
  /** The last release. */
  released?: Released;
  /** The formats to print; all where there are none. */
  formats?: readonly string[];
}

/**
 * Makes the manual in all formats, the evaluators, the frozen text and, where there is a release before it from which it differs, the
 * change notice and the redline. Where a finding is an error nothing is printed. `base` is the folder that files are named from.
 */
export async function makeProducts(
  rulebook: Rulebook,
  { progress, base, released, formats = allFormats }: ProductOptions,
): Promise<Products> {
  progress.step('writing the manual');
  const manual = manualOf(rulebook, base);
  progress.step('making the evaluators');
  const evaluators = emitEvaluators(rulebook);
  const findings = [...manual.findings, ...evaluators.findings];
  const files = new Map<string, Printed>(evaluators.files);
  files.set('trace.json', `${canonicalJson(traceOf(manual, rulebook), 1)}\n`);
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
  const onPaper: [name: string, writing: Writing][] = [];
  if (formats.includes('pdf')) {
    progress.step('writing cards and forms');
    const input = { rulebook, templates: loadTemplates(), tool: toolVersion };
    const [cards, forms] = [writeCards({ ...input, manual }), writeForms(input)];
    findings.push(...cards.findings, ...forms.findings);
    if (cards.tree.children.length > 0)
      onPaper.push(['cards', cards], ['cards-a5', { ...cards, meta: { ...cards.meta, size: 'a5' } }]);
    if (forms.tree.children.length > 0) onPaper.push(['forms', forms]);
  }
  if (findings.some(({ code }) => code.startsWith('E'))) return { files, findings, ...(comparison && { comparison }) };
  const wanted = printers.filter(({ extension }) => formats.includes(extension));
  const jobs = [
    ...writings.flatMap((each) => wanted.map((printer) => [...each, printer] as const)),
    ...onPaper.flatMap((each) =>
      wanted.filter(({ extension }) => extension === 'pdf').map((printer) => [...each, printer] as const),
    ),
  ];
  for (const [name, writing, printer] of jobs) {
    progress.step(`printing ${name}.${printer.extension}`);
    const printed = await tryPrinting(printer, writing);
    if (Array.isArray(printed)) findings.push(...printed);
    else files.set(`${name}.${printer.extension}`, printed);
  }
  return { files, findings, ...(comparison && { comparison }) };
}

/** What a printer makes, or what stands in its way. */
async function tryPrinting(printer: Printer, writing: Writing): Promise<Printed | Finding[]> {
  try {
    return await printer.print(writing, loadAssets());
  } catch (error) {
    if (error instanceof CannotPrint) return [...error.findings];
    throw error;
  }
}
