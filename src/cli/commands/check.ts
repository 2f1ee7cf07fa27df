import { existsSync } from 'node:fs';
import { join, relative } from 'node:path';
import { proveStrict } from '../../analyse/prove-strict.js';
import type { CitationReport, Cited } from '../../check/check-citations.js';
import { type CheckReport, checkRulebook } from '../../check/check-rulebook.js';
import { packsAlone, regionsOf } from '../../link/packs-alone.js';
import type { Rulebook } from '../../link/rulebook.js';
import { formatInterval, type Interval } from '../../measure/interval.js';
import { type Finding, hasErrors } from '../../read/finding.js';
import { checkWording, summarize, type WordingReport } from '../../write/gate/check-wording.js';
import { groupBy } from '../../write/text/group-by.js';
import { colors } from '../colors.js';
import { type CommonOptions, type Context, type Opened, openClinic, openPacks } from '../context.js';
import { manualOf, textsFrom } from '../load-manual.js';
import { sampleClinics } from '../load-rulebook.js';
import { countFindings, plural, printFindings } from '../print-findings.js';
import { reportTranslation, type TranslationReport } from '../translation-report.js';

export interface CheckOptions extends CommonOptions {
  json?: boolean;
  citations?: boolean;
  wording?: boolean;
}

/** Where a check says what it found, and whether it lists what is to be looked up. */
interface Voice {
  say: (line: string) => void;
  citations: boolean;
  wording: boolean;
}

/** What `check --json` prints of one clinic, or of the packs of one region. */
interface Checked {
  clinic?: string;
  region?: string;
  findings: Finding[];
  /** Values that cite a published source with which nobody has compared them, ever or for too long. */
  toLookUp?: { about: string; source: string; at?: string; checked?: string; place: string }[];
}

/**
 * `rulebook check`: reads, links and proves clinics, and tries their manuals; without a clinic, also the packs of all
 * regions. The exit code is 1 when there are errors.
 */
export function runCheck(context: Context, folders: readonly string[], options: CheckOptions): number {
  const voice: Voice = {
    say: options.json ? () => {} : context.out,
    citations: options.citations === true,
    wording: options.wording === true,
  };
  const standsInClinic = existsSync(join(context.cwd, 'clinic.yaml'));
  const samples = () => sampleClinics().map((folder) => relative(context.cwd, folder));
  const clinics = folders.length > 0 ? folders : standsInClinic ? ['.'] : samples();
  const rules = openPacks(context, options);
  const opened = clinics.map((folder) => ({ folder, ...openClinic(context, folder, options, rules) }));
  const reports = opened.map((each) => checkClinic(voice, each, context.cwd));
  const [first] = opened;
  if (folders.length === 0 && !standsInClinic && first?.rulebook !== undefined) {
    const covered = new Set(opened.flatMap(({ rulebook }) => rulebook?.clinic.region ?? []));
    for (const region of regionsOf(first.loaded.packs))
      if (!covered.has(region.region)) reports.push(checkRegion(voice, first, region, options.on ?? first.rulebook.on));
  }
  if (options.json) context.out(JSON.stringify(reports, undefined, 2));
  return reports.some(({ findings }) => hasErrors(findings)) ? 1 : 0;
}

function checkClinic(
  voice: Voice,
  { folder, loaded, rulebook, on, findings: read }: Opened & { folder: string },
  base: string,
): Checked {
  const { say } = voice;
  say(colors.bold(on === undefined ? folder : `${folder} on ${on}`));
  if (rulebook === undefined) {
    printFindings(read, say);
    say(countFindings(read));
    return { clinic: folder, findings: read };
  }
  const report = checkRulebook(rulebook, loaded.fixtures, packsAlone(loaded.packs, rulebook.clinic, rulebook.on, proveStrict));
  const translation = reportTranslation(loaded, rulebook);
  const proved = [...read, ...report.findings, ...(translation?.findings ?? [])];
  const wording = voice.wording ? checkWording(rulebook, { templates: new Map(), textOf: textsFrom(base) }) : undefined;
  const findings = hasErrors(proved) ? proved : [...proved, ...manualOf(rulebook, base).findings, ...(wording?.findings ?? [])];
  printFindings(findings, say);
  sayRules(say, rulebook, report);
  if (translation !== undefined) sayTranslation(say, translation);
  say(
    `  clinic    ${plural(rulebook.machines.size, 'machine')}, ${plural(rulebook.instruments.size, 'instrument family', 'instrument families')}, ${plural(rulebook.changes.filter(({ layer }) => layer === 'clinic').length, 'change')} of its own`,
  );
  sayProof(voice, rulebook, report);
  if (wording !== undefined) sayWording(say, wording);
  say(`  result    ${countFindings(findings)}`);
  return { clinic: folder, findings, toLookUp: toLookUp(report.citations) };
}

function checkRegion(voice: Voice, { loaded }: Opened, region: ReturnType<typeof regionsOf>[number], on: string): Checked {
  const { say } = voice;
  say(colors.bold(`${region.title} (${region.region}) on ${on}`));
  const alone = packsAlone(loaded.packs, region, on, proveStrict);
  const rulebook = alone.rulesOn(on);
  if (rulebook === undefined) {
    const findings = alone.findingsOn(on);
    printFindings(findings, say);
    say(countFindings(findings));
    return { region: region.region, findings };
  }
  const report = checkRulebook(rulebook, loaded.fixtures, alone);
  printFindings(report.findings, say);
  sayRules(say, rulebook, report);
  sayProof(voice, rulebook, report);
  say(`  result    ${countFindings(report.findings)}`);
  return { region: region.region, findings: report.findings, toLookUp: toLookUp(report.citations) };
}

function sayRules(say: (line: string) => void, rulebook: Rulebook, { coverage }: CheckReport): void {
  const { packs, decisions, limits, tasks, procedures, forms } = rulebook;
  say(`  packs     ${packs.map(({ id, version }) => `${id} ${version}`).join(', ')}`);
  say(
    `  rules     ${plural(decisions.size, 'decision')} with ${plural(coverage.rules, 'rule')}, ${plural(limits.size, 'limit')}, ${plural(tasks.size, 'task')}, ${plural(procedures.size, 'procedure')}, ${plural(forms.size, 'form')}`,
  );
}

function sayTranslation(say: (line: string) => void, { language, all, translated }: TranslationReport): void {
  const numbers = [translated, all].map((number) => number.toLocaleString('en-US')).join(' of ');
  say(
    `  language  ${language}: ${numbers} texts translated${translated < all ? ' (`list texts --missing` lists the others)' : ''}`,
  );
}

function sayProof(
  { say, citations: listThem }: Voice,
  rulebook: Rulebook,
  { findings, examples, fixtures, coverage, values, citations }: CheckReport,
): void {
  say(`  proof     ${plural(examples, 'example')} and ${plural(fixtures, 'published value')} run`);
  sayAnswers(say, rulebook, findings);
  const unheld = [...new Set(values.unheld.map(({ about }) => about))];
  const some = `; not held: ${unheld.slice(0, 3).join(', ')}${unheld.length > 3 ? ` and ${unheld.length - 3} more` : ''}`;
  say(
    `  values    ${values.all.length - values.unheld.length} of ${plural(values.all.length, 'value')} from a published source held to it${unheld.length === 0 ? '' : some}`,
  );
  say(
    `  unproved  ${coverage.withNeither.length} of ${plural(coverage.rules, 'rule')} have no example and no published value; ${coverage.withoutFixture.length} have no published value`,
  );
  const { cited, never, due } = citations;
  const parts = [
    plural(cited, 'citation'),
    ...(never.length > 0 ? [`${never.length} never compared with the text`] : []),
    ...(due.length > 0 && rulebook.lookAgainAfter ? [`${due.length} not compared ${sayTerm(rulebook.lookAgainAfter)}`] : []),
  ];
  say(`  sources   ${parts.join(', ')}${listThem || parts.length === 1 ? '' : ' (--citations lists them)'}`);
  if (!listThem) return;
  for (const [state, list] of [
    ['never', never],
    ['due', due],
  ] as const)
    for (const [source, cited] of bySource(list)) {
      const since = cited.map(({ checked }) => checked).sort()[0];
      const ids = [...new Set(cited.map(({ about }) => about))].join(', ');
      say(`    ${colors.dim(state.padEnd(7))} ${source}${since === undefined ? '' : `, compared ${since}`}: ${ids}`);
    }
}

/** What the look at every situation came to: W505 to W510. */
function sayAnswers(say: (line: string) => void, { decisions }: Rulebook, findings: readonly Finding[]): void {
  const count = (...codes: string[]) => findings.filter(({ code }) => codes.includes(code)).length;
  const parts = [
    [count('W505'), 'gap', 'gaps'],
    [count('W507', 'W508', 'W509'), 'rule without effect', 'rules without effect'],
    [count('W510'), 'question not decided', 'questions not decided'],
  ] as const;
  const found = parts.flatMap(([number, one, many]) => (number === 0 ? [] : [plural(number, one, many)]));
  const marked = [...decisions.values()].filter(({ gaps }) => gaps.length > 0).length;
  const none = marked > 0 ? `no gap but the intended ones of ${plural(marked, 'decision')}` : 'no gap';
  say(
    `  answers   every situation of ${plural(decisions.size, 'decision')} looked at: ${found.join(', ') || `${none}, no rule without effect`}`,
  );
}

/** How hard the texts are to read: the mean, and the hardest one. */
function sayWording(say: (line: string) => void, report: WordingReport): void {
  const found = summarize(report);
  if (found === undefined) return;
  const { formula, mean, hardest } = found;
  say(
    `  wording   ${formula} ${mean.toFixed(1)} over ${plural(report.all.length, 'text')}; the hardest is ${hardest.kind} ${hardest.id} with ${hardest.level.score.toFixed(1)}`,
  );
}

function sayTerm(interval: Interval): string {
  return formatInterval(interval).replace('every', 'for more than');
}

/** Citations by source, those with most values first. */
function bySource(list: readonly Cited[]): [source: string, cited: Cited[]][] {
  const groups = groupBy(list, ({ citation }) => citation.id);
  return [...groups].sort(([a, many], [b, few]) => few.length - many.length || (a < b ? -1 : 1));
}

function toLookUp({ never, due }: CitationReport): NonNullable<Checked['toLookUp']> {
  return [...never, ...due].map(({ about, citation, checked, place }) => ({
    about,
    source: citation.id,
    ...(citation.at !== undefined && { at: citation.at }),
    ...(checked !== undefined && { checked }),
    place: `${place.file}:${place.line}:${place.column}`,
  }));
}
