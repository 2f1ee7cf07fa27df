import { execFileSync } from 'node:child_process';
import { mkdtempSync, renameSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** Makes the picture of a manual page for the README. Needs Chromium, pdftotext and pdftoppm on the machine. */
const manual = fileURLToPath(new URL('../../out/harrow-mills/manual.html', import.meta.url));
const picture = fileURLToPath(new URL('../../out/harrow-mills/page.png', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'rulebook-picture-'));
try {
  const pdf = join(folder, 'manual.pdf');
  const browser = ['--headless', '--no-sandbox', '--disable-gpu', '--no-first-run', '--disable-background-networking'];
  execFileSync('chromium', [...browser, `--user-data-dir=${folder}`, '--no-pdf-header-footer', `--print-to-pdf=${pdf}`, manual], {
    stdio: 'ignore',
  });
  const pages = execFileSync('pdftotext', ['-layout', pdf, '-'], { encoding: 'utf8', maxBuffer: 1e8 }).split('\f');
  const page = String(pages.findIndex((text) => /^ *\d+\.1 +Load the washer/m.test(text) && !/^Contents/m.test(text)) + 1);
  execFileSync('pdftoppm', ['-r', '100', '-gray', '-png', '-singlefile', '-f', page, '-l', page, pdf, join(folder, 'page')]);
  renameSync(join(folder, 'page.png'), picture);
  console.log(`${picture}: page ${page} of ${pages.length - 1}`);
} finally {
  rmSync(folder, { recursive: true, force: true });
}
