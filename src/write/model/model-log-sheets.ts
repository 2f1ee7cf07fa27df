import type { Form, Machine, Rulebook } from '../../link/rulebook.js';
import type { Markdown } from '../text/markdown.js';
import { said } from '../text/markdown-safe.js';
import { sayMoments } from '../text/say-moment.js';
import { columnsFor, modelSheet, sheetsOf } from './model-forms.js';

/** Most lines of a sheet that shares its page with another one in the manual. */
const mostOfHalf = 8;

/** The blank logs of a clinic, each sheet on a page of its own, and a filled example of each form. */
export function modelLogSheets(rulebook: Rulebook) {
  const sheets = sheetsOf(rulebook);
  return {
    sheets: sheets.map(({ form, machine, first }) => ({
      ...modelSheet(rulebook, form, machine, first, linesOf(form)),
      clinic: rulebook.clinic.name,
      ...periodOf(form),
    })),
    examples: sheets.flatMap(({ form, machine, first }) => (first ? modelExample(rulebook, form, machine) : [])),
  };
}

function linesOf({ rows, 'sheet-rows': own }: Form): number {
  return own ?? (rows <= mostOfHalf ? 2 * rows : rows);
}

/** What the head of a sheet asks for. */
function periodOf({ period = 'sheet' }: Form) {
  return { week: period === 'week', month: period === 'month' };
}

function modelExample(rulebook: Rulebook, form: Form, machine: Machine | undefined) {
  if (form.sample === undefined) return [];
  const columns = columnsFor(rulebook, form, machine);
  const rows = form.sample.map(({ cells }) => columns.map(({ id }) => sayCell(rulebook, form, cells[id] ?? '')));
  return [{ ...modelSheet(rulebook, form, machine, false, 0), clinic: rulebook.clinic.name, rows }];
}

function sayCell({ language }: Rulebook, { id }: Form, text: string): Markdown {
  return said(sayMoments(text, language), id);
}
