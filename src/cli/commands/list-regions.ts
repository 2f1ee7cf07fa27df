import { proveStrict } from '../../analyse/prove-strict.js';
import { packsAlone, regionsOf } from '../../link/packs-alone.js';
import type { Citation, Rulebook, SetBy } from '../../link/rulebook.js';
import type { Interval } from '../../measure/interval.js';
import { type Quantity, writtenUnit } from '../../measure/quantity.js';
import { hasErrors } from '../../read/finding.js';
import { colors } from '../colors.js';
import { type CommonOptions, type Context, openPacks } from '../context.js';
import { inColumns } from '../in-columns.js';
import { countFindings, printFindings } from '../print-findings.js';

export interface RegionsOptions extends CommonOptions {
  compare?: boolean;
  json?: boolean;
}

/** One thing that not all regions say alike, with what each of them says; `base` is what holds where a region says nothing. */
interface Difference {
  about: string;
  base: string;
  regions: Record<string, string>;
}

/** `rulebook list regions`: the regions that have a pack, and with `--compare` what they change. */
export function runListRegions(context: Context, options: RegionsOptions): number {
  const { packs, findings: read } = openPacks(context, options, 'rules');
  const latest =
    packs
      .map(({ head }) => head.data.effective)
      .sort()
      .at(-1) ?? '';
  const on = options.on ?? latest;
  const linked = regionsOf(packs).map((region) => ({ ...region, alone: packsAlone(packs, region, on, proveStrict) }));
  const findings = [...read, ...linked.flatMap(({ alone }) => alone.findingsOn(on))];
  if (hasErrors(findings)) {
    printFindings(findings, context.err);
    context.err(countFindings(findings));
    return 1;
  }
  const regions = linked.flatMap(({ id, title, alone }) => {
    const rulebook = alone.rulesOn(on);
    return rulebook === undefined ? [] : [{ id, title, rulebook }];
  });
  if (options.compare) return printComparison(context, regions, on, options);
  const rows = regions.map(({ id, title, rulebook }) => ({
    id,
    region: rulebook.clinic.region,
    paper: rulebook.paper,
    language: rulebook.language,
    changes: String(rulebook.changes.length),
    title,
  }));
  if (options.json) context.out(JSON.stringify(rows, undefined, 2));
  else for (const line of inColumns(rows.map((row) => Object.values(row)))) context.out(line);
  return 0;
}

interface Region {
  id: string;
  title: string;
  rulebook: Rulebook;
}

function printComparison(context: Context, regions: readonly Region[], on: string, { json }: RegionsOptions): number {
  const groups = compareRegions(regions);
  if (json) {
    context.out(JSON.stringify({ on, regions: regions.map(({ id }) => id), ...groups }, undefined, 2));
    return 0;
  }
  context.out(`${colors.bold(`What the regions change, on ${on}`)}  (* recalled, awaits checking; blank: as in the base pack)`);
  for (const [title, differences] of Object.entries(groups)) {
    if (differences.length === 0) continue;
    context.out('');
    const rows = differences.map(({ about, base, regions: said }) => [about, base, ...regions.map(({ id }) => said[id] ?? '')]);
    const [head = '', ...lines] = inColumns([[title, 'base', ...regions.map(({ id }) => id)], ...rows]);
    context.out(colors.bold(head));
    for (const line of lines) context.out(line);
  }
  return 0;
}

/** What the regions say otherwise than the base pack: printing, words, limits, intervals, rules and steps. */
function compareRegions(regions: readonly Region[]): Record<string, Difference[]> {
  const differences = (of: (region: Region) => Map<string, { base: string; says: string }>): Difference[] => {
    const found = new Map<string, Difference>();
    for (const region of regions)
      for (const [about, { base, says }] of of(region)) {
        const difference = found.get(about) ?? { about, base, regions: {} };
        difference.regions[region.id] = says;
        found.set(about, difference);
      }
    return [...found.values()].sort((a, b) => (a.about < b.about ? -1 : 1));
  };
  return {
    printing: differences(({ rulebook }) => {
      const also = Object.entries(rulebook.alsoUnits).map(([unit, other]) => `${writtenUnit(unit)} (${writtenUnit(other)})`);
      return new Map([
        ['paper', { base: '', says: rulebook.paper }],
        ['language', { base: '', says: rulebook.language }],
        ...(also.length === 0 ? [] : ([['second units', { base: '', says: also.join(', ') }]] as const)),
      ]);
    }),
    words: differences(({ rulebook }) => changesOf(rulebook, 'term', ({ about }) => rulebook.terms.get(about)?.label ?? '')),
    limits: differences(({ rulebook }) =>
      chainsOf([...rulebook.limits.values()], ({ quantity }) => (quantity === undefined ? '' : write(quantity))),
    ),
    intervals: differences(({ rulebook }) =>
      chainsOf([...rulebook.tasks.values()], ({ every }) => (every === undefined ? '' : writeInterval(every))),
    ),
    rules: differences(({ rulebook }) => changesOf(rulebook, 'rule', ({ kind }) => kind.replace('-rule', ''))),
    steps: differences(({ rulebook }) => changesOf(rulebook, 'step', ({ kind }) => kind.replace('-step', ''))),
  };
}

type Said = Map<string, { base: string; says: string }>;

function chainsOf(things: readonly { id: string; chain: readonly SetBy[] }[], say: (entry: SetBy) => string): Said {
  return new Map(
    things.flatMap(({ id, chain }) => {
      const last = chain.at(-1);
      if (last === undefined || last.layer === 'base') return [];
      const [first] = chain;
      const base = first?.layer === 'base' ? say(first) : '-';
      return [[id, { base, says: `${say(last)}${mark(last.source)}` }] as const];
    }),
  );
}

function changesOf(
  { changes }: Rulebook,
  kind: 'term' | 'rule' | 'step',
  say: (change: Rulebook['changes'][number]) => string,
): Said {
  return new Map(
    changes.flatMap((change) =>
      change.kind.endsWith(kind) ? [[change.about, { base: '', says: `${say(change)}${mark(change.source)}` }] as const] : [],
    ),
  );
}

function mark(source: Citation | undefined): string {
  return source?.evidence === 'recalled' ? '*' : '';
}

function write({ value, unit }: Quantity): string {
  const written = writtenUnit(unit);
  if (written === 'A0' || written === 'pH') return `${written} ${value}`;
  return `${value} ${value === 1 ? written.replace(/s$/, '') : written}`;
}

function writeInterval({ time, cycles }: Interval): string {
  return [time, cycles].flatMap((each) => (each === undefined ? [] : [write(each)])).join(' or ');
}
