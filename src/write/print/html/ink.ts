import type { ManualMeta } from '../../model/model-title.js';
import type { ColumnWidths } from './column-widths.js';

/** What the pieces of a page need to know while they are rendered. */
export interface Ink {
  meta: ManualMeta;
  widths: ColumnWidths;
  /** The drawings as SVG, by the id of their figure. */
  drawings: ReadonlyMap<string, string>;
}
