import { copyFileSync, mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { main } from '../../src/cli/main.js';
import { keptClinics } from './kept-clinics.js';

/** Writes the manuals of other regions that are kept in `out/`. Run by `npm run manuals`. */
const cwd = fileURLToPath(new URL('../../', import.meta.url));
const nothing = { async *[Symbol.asyncIterator]() {} };
const context = { cwd, out: console.log, err: console.error, progress: { step() {}, done() {} }, interactive: false };
for (const clinic of keptClinics) {
  const folder = mkdtempSync(join(tmpdir(), 'rulebook-manual-'));
  try {
    const code = await main(['build', `seeds/${clinic}`, '--formats', 'md', '--out', folder], context, nothing);
    if (code !== 0) process.exit(code);
    mkdirSync(join(cwd, 'out', clinic), { recursive: true });
    copyFileSync(join(folder, 'manual.md'), join(cwd, 'out', clinic, 'manual.md'));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
