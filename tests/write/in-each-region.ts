import { home, loadClinic, loadPacks, rulebookOn, sampleClinics } from '../../src/cli/load-rulebook.js';
import { regionsOf } from '../../src/link/packs-alone.js';
import type { Rulebook } from '../../src/link/rulebook.js';

const on = '2026-12-01';
const loaded = loadPacks(`${home}rules`, home);

/** The rulebook of each sample clinic, and of one clinic with its machines moved to each region, by name. */
export const shippedClinics: ReadonlyMap<string, Rulebook> = new Map([
  ...sampleClinics().map((folder) => [folder.split('/').at(-1) ?? '', linked(loadClinic(loaded, folder, home))] as const),
  ...regionsOf(loaded.packs).map((region) => [`moved to ${region.id}`, movedTo(region)] as const),
]);

/** The clinic of that name. */
export function clinicCalled(name: string): Rulebook {
  const found = shippedClinics.get(name);
  if (found === undefined) throw new Error(`no clinic \`${name}\``);
  return found;
}

function movedTo({ region, packs }: ReturnType<typeof regionsOf>[number]): Rulebook {
  const sample = loadClinic(loaded, `${home}seeds/harrow-mills`, home);
  const clinicDocuments = sample.clinicDocuments
    .filter(({ data }) => data.kind !== 'overrides')
    .map((each) => (each.data.kind === 'clinic' ? { ...each, data: { ...each.data, region, packs } } : each));
  return linked({ ...sample, clinicDocuments });
}

function linked(clinic: Parameters<typeof rulebookOn>[0]): Rulebook {
  const { rulebook, findings } = rulebookOn(clinic, on);
  if (rulebook === undefined) throw new Error(JSON.stringify(findings));
  return rulebook;
}
