import { knownFacts } from '../../decide/decide.js';
import { truthOf } from '../../decide/truth.js';
import type { Form, Machine, Rulebook } from '../../link/rulebook.js';
import { refer } from '../text/markdown.js';
import { said, textOfLayer } from '../text/markdown-safe.js';
import { phraseMarkdown } from '../text/phrase.js';
import { capitalize, endWithStop } from '../text/say-list.js';
import { labelOf } from './label-of.js';

/** Most empty rows of a sheet that takes half a page. */
const rowsOfHalfSheet = 8;

/**
 * The blank sheets: one for each machine of a form's kind, with the columns that machine needs. Half sheets come last, so
 * that two share a page.
 */
export function modelForms(rulebook: Rulebook) {
  const sheets = sheetsOf(rulebook).map(({ form, machine, first }) => modelSheet(rulebook, form, machine, first));
  return [...sheets.filter(({ size }) => size === 'whole'), ...sheets.filter(({ size }) => size === 'half')];
}

/** Each form once, or once for each machine of its kind. */
export function sheetsOf(rulebook: Rulebook): { form: Form; machine: Machine | undefined; first: boolean }[] {
  return [...rulebook.forms.values()].flatMap((form) => {
    const machines = form.machine === undefined ? [undefined] : machinesOf(rulebook, form, form.machine);
    return machines.map((machine, index) => ({ form, machine, first: index === 0 }));
  });
}

/** The machines that have a sheet of a form: those of its kind in service, or all of them where none is. */
function machinesOf(rulebook: Rulebook, { onlyWhen }: Form, kind: string): Machine[] {
  const all = [...rulebook.machines.values()].filter(
    (machine) =>
      machine.kind === kind && (onlyWhen === undefined || truthOf(onlyWhen, knownFacts(rulebook, machine.facts)) !== false),
  );
  const running = all.filter(({ inService }) => inService);
  return running.length > 0 ? running : all;
}

/** The columns of a form that hold for a machine. */
export function columnsFor(rulebook: Rulebook, form: Form, machine: Machine | undefined): Form['columns'] {
  const given = knownFacts(rulebook, machine?.facts ?? {});
  return form.columns.filter(({ onlyWhen }) => onlyWhen === undefined || truthOf(onlyWhen, given) !== false);
}

/** A sheet with its empty lines. */
export function modelSheet(rulebook: Rulebook, form: Form, machine: Machine | undefined, first: boolean, lines = form.rows) {
  const columns = columnsFor(rulebook, form, machine);
  const text = (words: string) => textOfLayer(words, form.layer);
  return {
    id: form.id,
    sheet: machine === undefined ? form.id : `${form.id}/${machine.id}`,
    first,
    title: form.title,
    machine: machine === undefined ? null : said(machine.name, 'clinic'),
    serial: machine === undefined ? null : said(`${machine.model}, ${machine.serial}`, machine.id),
    purpose: text(form.purpose),
    layout: form.layout,
    size: form.rows <= rowsOfHalfSheet ? 'half' : 'whole',
    widths: columns.map(({ width }) => width).join(' '),
    columns: columns.map(({ label, unit, limit }) => ({
      label,
      unit: unit === undefined ? null : said(unit, form.id),
      limit: limit === undefined ? null : sayColumnLimit(rulebook, limit),
    })),
    rows: Array.from({ length: lines }, (_, row) => columns.map(({ numbered }) => (numbered === true ? String(row + 1) : ''))),
    covers: text(endWithStop(form.covers)),
    signedBy: refer('role', form['signed-by']),
    signer: capitalize(labelOf(rulebook, form['signed-by'])),
    signedWhen: form['signed-when'] === undefined ? null : text(endWithStop(form['signed-when'])),
    keep: refer('limit', form.keep),
    note: form.note === undefined ? null : text(form.note),
  };
}

/** `at most 10 minutes`: what is written has to stay on that side. */
function sayColumnLimit(rulebook: Rulebook, id: string) {
  const side = rulebook.limits.get(id)?.stricter === 'lower' ? 'compare.at-most' : 'compare.at-least';
  return phraseMarkdown(rulebook, side, { value: refer('limit', id) });
}
