import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { loadAssets } from '../../../src/cli/load-assets.js';
import { printDocx } from '../../../src/write/print/print-docx.js';
import { writeManual } from '../../../src/write/write-manual.js';
import { smallRulebook } from '../small-rulebook.js';
import { templates } from '../templates.js';

const office = spawnSync('soffice', ['--version']).status === 0;
if (!office) console.log('LibreOffice (soffice) is not installed: no Word file is opened with it');

it.skipIf(!office)('opens with LibreOffice: a title page, contents, chapters and forms', { timeout: 180_000 }, async () => {
  const folder = mkdtempSync(join(tmpdir(), 'rulebook-docx-'));
  try {
    const manual = writeManual({ rulebook: smallRulebook(), templates, tool: '9.9.9' });
    writeFileSync(join(folder, 'manual.docx'), await printDocx(manual, loadAssets()));
    const home = `-env:UserInstallation=file://${folder}/profile`;
    execFileSync('soffice', [home, '--headless', '--convert-to', 'pdf', '--outdir', folder, join(folder, 'manual.docx')], {
      stdio: 'ignore',
    });
    const pages = readFileSync(join(folder, 'manual.pdf'), 'latin1').match(/\/Type\s*\/Page\b(?!s)/g) ?? [];
    const chapters = manual.sections.filter(({ depth }) => depth === 1).length;
    expect(pages.length).toBeGreaterThanOrEqual(8);
    expect(pages.length).toBeLessThanOrEqual(2 + chapters + 4);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});
