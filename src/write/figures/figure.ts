import type { InstrumentDrawing } from './instrument/model-instrument.js';
import type { PathDrawing } from './path/model-path.js';
import type { TimesDrawing } from './times/model-times.js';
import type { YearDrawing } from './year/model-year.js';

/** What a figure shows, with every word and number settled; drawing it adds none. */
export type Drawing = PathDrawing | TimesDrawing | YearDrawing | InstrumentDrawing;

/** A figure of the manual, made from the rulebook. */
export interface Figure {
  id: string;
  /** Printed below it. */
  caption: string;
  /** What it shows, in sentences, for whoever cannot see it. */
  alt: string;
  drawing: Drawing;
}
