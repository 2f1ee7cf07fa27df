import satisfies from 'semver/functions/satisfies.js';
import valid from 'semver/functions/valid.js';
import validRange from 'semver/ranges/valid.js';
import type { Finding } from '../read/finding.js';
import { didYouMean } from '../read/nearest.js';
import { quoted, quotedList } from '../read/quoted.js';
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
      const candidates = available.filter((each) => each.id === id);
      const [pack] = candidates;
      const wrong =
        candidates.length > 1 ? twoPacks(candidates) : whyNot(id, range, pack, available, asker.at([path, id]), behind);
      if (wrong !== undefined) findings.push(wrong);
      else if (pack !== undefined && !chosen.includes(pack)) {
        choose(pack.head.data.extends ?? {}, pack.head, 'extends', [...behind, id]);
        chosen.push(pack);
      }
    }
  };
  choose(clinic.data.packs, clinic, 'packs', []);
  for (const { head } of chosen)
    if (!isFor(head.data.region, clinic.data.region))
      findings.push({
        code: 'E312',
        message: `pack \`${head.data.id}\` is for region ${head.data.region}, the clinic is in ${clinic.data.region}`,
        place: clinic.at(['packs', head.data.id]),
        help: 'use the pack of your own region',
      });
  return { packs: chosen, findings };
}

/** Whether a region (ISO 3166) is another or a part of it: `US-CA` is within `US`. */
export function isWithin(region: string, wider: string): boolean {
  return region === wider || region.startsWith(`${wider}-`);
}

/** Whether what is written for a region, or for everywhere, holds in another. */
export function isFor(wider: string | undefined, region: string): boolean {
  return wider === undefined || isWithin(region, wider);
}

function twoPacks(packs: readonly Pack[]): Finding | undefined {
  const [first, second] = packs.map(({ head }) => head.at(['id']));
  if (first === undefined || second === undefined) return undefined;
  const help = `the first one stands at ${first.file}:${first.line}:${first.column}`;
  return { code: 'E307', message: `pack \`${packs[0]?.id ?? ''}\` is already defined`, place: second, help };
}

/** What stands against choosing a pack, if anything does. */
function whyNot(
  id: string,
  range: string,
  pack: Pack | undefined,
  available: readonly Pack[],
  place: Finding['place'],
  behind: readonly string[],
): Finding | undefined {
  const refuse = (message: string, help: string, at = place): Finding => ({ code: 'E312', message, place: at, help });
  if (validRange(range) === null)
    return refuse(`${quoted(range)} is not a range of versions`, 'write a SemVer range such as `^1.0.0`');
  if (pack === undefined) {
    const ids = available.map((each) => each.id);
    return refuse(
      `unknown pack \`${id}\``,
      didYouMean(id, ids) ?? (ids.length > 0 ? `known are ${quotedList(ids)}` : 'there are none'),
    );
  }
  const { version } = pack.head.data;
  if (valid(version) === null)
    return refuse(`${quoted(version)} is not a SemVer version`, 'write three numbers: `1.0.0`', pack.head.at(['version']));
  if (behind.includes(id)) return refuse(`pack \`${id}\` builds on itself`, `the circle is ${[...behind, id].join(' -> ')}`);
  if (!satisfies(version, range))
    return refuse(
      `pack \`${id}\` is at version ${version}, which is not in ${quoted(range)}`,
      'read what changed in the pack, then change the range',
    );
  return undefined;
}
