import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { startChromium } from './chromium.js';
import { greyPng } from './grey-png.js';

/**
 * Makes the pictures of pages that are kept for the README, one of each kind: `npm run picture -- [folder that build wrote …]`.
 * They are taken from the PDF of a writing, or where there is none, from its HTML as Chromium prints it.
 */
const project = fileURLToPath(new URL('../../', import.meta.url));
const target = join(project, 'out/harrow-mills/pages');
const folders =
  process.argv.length > 2 ? process.argv.slice(2).map((each) => resolve(each)) : [join(project, 'out/harrow-mills')];

/** What is in the text of the page that is wanted, and of no page before it. */
const pictures: readonly { name: string; from: string; find: RegExp }[] = [
  { name: 'title', from: 'manual', find: /^ *Document control/m },
  { name: 'contents', from: 'manual', find: /^ *Contents/m },
  { name: 'figure', from: 'manual', find: /What becomes of an instrument here/ },
  { name: 'register', from: 'manual', find: /^ *\d+\.\d+ +Instrument register/m },
  { name: 'procedure', from: 'manual', find: /^ *\d+\.\d+ +Load the washer/m },
  { name: 'decision', from: 'manual', find: /^ *\d+\.\d+ +What may go into the washer/m },
  { name: 'schedule', from: 'manual', find: /^ *\d+\.\d+ +What comes round when/m },
  { name: 'form', from: 'manual', find: /^ *A\.\d+ +Sterilizer log/m },
  { name: 'wall-card', from: 'cards', find: /./ },
  { name: 'notice', from: 'notice', find: /./ },
  { name: 'redline', from: 'redline', find: /./ },
];
const widest = 60_000;
const resolutions = [88, 80, 72, 64, 56];

interface Pages {
  pdf: string;
  texts: string[];
}

for (const tool of ['pdftotext', 'pdftoppm']) ensure(tool);
const scratch = mkdtempSync(join(tmpdir(), 'rulebook-picture-'));
try {
  mkdirSync(target, { recursive: true });
  const opened = new Map<string, Pages | undefined>();
  for (const { name, from, find } of pictures) {
    if (!opened.has(from)) opened.set(from, await openPages(from));
    const pages = opened.get(from);
    if (pages === undefined) {
      console.error(`${name}: no ${from}.pdf and no ${from}.html in ${folders.join(', ')}`);
      continue;
    }
    const page = 1 + pages.texts.findIndex((text) => find.test(text) && (name === 'contents' || !/^ *Contents/m.test(text)));
    if (page === 0) throw new Error(`${name}: no page of ${pages.pdf} holds ${find}`);
    const png = drawPage(pages.pdf, page);
    writeFileSync(join(target, `${name}.png`), png);
    console.log(`${name}: page ${page} of ${pages.texts.length}, ${Math.ceil(png.length / 1000)} kB`);
  }
} finally {
  rmSync(scratch, { recursive: true, force: true });
}

function ensure(tool: string): void {
  try {
    execFileSync(tool, ['-v'], { stdio: 'ignore' });
  } catch {
    console.error(`no ${tool} here: \`apt-get install poppler-utils\``);
    process.exit(1);
  }
}

async function openPages(from: string): Promise<Pages | undefined> {
  const [pdf] = folders.map((folder) => join(folder, `${from}.pdf`)).filter(existsSync);
  const [html] = folders.map((folder) => join(folder, `${from}.html`)).filter(existsSync);
  const found = pdf ?? (html && (await printInBrowser(html, join(scratch, `${from}.pdf`))));
  if (found === undefined) return undefined;
  const text = execFileSync('pdftotext', ['-layout', found, '-'], { encoding: 'utf8', maxBuffer: 1e8 });
  return { pdf: found, texts: text.split('\f').slice(0, -1) };
}

async function printInBrowser(html: string, pdf: string): Promise<string> {
  const browser = await startChromium();
  try {
    const page = await browser.newPage();
    await page.goto(`file://${html}`);
    await page.pdf({ path: pdf, preferCSSPageSize: true });
    return pdf;
  } finally {
    await browser.close();
  }
}

/** As sharp as it can be without taking too much room. */
function drawPage(pdf: string, page: number): Buffer {
  const range = ['-f', String(page), '-l', String(page)];
  for (const resolution of resolutions) {
    const png = greyPng(execFileSync('pdftoppm', ['-gray', '-r', String(resolution), ...range, pdf], { maxBuffer: 1e8 }));
    if (png.length < widest) return png;
  }
  throw new Error(`page ${page} of ${pdf} takes more than ${widest} bytes`);
}
