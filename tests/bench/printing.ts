// From a clinic's folder to its printed manual: `npm run bench:printing`. Medians, in milliseconds.
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { inColumns } from '../../src/cli/in-columns.js';
import { loadAssets } from '../../src/cli/load-assets.js';
import { manualOf } from '../../src/cli/load-manual.js';
import { home, loadClinic, loadPacks, rulebookOn } from '../../src/cli/load-rulebook.js';
import { drawAll } from '../../src/write/print/html/draw-all.js';
import { documentOf } from '../../src/write/print/pdf/document.js';
import { inkFor } from '../../src/write/print/pdf/ink.js';
import { layOut, type Pages } from '../../src/write/print/pdf/press.js';
import { runsOf } from '../../src/write/print/pdf/runs.js';
import { printHtml } from '../../src/write/print/print-html.js';
import { printMarkdown } from '../../src/write/print/print-markdown.js';
import { printPdf } from '../../src/write/print/print-pdf.js';
import type { Writing } from '../../src/write/writing.js';

const rounds = 7;
const day = '2026-12-01';
const folder = mkdtempSync(join(tmpdir(), 'rulebook-bench-'));
const clinic = join(folder, 'harrow-mills');

try {
  cpSync(join(home, 'seeds/harrow-mills'), clinic, { recursive: true });
  const manual = read();
  const pdf = await first(manual);
  for (const line of inColumns([...pdf, ...(await formats(manual)), ...(await edits())], 80)) console.log(line);
} finally {
  rmSync(folder, { recursive: true, force: true });
}

function read(): Writing {
  const { rulebook } = rulebookOn(loadClinic(loadPacks(join(home, 'rules'), home, 'rules'), clinic, folder), day);
  if (rulebook === undefined) throw new Error('the sample clinic does not link');
  return manualOf(rulebook);
}

/** The first PDF of a process, its steps apart; the last column is the time of processors, in all threads. */
async function first(manual: Writing): Promise<string[][]> {
  const assets = loadAssets();
  const [data, runs] = await timed(async () => runsOf(manual, inkFor(manual, await drawAll(manual.tree))));
  const [layout, pages] = await timed(() => layOut(documentOf(manual, runs.length), runs, assets));
  const [save, saved] = await timed((): ReturnType<Pages['toPdf']> => pages.toPdf());
  const size = 'bytes' in saved ? Math.round(saved.bytes.length / 1024) : 0;
  return [
    row(`PDF of ${pages.count} pages, first in a process: figures, tree to data`, [data]),
    row('… layout', [layout]),
    row(`… to a file of ${size} kB`, [save]),
    row('… all of it', [sum(data, layout, save)]),
    row('… for each 80 pages', [shareOf(sum(data, layout, save), 80 / pages.count)], 4000),
  ];
}

/** Each format of a manual that was printed before. */
async function formats(manual: Writing): Promise<string[][]> {
  const times: Record<string, Time[]> = { Markdown: [], HTML: [], 'PDF, again': [] };
  for (let round = 0; round < rounds; round += 1) {
    times['Markdown']?.push((await timed(() => printMarkdown(manual)))[0]);
    times['HTML']?.push((await timed(() => printHtml(manual, loadAssets())))[0]);
    times['PDF, again']?.push((await timed(() => printPdf(manual, loadAssets())))[0]);
  }
  return Object.entries(times).map(([format, list]) => row(format, list));
}

/** From an edit of one file to the new PDF, in a process that runs already. */
async function edits(): Promise<string[][]> {
  const file = join(clinic, 'overrides.yaml');
  const before = readFileSync(file, 'utf8');
  const times: Record<string, Time[]> = { 'read, link, write': [], 'with Markdown and HTML': [], 'with the PDF': [] };
  for (let round = 0; round < rounds; round += 1) {
    // Another number in a chapter, in the list of limits and in what the practice changes.
    writeFileSync(file, before.replace('value: 8 min', `value: ${(8 - (round + 1) / 8).toFixed(3)} min`));
    const [write, manual] = await timed(read);
    const [texts] = await timed(async () => [printMarkdown(manual), await printHtml(manual, loadAssets())]);
    const [print, bytes] = await timed(() => printPdf(manual, loadAssets()));
    if (bytes.length === 0) throw new Error('nothing was printed');
    times['read, link, write']?.push(write);
    times['with Markdown and HTML']?.push(sum(write, texts));
    times['with the PDF']?.push(sum(write, print));
  }
  return Object.entries(times).map(([step, list]) =>
    row(`edit one limit, running process: ${step}`, list, step === 'with the PDF' ? 2000 : undefined),
  );
}

/** In milliseconds: by the clock, and of processors in all threads. */
interface Time {
  wall: number;
  cpu: number;
}

function shareOf({ wall, cpu }: Time, share: number): Time {
  return { wall: wall * share, cpu: cpu * share };
}

function sum(...times: Time[]): Time {
  return { wall: times.reduce((all, { wall }) => all + wall, 0), cpu: times.reduce((all, { cpu }) => all + cpu, 0) };
}

async function timed<Made>(make: () => Made | Promise<Made>): Promise<[Time, Made]> {
  const [start, before] = [performance.now(), process.cpuUsage()];
  const made = await make();
  const { user, system } = process.cpuUsage(before);
  return [{ wall: performance.now() - start, cpu: (user + system) / 1000 }, made];
}

function row(what: string, times: readonly Time[], goal?: number): string[] {
  const median = (of: 'wall' | 'cpu') => times.map((each) => each[of]).sort((a, b) => a - b)[Math.floor(times.length / 2)] ?? 0;
  const met = goal === undefined ? '' : `, goal ${goal} ms: ${median('wall') <= goal ? 'met' : 'missed'}`;
  return [what, `${median('wall').toFixed(0)} ms`, `(${median('cpu').toFixed(0)} ms of processors${met})`];
}
