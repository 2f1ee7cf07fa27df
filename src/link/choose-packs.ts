import semver from 'semver';
import type { Finding } from '../read/finding.js';
import { didYouMean } from '../read/nearest.js';
import type { Located } from '../read/read-documents.js';
import type { ClinicDocument, PackDocument } from '../read/types.gen.js';
import type { Layer } from './linking.js';

/** A folder of rules with its pack document. */
export interface Pack extends Layer {
  head: Located<PackDocument>;
}

/**
 * Chooses the packs a clinic asks for and those they build on, each before the ones that build on it. Reports a pack
 * that is missing, in the wrong version, for another region, or part of a circle.
 */
export function choosePacks(clinic: Located<ClinicDocument>, available: readonly Pack[]): { packs: Pack[]; findings: Finding[] } {
  const findings: Finding[] = [];
  const chosen: Pack[] = [];
  const choose = (wanted: Record<string, string>, asker: Located, path: string, behind: readonly string[]): void => {
    for (const [id, range] of Object.entries(wanted)) {
      const place = asker.at([path, id]);
      const pack = available.find((each) => each.id === id);
      const ids = available.map((each) => each.id);
      if (semver.validRange(range) === null)
        findings.push({
          code: 'E312',
          message: `\`${range}\` is not a range of versions`,
          place,
          help: 'write a SemVer range such as `^1.0.0`',
        });
      else if (pack === undefined)
        findings.push({
          code: 'E312',
          message: `unknown pack \`${id}\``,
          place,
          help: didYouMean(id, ids) ?? `known are ${ids.join(', ')}`,
        });
      else if (!semver.satisfies(pack.head.data.version, range))
        findings.push({
          code: 'E312',
          message: `pack \`${id}\` is at version ${pack.head.data.version}, which is not in \`${range}\``,
          place,
          help: 'read what changed in the pack, then change the range',
        });
      else if (behind.includes(id))
        findings.push({
          code: 'E312',
          message: `pack \`${id}\` builds on itself`,
          place,
          help: `the circle is ${[...behind, id].join(' -> ')}`,
        });
      else if (!chosen.includes(pack)) {
        choose(pack.head.data.extends ?? {}, pack.head, 'extends', [...behind, id]);
        chosen.push(pack);
      }
    }
  };
  choose(clinic.data.packs, clinic, 'packs', []);
  for (const { head } of chosen)
    if (head.data.region !== undefined && head.data.region !== clinic.data.region)
      findings.push({
        code: 'E312',
        message: `pack \`${head.data.id}\` is for region ${head.data.region}, the clinic is in ${clinic.data.region}`,
        place: clinic.at(['packs', head.data.id]),
        help: 'use the pack of your own region',
      });
  return { packs: chosen, findings };
}

/** Reads the versions that packs state and reports those that are not SemVer. */
export function checkVersions(packs: readonly Pack[]): Finding[] {
  return packs
    .filter(({ head }) => semver.valid(head.data.version) === null)
    .map(({ head }) => ({
      code: 'E312',
      message: `\`${head.data.version}\` is not a SemVer version`,
      place: head.at(['version']),
      help: 'write three numbers: `1.0.0`',
    }));
}
