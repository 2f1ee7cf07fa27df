import { proveStrict } from '../../src/analyse/prove-strict.js';
import { home, loadClinic, loadPacks, rulebookOn, sampleClinics } from '../../src/cli/load-rulebook.js';
import { packsAlone, regionsOf } from '../../src/link/packs-alone.js';
import type { Rulebook } from '../../src/link/rulebook.js';

const on = '2026-12-01';

/** The rulebooks that come with the tool: the base pack, each region without a clinic, each sample clinic. */
export function shippedRulebooks(): { base: Rulebook; regions: Map<string, Rulebook>; clinics: Map<string, Rulebook> } {
  const loaded = loadPacks(`${home}rules`, home, 'rules');
  const base = loaded.packs.find(({ id }) => id === 'base');
  const alone = (uses: Parameters<typeof packsAlone>[1]) => present(packsAlone(loaded.packs, uses, on, proveStrict).rulesOn(on));
  return {
    base: alone({ packs: { base: base?.head.data.version ?? '' }, region: 'US' }),
    regions: new Map(regionsOf(loaded.packs).map((each) => [each.id, alone(each)])),
    clinics: new Map(
      sampleClinics().map((folder) => [
        folder.split('/').at(-1) ?? '',
        present(rulebookOn(loadClinic(loaded, folder, home), on).rulebook),
      ]),
    ),
  };
}

function present(rulebook: Rulebook | undefined): Rulebook {
  if (rulebook === undefined) throw new Error('the rules cannot be linked');
  return rulebook;
}
