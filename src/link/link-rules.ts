import type { Finding } from '../read/finding.js';
import type { Located } from '../read/read-documents.js';
import type { ClinicDocument } from '../read/types.gen.js';
import { checkVersions, choosePacks, type Pack } from './choose-packs.js';
import { checkClinic, linkClinic, linkInstruments, linkMachines } from './link-clinic.js';
import { linkDecisions } from './link-decisions.js';
import { linkLimits } from './link-limits.js';
import { linkForms, linkProcedures } from './link-procedures.js';
import { linkTasks } from './link-tasks.js';
import { linkFacts, linkWords } from './link-vocabulary.js';
import { type Linking, report } from './linking.js';
import { dayNumber } from './read-values.js';
import { checkLinks, checkReferences } from './references.js';
import type { Change, LinkedRules } from './rulebook.js';

/**
 * Lays the packs a clinic asks for and the clinic's own documents over one another and chooses the values that hold on a
 * date (YYYY-MM-DD). Every value keeps the chain of layers and sources that set it.
 *
 * @throws RangeError when `on` is not a calendar date.
 */
export function linkRules(
  available: readonly Pack[],
  clinicDocuments: readonly Located[],
  on: string,
): { rules?: LinkedRules; findings: Finding[] } {
  if (dayNumber(on) === undefined) throw new RangeError(`\`${on}\` is not a date`);
  const clinics = clinicDocuments.filter((each): each is Located<ClinicDocument> => each.data.kind === 'clinic');
  const [clinicDocument, secondClinic] = clinics;
  if (clinicDocument === undefined) return { findings: [] };
  const { packs, findings } = choosePacks(clinicDocument, available);
  const layers = [...packs, { id: 'clinic', documents: clinicDocuments }];
  const linking: Linking = { on, layers, sources: new Map(), terms: new Map(), findings: [...checkVersions(packs), ...findings] };
  if (secondClinic !== undefined)
    report(linking, 'E307', secondClinic.at(['id']), 'the folder holds more than one clinic document', 'keep one');

  const changes: Change[] = [];
  linkWords(linking);
  const limits = linkLimits(linking, changes);
  const facts = linkFacts(linking, limits);
  const vocabulary = { facts, limits };
  const decisions = linkDecisions(linking, vocabulary, changes);
  const tasks = linkTasks(linking, vocabulary, changes);
  const procedures = linkProcedures(linking, vocabulary, changes);
  const forms = linkForms(linking, vocabulary);
  const machines = linkMachines(linking, vocabulary, tasks);
  const instruments = linkInstruments(linking, vocabulary);
  const clinic = linkClinic(linking, vocabulary, clinicDocument, machines);
  const print = packs.map(({ head }) => head.data.print);
  const rules: LinkedRules = {
    on,
    packs: packs.map(({ head: { data } }) => ({
      id: data.id,
      version: data.version,
      title: data.title,
      ...(data.region !== undefined && { region: data.region }),
      about: data.about,
      licence: data.licence,
    })),
    language: print.findLast((each) => each?.language !== undefined)?.language ?? 'en',
    paper: clinic.document.paper ?? print.findLast((each) => each?.paper !== undefined)?.paper ?? 'a4',
    sources: linking.sources,
    terms: linking.terms,
    facts,
    limits,
    decisions,
    tasks,
    procedures,
    forms,
    clinic,
    machines,
    instruments,
    changes,
  };
  checkReferences(linking, rules);
  checkLinks(linking, rules);
  checkClinic(linking, rules, clinicDocument);
  return { rules, findings: linking.findings };
}
