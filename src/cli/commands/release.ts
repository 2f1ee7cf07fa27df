import { createPrivateKey, type KeyObject, sign } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import { join, relative, resolve } from 'node:path';
import { proveStrict } from '../../analyse/prove-strict.js';
import { isSame } from '../../change/comparison.js';
import { isLaterVersion, lockToText, makeLock } from '../../change/lock.js';
import { checkRulebook } from '../../check/check-rulebook.js';
import { packsAlone } from '../../link/packs-alone.js';
import type { Rulebook } from '../../link/rulebook.js';
import { dayNumber } from '../../measure/day-number.js';
import type { Finding } from '../../read/finding.js';
import { BadUse } from '../bad-use.js';
import { colors } from '../colors.js';
import { type CommonOptions, type Context, clinicFolderOf, openSoundClinic, rulesFolderOf } from '../context.js';
import type { Loaded } from '../load-rulebook.js';
import { countFindings, printFindings } from '../print-findings.js';
import { makeProducts } from '../products.js';
import { digestsOf, readInputs, zipInputs } from '../release-inputs.js';
import {
  checkFiles,
  inputsFile,
  type KeptRelease,
  lockFile,
  openRelease,
  readReleases,
  signatureFile,
  writeRelease,
} from '../releases.js';
import { toolDigest } from '../tool-digest.js';
import { toolVersion } from '../tool-version.js';
import { sayChange } from './build.js';

export interface ReleaseOptions extends CommonOptions {
  approvedOn?: string;
  signWith?: string;
}

/**
 * `rulebook release`: freezes the manual, the evaluators and what they were made from into the history of the clinic folder. Nothing is
 * released while there is any finding, and nothing that was released is changed. `today` is the day of approval unless one is given.
 */
export async function runRelease(
  context: Context,
  folder: string | undefined,
  options: ReleaseOptions,
  today: string,
): Promise<number> {
  const { progress } = context;
  const approvedOn = options.approvedOn ?? today;
  if (dayNumber(approvedOn) === undefined) throw new BadUse(`\`${approvedOn}\` is not a date`, 'write it as YYYY-MM-DD');
  const key = options.signWith === undefined ? undefined : readKey(context, options.signWith);
  progress.step('reading and linking the rules');
  const open = openSoundClinic(context, folder, options);
  if (open === undefined) return 1;
  const { rulebook, opened } = open;
  const clinicFolder = clinicFolderOf(context, folder);
  const { releases, findings: history } = readReleases(clinicFolder, context.cwd);
  const last = releases.at(-1);
  const findings = [
    ...opened.findings,
    ...history,
    ...releases.flatMap((each) => checkFiles(each, context.cwd)),
    ...(last === undefined ? [] : checkNext(rulebook, opened.loaded, last)),
  ];
  const refuse = (): number => {
    progress.done();
    printFindings(findings, context.err);
    context.err(`${countFindings(findings)}; nothing was released`);
    return 1;
  };
  if (findings.length > 0) return refuse();
  progress.step('proving the rules');
  const alone = packsAlone(opened.loaded.packs, rulebook.clinic, rulebook.on, proveStrict);
  findings.push(...checkRulebook(rulebook, opened.loaded.fixtures, alone).findings);
  if (findings.length > 0) return refuse();
  const { released, findings: opening } = last === undefined ? { findings: [] } : openRelease(last, context.cwd);
  const made = await makeProducts(rulebook, { progress, base: context.cwd, ...(released && { released }) });
  findings.push(...opening, ...made.findings);
  if (findings.length > 0) return refuse();
  progress.step('saving');
  const inputs = readInputs(rulebook, rulesFolderOf(context, options), clinicFolder);
  const files = new Map(made.files).set(inputsFile, zipInputs(inputs));
  const lock = makeLock({
    rulebook,
    approvedOn,
    tool: { version: toolVersion, templates: toolDigest() },
    ...digestsOf(inputs, rulebook),
    files,
    ...(last && { previous: { version: last.version, lock: last.digest } }),
  });
  const text = lockToText(lock);
  files.set(lockFile, text);
  if (key !== undefined) files.set(signatureFile, `${sign(null, Buffer.from(text), key).toString('base64')}\n`);
  const target = writeRelease(clinicFolder, lock.document.version, files);
  progress.done();
  const shown = (name: string) => relative(context.cwd, join(target, name));
  const { document, approved } = lock;
  context.out(
    `${colors.bold(`${document.number} version ${document.version}`)} is released, in force from ${document.effective}, to be looked at again by ${document['review-by']}`,
  );
  context.out(`  approved  ${approved.name}, ${approved.on}`);
  context.out(`  kept      ${shown('')}: ${files.size} files`);
  if (last === undefined) context.out('  since     the first release');
  else if (made.comparison !== undefined) context.out(`  since     ${sayChange(last.version, made.comparison)}`);
  if (made.comparison !== undefined && !isSame(made.comparison))
    context.out(`  sign      ${shown('notice.pdf')}, by everyone it names`);
  context.out(`  print     ${shown('manual.pdf')}, and sign it in ink`);
  if (key !== undefined) context.out(`  signature ${shown(signatureFile)}`);
  return 0;
}

/** A release follows the one before: a later version, and in force no earlier. */
function checkNext({ clinic }: Rulebook, { clinicDocuments }: Loaded, last: KeptRelease): Finding[] {
  const document = clinicDocuments.find(({ data }) => data.kind === 'clinic');
  if (document === undefined) return [];
  const { version, effective } = clinic.document;
  const findings: Finding[] = [];
  if (!isLaterVersion(version, last.version))
    findings.push({
      code: 'E805',
      message: `version \`${version}\` does not come after \`${last.version}\`, which is released`,
      place: document.at(['document', 'version']),
      help: 'a released version is never overwritten: give this one a later number',
    });
  if (effective < last.lock.document.effective)
    findings.push({
      code: 'E805',
      message: `\`${effective}\` is before \`${last.lock.document.effective}\`, from which version \`${last.version}\` holds`,
      place: document.at(['document', 'effective']),
      help: 'a new version takes the place of the one before',
    });
  return findings;
}

/** @throws BadUse when the file holds no private Ed25519 key. */
function readKey({ cwd }: Context, file: string): KeyObject {
  const path = resolve(cwd, file);
  const help = 'give a private Ed25519 key in PEM form, such as `openssl genpkey -algorithm ed25519` makes';
  if (!existsSync(path)) throw new BadUse(`there is no file \`${file}\``, help);
  try {
    const key = createPrivateKey(readFileSync(path));
    if (key.asymmetricKeyType === 'ed25519') return key;
  } catch {
    // Said below.
  }
  throw new BadUse(`\`${file}\` holds no private Ed25519 key`, help);
}
