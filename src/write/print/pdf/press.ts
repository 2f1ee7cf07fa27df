import { NodeCompiler, type NodeTypstDocument } from '@myriaddreamin/typst-ts-node-compiler';
import type { Assets } from '../assets.js';
import type { DocumentData, Run } from './data.js';

/** Pages laid out, before they are a file. */
export interface Pages {
  /** Number of pages. */
  count: number;
  /** Numbers of the runs, from 0, that do not fit the one page that they may have. */
  tooLong: number[];
  /** The pages as a file after PDF/UA-1, or the signs that no font has. */
  toPdf(): { bytes: Uint8Array } | { missing: string[] };
}

/** A folder that is not there: all that the compiler reads is handed to it. */
const folder = '/clinic-rulebook-print';

/**
 * Lays out pages. The template and the fonts of `assets` are made ready once; what did not change since the last writing
 * is not laid out again.
 *
 * @throws Error when the template is at fault; no text of a writing can cause it.
 */
export function layOut(document: DocumentData, runs: readonly Run[], assets: Assets): Pages {
  const compiler = compilerFor(assets);
  compiler.mapShadow(`${folder}/document.json`, bytesOf(document));
  for (const [index, run] of runs.entries()) compiler.mapShadow(`${folder}/run-${index}.json`, bytesOf(run));
  const compiled = compiler.compile({ mainFilePath: `${folder}/writing.typ` });
  const pages = compiled.result;
  const problems = (compiled.hasError() ? compiled.takeDiagnostics() : compiled.takeWarnings())?.shortDiagnostics ?? [];
  if (pages === null || problems.length > 0) throw new Error(`the pages cannot be laid out: ${sayProblems(problems)}`);
  return {
    count: pages.numOfPages,
    tooLong: [...compiler.query(pages, { selector: '<too-long>', field: 'value' })].map(Number),
    toPdf: () => exportPdf(compiler, pages),
  };
}

const compilers = new WeakMap<Assets, NodeCompiler>();

function compilerFor(assets: Assets): NodeCompiler {
  const ready = compilers.get(assets);
  if (ready !== undefined) {
    // What three writings in a row had no use for is forgotten.
    ready.evictCache(3);
    return ready;
  }
  const { regular, italic, bold, boldItalic, symbols } = assets.fonts;
  const fontBlobs = [regular, italic, bold, boldItalic, symbols].map((font) => Buffer.from(font));
  const made = NodeCompiler.create({ workspace: folder, fontArgs: [{ fontBlobs }] });
  made.mapShadow(`${folder}/writing.typ`, Buffer.from(assets.typst));
  compilers.set(assets, made);
  return made;
}

function exportPdf(compiler: NodeCompiler, pages: NodeTypstDocument): { bytes: Uint8Array } | { missing: string[] } {
  try {
    return { bytes: compiler.pdf(pages, { pdfStandard: 'ua-1', pdfTags: true }) };
  } catch (error) {
    const message = error instanceof Error ? error.message : String(error);
    const missing = [...message.matchAll(/the text `\\*"(.+?)\\*"` could not be displayed/gs)].map(([, sign = '']) =>
      unescaped(sign),
    );
    if (missing.length === 0) throw new Error(`the pages cannot be saved as PDF: ${message}`);
    return { missing: [...new Set(missing)] };
  }
}

/** Undoes `\u{4f60}` and `\"` of a text as the compiler quotes it, once or twice over. */
function unescaped(text: string): string {
  return text
    .replace(/\\+u\{([0-9a-f]+)\}/gi, (_, code: string) => String.fromCodePoint(Number.parseInt(code, 16)))
    .replace(/\\+(.)/g, '$1');
}

function bytesOf(data: unknown): Buffer {
  return Buffer.from(JSON.stringify(data, (_, value: unknown) => (typeof value === 'string' ? wellFormed(value) : value)));
}

/** Half a pair of surrogates is no sign: the sign for an unknown one takes its place. */
function wellFormed(text: string): string {
  return text.replace(/\p{Cs}/gu, '\u{fffd}');
}

function sayProblems(problems: readonly { message?: unknown }[]): string {
  return problems.map(({ message }) => String(message)).join('; ');
}
