import { describeDimension, dimensionOf, parseQuantity } from '../measure/quantity.js';
import { findUnit } from '../measure/units.js';
import { quoted } from '../read/quoted.js';
import type { Located } from '../read/read-documents.js';
import type { FormDocument } from '../read/types.gen.js';
import type { Vocabulary } from './compile-condition.js';
import { expectKnown, type Linking, report } from './linking.js';

type Column = FormDocument['columns'][number];

/** Reports cells of a filled example that stand in no column, and readings that measure something else than their column does. */
export function checkSample(linking: Linking, { limits }: Pick<Vocabulary, 'limits'>, document: Located<FormDocument>): void {
  const { id: form, columns, sample = [] } = document.data;
  sample.forEach(({ cells }, index) => {
    for (const [id, text] of Object.entries(cells)) {
      const path = ['sample', index, 'cells', id];
      const known = columns.map((column) => column.id);
      if (!expectKnown(linking, 'E306', `column of \`${form}\``, id, known, document.atKey(path))) continue;
      const unit = unitOf(
        columns.find((column) => column.id === id),
        limits,
      );
      const read = unit === undefined ? undefined : parseQuantity(text);
      if (unit === undefined || read?.ok !== true) continue;
      const [got, wanted] = [dimensionOf(read.value), dimensionOf({ value: 0, unit })];
      if (got === wanted) continue;
      const message = `${quoted(text)} is ${describeDimension(got)}, expected ${describeDimension(wanted)}`;
      report(linking, 'E308', document.at(path), message, 'write the number alone, in the unit of its column');
    }
  });
}

/** The UCUM code of what a column holds: of its own unit, or else of its limit. */
function unitOf(column: Column | undefined, limits: Vocabulary['limits']): string | undefined {
  if (column?.unit !== undefined) return findUnit(column.unit)?.ucum;
  return column?.limit === undefined ? undefined : limits.get(column.limit)?.value.unit;
}
