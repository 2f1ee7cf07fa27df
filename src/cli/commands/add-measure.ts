import type { Command } from 'commander';
import { BadUse } from '../bad-use.js';
import type { Context } from '../context.js';
import type { Options } from '../measure/read-options.js';
import { printReport } from '../measure/report.js';
import { addExample, measurements } from './measure.js';
import { measureFile, type Part } from './measure-record.js';

const counting: [string, string] = [
  '--counting <way>',
  'how the time between readings counts: lower, held or mean (default: lower)',
];
const channels: [string, string] = ['--channels <names>', 'only these channels of temperature, with commas between'];
const reference: [string, string] = ['--reference <temperature>', 'reference temperature (default: 121.1 °C)'];
const band: [string, string][] = [
  ['--from <temperature>', 'where the band of the hold starts'],
  ['--to <temperature>', 'where it ends'],
  ['--band <difference>', 'its width, instead of its end'],
];
const air: [string, string][] = [
  ['--altitude <length>', 'altitude of the place, where the record has gauge pressures'],
  ['--air <pressure>', 'pressure of the air as a barometer shows it, instead of an altitude'],
];

/** Options of the measurements that also read a record by --file. */
const ofFile: Readonly<Record<string, [string, string][]>> = {
  a0: [counting, channels],
  f0: [reference, counting, channels],
  steam: [...band, channels],
};

/** Adds everything under `measure`; `done` is told the exit code. */
export function addMeasurements(measure: Command, context: Context, done: (code: number) => void): void {
  const json = (command: Command) => command.option('--json', 'print it as JSON');
  for (const [name, { about, args, options, example, run }] of Object.entries(measurements)) {
    const command = measure.command(name).description(about);
    for (const each of args) command.argument(each);
    const recorded = ofFile[name];
    for (const [flags, words] of options) command.option(flags, words);
    if (recorded !== undefined) {
      command.option('--file <record>', 'measure the record of a cycle in this file instead');
      for (const [flags, words] of recorded) command.option(flags, words);
    }
    addExample(json(command), example).action(() => {
      const given = command.opts<Options>();
      const { file } = given;
      if (typeof file === 'string' && isPart(name)) {
        const direct = ['temperature', 'time', 'absolute', 'gauge', 'z'].find((each) => given[each] !== undefined);
        if (direct !== undefined) throw new BadUse(`--file and --${direct} do not go together`, 'give one of them');
        done(measureFile(context, name, file, given));
      } else {
        const stray = ['counting', 'channels', 'from', 'to', 'band'].find((each) => given[each] !== undefined);
        if (stray !== undefined) throw new BadUse(`--${stray} is for a record`, 'add `--file` with its name');
        printReport(context, run(command.args, given), { json: given['json'] === true });
      }
    });
  }
  const fromFile = (part: Part, about: string, options: [string, string][], example: string) => {
    const command = measure.command(part).description(about);
    if (part === 'record') command.argument('<file>', 'record of a cycle');
    else command.requiredOption('--file <record>', 'record of a cycle');
    for (const [flags, words] of options) command.option(flags, words);
    addExample(json(command), example).action(() => {
      const given = command.opts<Options>();
      done(measureFile(context, part, command.args[0] ?? String(given['file']), given));
    });
  };
  fromFile(
    'hold',
    'longest time in which every sensor of a record is within a band',
    [...band, channels],
    'measure hold --file cycle.csv --from "134 °C" --band "3 K"',
  );
  fromFile(
    'record',
    'everything about the record of a cycle at once',
    [...band, reference, counting, channels, ...air, ['--chart <file>', 'draw it as SVG into this file']],
    'measure record cycle.csv --from "134 °C" --band "3 K" --chart cycle.svg',
  );
}

function isPart(name: string): name is Part {
  return ['a0', 'f0', 'hold', 'steam', 'record'].includes(name);
}
