import { basename, dirname, resolve } from 'node:path';
import { f0Reference } from '../../measure/lethality.js';
import { drawChart } from '../../measure/record/draw-chart.js';
import { measureRecord, type Settings } from '../../measure/record/measure-record.js';
import { BadUse } from '../bad-use.js';
import type { Context } from '../context.js';
import { openRecord, readAir, recordName } from '../measure/open-record.js';
import { type Options, optionalQuantity, readBand, readCounting } from '../measure/read-options.js';
import { a0Report, countingReport, f0Report, holdReport, join, recordReport, steamReport } from '../measure/record-report.js';
import { printReport, type Report } from '../measure/report.js';
import { writeFiles } from '../write-files.js';

/** What is asked about a record; `record` is everything. */
export type Part = 'a0' | 'f0' | 'hold' | 'steam' | 'record';

/** Measures the record in a file. A file that is no record gives no number and exit code 1. */
export function measureFile(context: Context, part: Part, file: string, options: Options): number {
  const band = readBand(options);
  const air = readAir(options);
  if (band === undefined && (part === 'hold' || part === 'steam'))
    throw new BadUse('--from is missing', 'state the band of the hold, such as `--from "134 °C" --band "3 K"`');
  const reference = optionalQuantity(options, 'reference', 'temperature') ?? f0Reference;
  const settings: Settings = {
    counting: readCounting(options),
    reference,
    ...(band && { band }),
    ...(air !== undefined && { air }),
  };
  const record = openRecord(context, file, options);
  if (record === undefined) return 1;
  if (part === 'steam' && record.pressure === undefined) throw new BadUse('the record has no pressure');
  if ((part === 'steam' || part === 'record') && record.pressure?.against === 'air' && air === undefined)
    throw new BadUse('a gauge pressure counts from the air’s', 'state --altitude, or --air as a barometer shows it');
  const measures = measureRecord(record, settings);
  const reports: Record<Part, () => Report> = {
    a0: () => join(a0Report(measures, settings), countingReport(settings)),
    f0: () => join(f0Report(measures, settings), countingReport(settings)),
    hold: () => holdReport(record, measures, settings),
    steam: () => join(holdReport(record, measures, settings), steamReport(measures)),
    record: () => recordReport(record, measures, settings),
  };
  const { rows, data } = reports[part]();
  const { chart } = options;
  if (typeof chart === 'string') {
    const path = resolve(context.cwd, chart);
    writeFiles(dirname(path), new Map([[basename(path), drawChart(record, recordName(file), band, measures.hold)]]));
    rows.push(['chart', chart]);
  }
  printReport(context, { rows, data: { file, ...data } }, { json: options['json'] === true });
  return 0;
}
