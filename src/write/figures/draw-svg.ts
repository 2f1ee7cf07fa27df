import { drawFailure } from './failure/draw-failure.js';
import type { Figure } from './figure.js';
import { drawInstrument } from './instrument/draw-instrument.js';
import { drawPath } from './path/draw-path.js';
import { drawTimes } from './times/draw-times.js';
import { drawYear } from './year/draw-year.js';

/**
 * A figure as SVG that needs nothing from outside: 165 mm wide, black on white, text as text in Source Sans 3, without ids
 * and style sheets. The same figure gives the same bytes.
 */
export async function drawSvg({ drawing }: Pick<Figure, 'drawing'>): Promise<string> {
  switch (drawing.kind) {
    case 'path':
      return drawPath(drawing);
    case 'times':
      return drawTimes(drawing);
    case 'year':
      return drawYear(drawing);
    case 'instrument':
      return drawInstrument(drawing);
    case 'failure':
      return drawFailure(drawing);
  }
}
