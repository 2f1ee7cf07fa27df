import type { Command } from 'commander';
import { convertQuantity, writtenUnit } from '../../measure/quantity.js';
import { findUnit, unitNames, units } from '../../measure/units.js';
import { didYouMean } from '../../read/nearest.js';
import { quoted, quotedList } from '../../read/quoted.js';
import { BadUse } from '../bad-use.js';
import { heatMeasurements } from '../measure/measure-heat.js';
import { waterMeasurements } from '../measure/measure-water.js';
import type { Measurement } from '../measure/measurement.js';
import { calculate, readQuantity } from '../measure/read-options.js';
import { asData, decimalsFor, say } from '../measure/report.js';

/** Everything that `rulebook measure` works out from quantities, by name. */
export const measurements: Readonly<Record<string, Measurement>> = {
  ...heatMeasurements,
  ...waterMeasurements,
  convert: {
    about: 'a quantity in another unit',
    args: ['<quantity>', '<unit>'],
    options: [],
    example: 'measure convert "30 psi" kPa',
    run: ([text = '', name = '']) => {
      const quantity = readQuantity(text, 'any', 'quantity');
      const unit = findUnit(name);
      if (unit === undefined) throw new BadUse(`unknown unit ${quoted(name)}`, didYouMean(name, unitNames()));
      const own = findUnit(quantity.unit)?.dimension;
      if (unit.dimension !== own) {
        const fitting = units.filter(({ dimension }) => dimension === own).map(({ ucum }) => writtenUnit(ucum));
        throw new BadUse(`${quoted(text)} is no ${unit.dimension}`, `units for it are ${quotedList(fitting)}`);
      }
      const result = convertQuantity(calculate('convert', { quantity }), unit.ucum);
      return {
        rows: [
          [text, say(result, decimalsFor(result.value) + 2)],
          ['UCUM', unit.ucum],
        ],
        data: { from: asData(quantity), to: asData(result) },
      };
    },
  },
};

/** The example of a measurement, for its help. */
export function addExample(command: Command, example: string): Command {
  return command.addHelpText('after', `\nExample:\n  rulebook ${example}`);
}
