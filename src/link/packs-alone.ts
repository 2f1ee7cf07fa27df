import type { Finding } from '../read/finding.js';
import { bareClinic } from './bare-clinic.js';
import { choosePacks, type Pack } from './choose-packs.js';
import { linkRules } from './link-rules.js';
import type { ProveStrict } from './rule-changes.js';
import type { Rulebook, Source } from './rulebook.js';

/** Which packs are used, and in which region (ISO 3166). */
export interface Uses {
  packs: Record<string, string>;
  region: string;
}

/** The packs that a clinic or a region uses, without any clinic: what published values are compared with. */
export interface PacksAlone {
  /** ISO 3166. */
  region: string;
  /** The date asked for, YYYY-MM-DD. */
  on: string;
  /** The day from which all of the packs hold. */
  effective: string;
  /** The packs' rules on a date, with every task and procedure; nothing where they cannot be linked. */
  rulesOn(date: string): Rulebook | undefined;
  /** What was found in linking them on that date. */
  findingsOn(date: string): Finding[];
  /** Ids of the sources that a document of the packs cites. */
  cites: ReadonlySet<string>;
  /** The bibliographies of all packs, of this and other regions. */
  sources: ReadonlyMap<string, Source>;
}

/** Links packs by themselves, each date once. */
export function packsAlone(
  available: readonly Pack[],
  { packs: wanted, region }: Uses,
  on: string,
  prove: ProveStrict,
): PacksAlone {
  const made = new Map<string, { rules?: Rulebook; findings: Finding[] }>();
  const { packs } = choosePacks(bareClinic([], wanted, region, on), available);
  const linkedOn = (date: string) => {
    const before = made.get(date);
    if (before !== undefined) return before;
    const { rules, findings } = linkRules(available, [bareClinic(packs, wanted, region, date)], date, prove);
    const bare = rules && { ...rules, clinic: { ...rules.clinic, facts: {} }, digest: '', duties: [], notHere: new Map() };
    const linked = { findings, ...(bare !== undefined && { rules: bare }) };
    made.set(date, linked);
    return linked;
  };
  return {
    region,
    on,
    effective:
      packs
        .map(({ head }) => head.data.effective)
        .sort()
        .at(-1) ?? '',
    sources: sourcesOf(available),
    cites: new Set(packs.flatMap(({ documents }) => documents.flatMap(({ data }) => citedIn(data)))),
    rulesOn: (date) => linkedOn(date).rules,
    findingsOn: (date) => linkedOn(date).findings,
  };
}

/** The packs for a region, as a clinic there would use them, in the order of their ids. */
export function regionsOf(packs: readonly Pack[]): (Uses & { id: string; title: string })[] {
  return packs.flatMap(({ head: { data } }) =>
    data.region === undefined
      ? []
      : [{ id: data.id, title: data.title, region: data.region, packs: { [data.id]: data.version } }],
  );
}

/** The bibliographies of all packs, whatever their region. */
export function sourcesOf(packs: readonly Pack[]): Map<string, Source> {
  const documents = packs.flatMap((pack) => pack.documents);
  return new Map(
    documents.flatMap(({ data }) =>
      data.kind === 'sources'
        ? Object.entries(data.sources).map(([id, source]): [string, Source] => [id, { id, ...source }])
        : [],
    ),
  );
}

/** The ids under every `source:` of a document. */
function citedIn(value: unknown): string[] {
  if (Array.isArray(value)) return value.flatMap(citedIn);
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, each]: [string, unknown]): string[] => {
    if (key !== 'source') return citedIn(each);
    if (typeof each === 'string') return [each];
    return typeof each === 'object' && each !== null && 'id' in each ? [String(each.id)] : [];
  });
}
