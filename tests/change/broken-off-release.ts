import { writeRelease } from '../../src/cli/releases.js';

/** Writes a release of some files and kills its own process before the one of that number: `broken-off-release.ts FOLDER VERSION NUMBER`. */
const [clinicFolder = '', version = '', number = ''] = process.argv.slice(2);

class Deadly extends Map<string, string> {
  override *[Symbol.iterator](): MapIterator<[string, string]> {
    let index = 0;
    for (const entry of super.entries()) {
      if (index === Number(number)) process.kill(process.pid, 'SIGKILL');
      index += 1;
      yield entry;
    }
    if (index === Number(number)) process.kill(process.pid, 'SIGKILL');
    return undefined;
  }
}

const files = new Deadly([
  ['manual.md', '# Manual\n'],
  ['pages/one.txt', 'x'.repeat(100_000)],
  ['lock.json', '{}\n'],
]);
writeRelease(clinicFolder, version, files);
