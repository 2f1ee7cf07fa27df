import type { FailureDrawing } from './failure/model-failure.js';
import type { InstrumentDrawing } from './instrument/model-instrument.js';
import type { PathDrawing } from './path/model-path.js';
import type { TimesDrawing } from './times/model-times.js';
import type { YearDrawing } from './year/model-year.js';

/** A figure as data. It becomes a picture when it is printed. */
export interface Figure {
  id: string;
  caption: string;
  /** What it shows, for who cannot see it: whole sentences. */
  alt: string;
  drawing: Drawing;
}

/** What is drawn, with every word and number settled: drawing it adds none. */
export type Drawing = PathDrawing | TimesDrawing | YearDrawing | InstrumentDrawing | FailureDrawing;
