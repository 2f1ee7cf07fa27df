import { readFileSync, statSync } from 'node:fs';
import { basename, resolve } from 'node:path';
import { inBaseUnit } from '../../measure/quantity.js';
import type { CycleRecord } from '../../measure/record/cycle-record.js';
import { onlyChannels } from '../../measure/record/measure-record.js';
import { readCycleRecord } from '../../measure/record/read-cycle-record.js';
import { airPressureAt } from '../../measure/steam.js';
import type { Finding } from '../../read/finding.js';
import { didYouMean } from '../../read/nearest.js';
import { quoted, quotedList } from '../../read/quoted.js';
import { BadUse } from '../bad-use.js';
import type { Context } from '../context.js';
import { countFindings, printFindings } from '../print-findings.js';
import { type Options, optionalQuantity } from './read-options.js';

/** The file is not read beyond this, so that nothing endless is. */
const mostBytes = 2_000_001;

/**
 * The record in a file, with the channels that were asked for. Of a file that is no record it prints what is wrong and
 * returns nothing.
 *
 * @throws BadUse when there is no such file or no such channel.
 */
export function openRecord(context: Context, file: string, options: Options): CycleRecord | undefined {
  const read = readCycleRecord(readBytes(context, file));
  if (!read.ok) {
    const findings = read.problems.map(
      ({ code, line, column, message, help }): Finding => ({ code, place: { file, line, column }, message, help }),
    );
    printFindings(findings, context.err);
    context.err(`${countFindings(findings)}; nothing is worked out from a record that is not whole`);
    return undefined;
  }
  const { channels } = options;
  if (typeof channels !== 'string') return read.record;
  const known = read.record.temperatures.map(({ name }) => name);
  const names = channels.split(',').map((each) => each.trim());
  const stray = names.find((each) => !known.includes(each));
  if (stray !== undefined)
    throw new BadUse(`unknown channel ${quoted(stray)}`, didYouMean(stray, known) ?? `channels are ${quotedList(known)}`);
  return onlyChannels(read.record, names);
}

/** What a record is called: the name of its file. */
export function recordName(file: string): string {
  return basename(file);
}

/** The air's pressure in kPa, where it is stated by --air or --altitude. */
export function readAir(options: Options): number | undefined {
  const [air, altitude] = [optionalQuantity(options, 'air', 'pressure'), optionalQuantity(options, 'altitude', 'length')];
  if (air !== undefined && altitude !== undefined) throw new BadUse('--air and --altitude say the same', 'give one of them');
  try {
    if (altitude !== undefined) return airPressureAt(altitude);
  } catch (error) {
    if (error instanceof RangeError) throw new BadUse(error.message);
    throw error;
  }
  return air && inBaseUnit(air);
}

function readBytes(context: Context, file: string): Uint8Array {
  const path = resolve(context.cwd, file);
  const stats = statSync(path, { throwIfNoEntry: false });
  if (stats === undefined || !stats.isFile()) throw new BadUse(`there is no file ${quoted(file)}`, 'give the record of a cycle');
  try {
    return stats.size > mostBytes ? new Uint8Array(mostBytes) : readFileSync(path);
  } catch (error) {
    throw new BadUse(`cannot read ${quoted(file)}: ${error instanceof Error ? error.message : String(error)}`);
  }
}
