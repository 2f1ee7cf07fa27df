import type { Rulebook } from '../../link/rulebook.js';
import { formatInterval } from '../../measure/interval.js';
import { formatQuantity } from '../../measure/quantity.js';
import { didYouMean } from '../../read/nearest.js';
import { BadUse } from '../bad-use.js';
import { type CommonOptions, type Context, openPacks, openSoundClinic } from '../context.js';
import { inColumns } from '../in-columns.js';

export interface ListOptions extends CommonOptions {
  clinic?: string;
  json?: boolean;
}

type Row = { id: string } & Record<string, string>;

const rowsOf: Record<string, (rulebook: Rulebook) => Row[]> = {
  decisions: ({ decisions }) =>
    [...decisions.values()].map(({ id, question, rules }) => ({ id, question, rules: String(rules.length) })),
  rules: ({ decisions }) =>
    [...decisions.values()].flatMap(({ rules }) => rules.map(({ id, outcome = 'needs', layer }) => ({ id, outcome, layer }))),
  facts: ({ facts }) =>
    [...facts.values()].map(({ id, type, unit = '', members, question }) => ({
      id,
      type,
      values: unit || members.join(' '),
      question,
    })),
  limits: ({ limits }) =>
    [...limits.values()].map(({ id, value, label, chain }) => ({
      id,
      value: formatQuantity(value),
      label,
      layer: chain.at(-1)?.layer ?? '',
    })),
  tasks: ({ tasks, duties }) =>
    [...tasks.values()].map(({ id, every, title }) => ({
      id,
      title,
      every: every === undefined ? 'after events' : formatInterval(every),
      on: duties
        .filter(({ task, machine }) => task === id && machine !== undefined)
        .map(({ machine }) => machine)
        .join(' '),
    })),
  procedures: ({ procedures }) => [...procedures.values()].map(({ id, title, stage }) => ({ id, title, stage })),
  policies: ({ policies }) =>
    [...policies.values()].map(({ id, title, points }) => ({ id, title, points: String(points.length) })),
  requirements: ({ requirements }) =>
    [...requirements.values()].map(({ id, item, text, answeredBy }) => ({
      id,
      item,
      asks: text,
      answered: answeredBy.map(({ scheme, id: answer }) => `${scheme}:${answer}`).join(' ') || 'open',
    })),
  forms: ({ forms }) => [...forms.values()].map(({ id, title, covers }) => ({ id, title, covers })),
  cards: ({ cards }) => [...cards.values()].map(({ id, title, places }) => ({ id, title, places: places.join(' ') })),
  terms: ({ terms }) => [...terms.values()].map(({ id, label, domain = '' }) => ({ id, label, domain })),
  sources: ({ sources }) => [...sources.values()].map(({ id, title, type }) => ({ id, type, title })),
  machines: ({ machines }) =>
    [...machines.values()].map(({ id, name, kind, programs }) => ({
      id,
      name,
      kind,
      programs: programs.map((program) => program.name).join(', '),
    })),
  instruments: ({ instruments }) => [...instruments.values()].map(({ id, name, group }) => ({ id, name, group })),
  changes: ({ changes }) =>
    changes.map(({ about, layer, change, deviation }) => ({
      id: about,
      layer,
      change,
      deviation: deviation === undefined ? '' : `look at again by ${deviation['review-by']}`,
    })),
};

/** What `rulebook list` can list. */
export const listable: readonly string[] = ['regions', 'texts', ...Object.keys(rowsOf)];

/** `rulebook list`: the things of one kind in a clinic's rulebook, one a line. */
export function runList(context: Context, kind: string, options: ListOptions): number {
  const rows = Object.hasOwn(rowsOf, kind) ? rowsOf[kind] : undefined;
  if (rows === undefined)
    throw new BadUse(`cannot list \`${kind}\``, didYouMean(kind, listable) ?? `one of ${listable.join(', ')}`);
  const open = openSoundClinic(context, options.clinic, options, openPacks(context, options, 'rules'));
  if (open === undefined) return 1;
  const sorted = rows(open.rulebook).sort((a, b) => (a.id < b.id ? -1 : 1));
  if (options.json) context.out(JSON.stringify(sorted, undefined, 2));
  else {
    const keys = Object.keys(sorted[0] ?? {});
    const cells = sorted.map((row) => keys.map((key) => row[key] ?? ''));
    for (const line of inColumns(cells, 60)) context.out(line);
  }
  return 0;
}
