import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { isCancel, select, text } from '@clack/prompts';
import { parseDocument } from 'yaml';
import { didYouMean } from '../../read/nearest.js';
import { BadUse } from '../bad-use.js';
import type { Context } from '../context.js';
import { home, sampleClinics } from '../load-rulebook.js';

export interface InitOptions {
  from?: string;
  name?: string;
  phone?: string;
}

interface Wishes {
  from: string;
  name: string | undefined;
  phone: string | undefined;
}

/** `rulebook init`: makes a clinic folder from a sample clinic. Asks on a terminal for what the options leave out. */
export async function runInit(context: Context, folder: string, options: InitOptions): Promise<number> {
  const target = resolve(context.cwd, folder);
  if (existsSync(target) && readdirSync(target).length > 0)
    throw new BadUse(`the folder \`${folder}\` is not empty`, 'name a new folder: nothing of yours is overwritten');
  const wishes = await askFor(context, options);
  if (wishes === undefined) return 2;
  copyClinic(wishes, target);
  context.out(`${folder} is a copy of the sample clinic \`${wishes.from}\`. Everything in it is invented: make it yours.`);
  context.out('  1. clinic.yaml       who and where you are; who holds which role');
  context.out('  2. equipment/        one sheet a machine, copied from its maker’s instructions');
  context.out('  3. instruments.yaml  your instruments and what they are made of');
  context.out('  4. overrides.yaml    what you do more strictly, and why');
  context.out(`Then: rulebook check ${folder}, and rulebook build ${folder}`);
  return 0;
}

async function askFor(context: Context, options: InitOptions): Promise<Wishes | undefined> {
  const samples = sampleClinics().map((folder) => basename(folder));
  if (options.from !== undefined && !samples.includes(options.from))
    throw new BadUse(
      `unknown sample clinic \`${options.from}\``,
      didYouMean(options.from, samples) ?? `one of ${samples.join(', ')}`,
    );
  if (!context.interactive) return { from: options.from ?? samples[0] ?? '', name: options.name, phone: options.phone };
  const from =
    options.from ??
    (await select({
      message: 'Which sample is most like your clinic?',
      options: samples.map((value) => ({ value, label: value, hint: describe(value) })),
    }));
  if (isCancel(from)) return undefined;
  const name =
    options.name ??
    (await text({ message: 'What is your clinic called?', validate: (value) => (value?.trim() ? undefined : 'Type a name.') }));
  if (isCancel(name)) return undefined;
  const phone =
    options.phone ??
    (await text({ message: 'Its telephone?', validate: (value) => (value?.trim() ? undefined : 'Type a number.') }));
  return isCancel(phone) ? undefined : { from, name, phone };
}

function describe(sample: string): string {
  const document = parseDocument(readFileSync(join(home, 'seeds', sample, 'clinic.yaml'), 'utf8'));
  return String(document.get('about') ?? '').split('. ')[0] ?? '';
}

/** Copies beside the target first, so that a half-made clinic is never left behind. */
function copyClinic({ from, name, phone }: Wishes, target: string): void {
  mkdirSync(dirname(target), { recursive: true });
  const beside = mkdtempSync(join(dirname(target), '.rulebook-'));
  try {
    cpSync(join(home, 'seeds', from), beside, { recursive: true, filter: (path) => basename(path) !== 'out' });
    const file = join(beside, 'clinic.yaml');
    const document = parseDocument(readFileSync(file, 'utf8'));
    document.set(
      'id',
      basename(target)
        .toLowerCase()
        .replace(/[^a-z0-9]+/g, '-')
        .replace(/^-|-$/g, '') || 'clinic',
    );
    if (name !== undefined) document.set('name', name);
    if (phone !== undefined) document.set('phone', phone);
    writeFileSync(file, document.toString({ lineWidth: 0 }));
    if (existsSync(target)) rmSync(target, { recursive: true });
    renameSync(beside, target);
  } finally {
    rmSync(beside, { recursive: true, force: true });
  }
}
