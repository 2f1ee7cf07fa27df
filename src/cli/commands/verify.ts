import { createPublicKey, type KeyObject, verify } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import { join, relative, resolve } from 'node:path';
import { digestOf } from '../../change/lock.js';
import { type Finding, hasErrors } from '../../read/finding.js';
import { BadUse } from '../bad-use.js';
import { colors } from '../colors.js';
import { type Context, clinicFolderOf } from '../context.js';
import { loadClinic, loadPacks, rulebookOn } from '../load-rulebook.js';
import { countFindings, plural, printFindings } from '../print-findings.js';
import { makeProducts } from '../products.js';
import { withInputs } from '../release-inputs.js';
import { checkFiles, inputsFile, type KeptRelease, lockFile, openRelease, readReleases, signatureFile } from '../releases.js';
import { toolDigest } from '../tool-digest.js';
import { toolVersion } from '../tool-version.js';

export interface VerifyOptions {
  release?: string;
  trust?: string;
  all?: boolean;
  onlyFiles?: boolean;
  json?: boolean;
}

/** What was found of one release. */
interface Verified {
  version: string;
  findings: Finding[];
  /** `identical`, `differs`, or why it was not made again. */
  rebuilt: string;
  /** `valid`, `wrong`, `missing`, or `not looked at`: without a key there is nothing to trust. */
  signature: 'valid' | 'wrong' | 'missing' | 'not looked at';
}

/**
 * `rulebook verify`: whether the releases of a clinic are as they were released. Each file is compared with its lock, each lock with
 * the one that follows it; the last release, the one that is named, or all are made again from what they were made from.
 */
export async function runVerify(context: Context, folder: string | undefined, options: VerifyOptions): Promise<number> {
  const trusted = options.trust ?? process.env['CLINIC_RULEBOOK_KEY'];
  const key = trusted === undefined ? undefined : readKey(context, trusted);
  const { releases, findings } = readReleases(clinicFolderOf(context, folder), context.cwd);
  if (options.release !== undefined && !releases.some(({ version }) => version === options.release) && findings.length === 0)
    throw new BadUse(
      `there is no release \`${options.release}\``,
      releases.length === 0 ? '`rulebook release` makes one' : `there are ${releases.map(({ version }) => version).join(', ')}`,
    );
  if (releases.length === 0 && findings.length === 0)
    throw new BadUse('the clinic has no release', '`rulebook release` makes one');
  const again = options.onlyFiles
    ? []
    : options.all
      ? releases
      : releases.filter(({ version }) => version === (options.release ?? releases.at(-1)?.version));
  const verified: Verified[] = [];
  for (const release of releases) {
    const found = checkFiles(release, context.cwd);
    const signature = signatureOf(release, key);
    if (signature === 'wrong' || signature === 'missing') found.push(notSigned(release, signature, context.cwd));
    let rebuilt = 'not made again';
    if (again.includes(release)) {
      if (found.some(({ code }) => code === 'E801')) rebuilt = 'not made again: it was changed';
      else {
        context.progress.step(`making release ${release.version} again`);
        const before = releases[releases.indexOf(release) - 1];
        const differing = await makeAgain(context, release, before);
        rebuilt = differing.length === 0 ? 'identical' : 'differs';
        found.push(...differing);
      }
    }
    verified.push({ version: release.version, findings: found, rebuilt, signature });
  }
  context.progress.done();
  const all = [...findings, ...verified.flatMap((each) => each.findings)];
  if (options.json) context.out(JSON.stringify({ releases: verified, findings }, undefined, 2));
  else {
    printFindings(all, context.err);
    for (const { version, findings: own, rebuilt, signature } of verified) {
      const release = releases.find((each) => each.version === version);
      const count = Object.keys(release?.lock.files ?? {}).length;
      const state = own.length === 0 ? `${plural(count, 'file')} as released` : plural(own.length, 'finding');
      context.out(`${colors.bold(version.padEnd(6))} ${state}; made again: ${rebuilt}; signature ${signature}`);
    }
    if (key === undefined) context.out(colors.dim('No key is trusted (--trust), so signatures say nothing here.'));
    if (all.length > 0) context.out(countFindings(all));
  }
  return hasErrors(all) ? 1 : 0;
}

/** Makes a release again from its own inputs and reports each file that comes out otherwise. */
async function makeAgain(context: Context, release: KeptRelease, before: KeptRelease | undefined): Promise<Finding[]> {
  const { folder, lock, version } = release;
  const differs = (name: string, message: string): Finding => ({
    code: 'E803',
    message,
    place: { file: relative(context.cwd, join(folder, name)), line: 1, column: 1 },
    help:
      lock.tool.version === toolVersion && lock.tool.templates === toolDigest()
        ? 'the release was not made from what it says'
        : `it was made by rulebook ${lock.tool.version} with other templates than this one (${toolVersion}): use that version`,
  });
  return withInputs(readFileSync(join(folder, inputsFile)), async ({ rules, clinic }) => {
    const loaded = loadClinic(loadPacks(rules, rules, 'rules'), clinic, clinic);
    const linked = hasErrors(loaded.findings) ? { findings: loaded.findings } : rulebookOn(loaded, lock.on);
    if (linked.rulebook === undefined)
      return [
        differs(inputsFile, `release \`${version}\` cannot be made again: ${linked.findings[0]?.message ?? 'it has errors'}`),
      ];
    const { released } = before === undefined ? {} : openRelease(before, context.cwd);
    const { files } = await makeProducts(linked.rulebook, { progress: context.progress, ...(released && { released }) });
    const found = [...files].flatMap(([name, content]) =>
      lock.files[name] === digestOf(content) ? [] : [differs(name, `\`${name}\` of release \`${version}\` comes out otherwise`)],
    );
    const missing = Object.keys(lock.files).filter((name) => name !== inputsFile && !files.has(name));
    return [...found, ...missing.map((name) => differs(name, `\`${name}\` of release \`${version}\` is not made any more`))];
  });
}

function signatureOf({ folder }: KeptRelease, key: KeyObject | undefined): Verified['signature'] {
  if (key === undefined) return 'not looked at';
  const path = join(folder, signatureFile);
  if (!existsSync(path)) return 'missing';
  const signature = Buffer.from(readFileSync(path, 'utf8').trim(), 'base64');
  return verify(null, readFileSync(join(folder, lockFile)), key, signature) ? 'valid' : 'wrong';
}

function notSigned({ folder, version }: KeptRelease, signature: 'wrong' | 'missing', base: string): Finding {
  return {
    code: 'E804',
    message:
      signature === 'missing'
        ? `release \`${version}\` is not signed`
        : `the signature of release \`${version}\` is not that of the trusted key`,
    place: { file: relative(base, join(folder, signatureFile)), line: 1, column: 1 },
    help: 'ask whoever holds the key',
  };
}

/** @throws BadUse when the file holds no public Ed25519 key. */
function readKey({ cwd }: Context, file: string): KeyObject {
  const path = resolve(cwd, file);
  const help = 'give a public Ed25519 key in PEM form, such as `openssl pkey -pubout` makes';
  if (!existsSync(path)) throw new BadUse(`there is no file \`${file}\``, help);
  const text = readFileSync(path, 'utf8');
  try {
    const key = createPublicKey(text);
    if (key.asymmetricKeyType === 'ed25519' && !text.includes('PRIVATE')) return key;
  } catch {
    // Said below.
  }
  throw new BadUse(`\`${file}\` holds no public Ed25519 key`, help);
}
