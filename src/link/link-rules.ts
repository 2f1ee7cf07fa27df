import { dayNumber } from '../measure/day-number.js';
import { type Interval, strictestInterval } from '../measure/interval.js';
import { describeDimension, dimensionOf } from '../measure/quantity.js';
import { type Finding, hasErrors } from '../read/finding.js';
import { quoted } from '../read/quoted.js';
import type { Located } from '../read/read-documents.js';
import type { ClinicDocument, Document } from '../read/types.gen.js';
import { choosePacks, type Pack } from './choose-packs.js';
import { checkCards, linkCards } from './link-cards.js';
import { checkClinic, linkClinic, linkInstruments, linkMachines } from './link-clinic.js';
import { linkDecisions } from './link-decisions.js';
import { linkLimits } from './link-limits.js';
import { linkPolicies } from './link-policies.js';
import { linkForms, linkProcedures } from './link-procedures.js';
import { linkRequirements } from './link-requirements.js';
import { linkTasks } from './link-tasks.js';
import { linkFacts, linkPhrases, linkWords, renameTerms } from './link-vocabulary.js';
import { documentsOf, type Layer, type Linking, report } from './linking.js';
import { readInterval, readUnit } from './read-values.js';
import { checkLinks, checkReferences } from './references.js';
import { refuseCircles } from './refuse-circles.js';
import { type ProveStrict, requireStrictLimits, requireStrictRules } from './rule-changes.js';
import type { Change, LinkedRules } from './rulebook.js';
import { wordingOf } from './spell.js';
import { noTranslations, type Translations, wordLayers } from './translate.js';

/**
 * Lays the packs a clinic asks for and the clinic's own documents over one another and chooses the values that hold on a
 * date (YYYY-MM-DD). Every value keeps the chain of layers and sources that set it. Where there are errors there are no
 * rules: what was proved of half of them would be false. `prove` says where a change of rules would make an answer less strict.
 * Texts are in the language that the clinic asks for, as far as there are `translations`.
 *
 * @throws RangeError when `on` is not a calendar date.
 */
export function linkRules(
  available: readonly Pack[],
  clinicDocuments: readonly Located[],
  on: string,
  prove: ProveStrict,
  translations: Translations = noTranslations,
): { rules?: LinkedRules; findings: Finding[] } {
  if (dayNumber(on) === undefined) throw new RangeError(`\`${on}\` is not a date`);
  const clinics = clinicDocuments.filter((each): each is Located<ClinicDocument> => each.data.kind === 'clinic');
  const [clinicDocument] = clinics;
  if (clinicDocument === undefined) return { findings: [] };
  const { packs, findings } = choosePacks(clinicDocument, available);
  // Without the packs asked for, every name would be unknown.
  if (findings.length > 0) return { findings };
  const words = wordLayers({ findings }, packs, { id: 'clinic', documents: clinicDocuments }, clinicDocument, translations);
  const { layers } = words;
  const linking: Linking = { on, layers, sources: new Map(), terms: new Map(), passedOver: new Set(), findings };
  for (const layer of layers) refuseStrays(linking, layer);
  // With documents of another folder among them, every name would be there twice.
  if (hasErrors(linking.findings)) return { findings: linking.findings };

  const changes: Change[] = [];
  linkWords(linking);
  renameTerms(linking, changes);
  const { limits, limitChanges } = linkLimits(linking, changes);
  const facts = linkFacts(linking, limits);
  const vocabulary = { facts, limits };
  const { decisions, ruleChanges } = linkDecisions(linking, vocabulary, changes);
  if (refuseCircles(linking, facts, decisions)) return { findings: linking.findings };
  const provable = { facts, decisions, terms: linking.terms };
  requireStrictLimits(linking, provable, limitChanges, prove);
  requireStrictRules(linking, provable, ruleChanges, prove);
  const tasks = linkTasks(linking, vocabulary, changes);
  const procedures = linkProcedures(linking, vocabulary, changes);
  const policies = linkPolicies(linking, vocabulary, changes);
  const forms = linkForms(linking, vocabulary);
  const cards = linkCards(linking, vocabulary);
  const machines = linkMachines(linking, vocabulary, tasks);
  const instruments = linkInstruments(linking, vocabulary);
  const clinic = linkClinic(linking, vocabulary, clinicDocument, machines);
  const print = packs.map(({ head }) => head.data.print);
  const lookAgainAfter = packs
    .flatMap(({ head }) => {
      const text = head.data['look-again-after'];
      return text === undefined ? [] : (readInterval(linking, text, head.at(['look-again-after'])) ?? []);
    })
    .reduce<Interval | undefined>((sofar, each) => (sofar === undefined ? each : strictestInterval(sofar, each)), undefined);
  const rules: LinkedRules = {
    on,
    packs: layers
      .flatMap((layer) => documentsOf(layer, 'pack'))
      .map(({ data }) => ({
        id: data.id,
        version: data.version,
        title: data.title,
        ...(data.region !== undefined && { region: data.region }),
        about: data.about,
        licence: data.licence,
      })),
    wording: wordingOf(layers),
    phrases: linkPhrases(layers),
    alsoUnits: linkAlsoUnits(linking, packs),
    ...(lookAgainAfter !== undefined && { lookAgainAfter }),
    language: words.language,
    ...(words.translation !== undefined && { translation: words.translation }),
    paper: clinic.document.paper ?? print.findLast((each) => each?.paper !== undefined)?.paper ?? 'a4',
    sources: linking.sources,
    terms: linking.terms,
    facts,
    limits,
    decisions,
    tasks,
    procedures,
    policies,
    forms,
    cards,
    clinic,
    machines,
    instruments,
    requirements: linkRequirements(linking),
    changes,
  };
  checkReferences(linking, rules);
  checkLinks(linking, rules);
  checkCards(linking, rules);
  checkClinic(linking, rules, clinicDocument);
  return hasErrors(linking.findings) ? { findings: linking.findings } : { rules, findings: linking.findings };
}

/** The second units that the packs print in brackets, by the UCUM code they stand behind; a later pack wins. */
function linkAlsoUnits(linking: Linking, packs: readonly Pack[]): Record<string, string> {
  const units: Record<string, string> = {};
  for (const { head } of packs)
    for (const [unit, also] of Object.entries(head.data.print?.also ?? {})) {
      const first = readUnit(linking, unit, head.atKey(['print', 'also', unit]));
      const second = readUnit(linking, also, head.at(['print', 'also', unit]));
      if (first === undefined || second === undefined) continue;
      const [got, wanted] = [dimensionOf({ value: 0, unit: second }), dimensionOf({ value: 0, unit: first })];
      if (got === wanted) units[first] = second;
      else {
        const message = `${quoted(also)} measures ${describeDimension(got)}, ${quoted(unit)} ${describeDimension(wanted)}`;
        report(linking, 'E308', head.at(['print', 'also', unit]), message, 'name two units of one quantity');
      }
    }
  return units;
}

/** Reports documents that have no effect where they stand: a clinic's in a pack, a pack in a clinic, a translation in either, and a second head. */
function refuseStrays(linking: Linking, { id, documents }: Layer): void {
  const [head, here, elsewhere] =
    id === 'clinic' ? (['clinic', 'a clinic folder', packKinds] as const) : (['pack', 'a pack of rules', clinicKinds] as const);
  for (const { data, at } of documents) {
    const help = elsewhere[data.kind];
    if (help !== undefined)
      report(linking, 'E324', at(['kind']), `a document of kind \`${data.kind}\` does not belong in ${here}`, help);
  }
  for (const { at } of documents.filter(({ data }) => data.kind === head).slice(1))
    report(
      linking,
      'E307',
      at(['kind']),
      `the folder holds more than one ${head} document`,
      `keep one, or give the folder of one ${head}`,
    );
}

const toLanguages = 'move it into a folder of `rules/languages`';

/** Kinds of document that do not belong in a clinic folder, and where they go. */
const packKinds: Partial<Record<Document['kind'], string>> = {
  pack: 'move it into a folder of rules',
  translation: toLanguages,
};

/** Kinds of document that do not belong in a pack, and where they go. */
const clinicKinds: Partial<Record<Document['kind'], string>> = {
  clinic: 'move it into a clinic folder',
  equipment: 'move it into a clinic folder',
  instruments: 'move it into a clinic folder',
  translation: toLanguages,
};
