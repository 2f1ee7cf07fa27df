import type { Rulebook } from '../../link/rulebook.js';
import { tidy } from '../text/markdown.js';
import { modelFailure } from './failure/model-failure.js';
import type { Figure } from './figure.js';
import { modelInstrument } from './instrument/model-instrument.js';
import { modelPath } from './path/model-path.js';
import { modelTimes } from './times/model-times.js';
import { modelYear } from './year/model-year.js';

/** The figures that there may be. A clinic has those that its rulebook has something to show in. */
const makers = { path: modelPath, instrument: modelInstrument, times: modelTimes, year: modelYear, failure: modelFailure };

export const figureIds = Object.keys(makers);

/** The figures of a manual by id, made from what holds in this clinic. */
export function modelFigures(rulebook: Rulebook): ReadonlyMap<string, Figure> {
  const figures = Object.values(makers).flatMap((make) => make(rulebook) ?? []);
  return new Map(figures.map((figure) => [figure.id, { ...figure, caption: tidy(figure.caption), alt: tidy(figure.alt) }]));
}
