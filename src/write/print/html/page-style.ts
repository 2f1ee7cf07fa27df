import type { ManualMeta } from '../../model/model-title.js';
import { filledWord, wordOf } from '../../text/word-of.js';
import type { Writing, WritingKind } from '../../writing.js';
import { family, symbols } from './embed-fonts.js';
import { groupPages } from './page-groups.js';

/** The style sheet for paper: size, binder margin, running heads, and what may not be torn apart. */
export function pageStyle({ kind, meta, sections }: Pick<Writing, 'kind' | 'meta' | 'sections'>): string {
  const named = flows(kind) ? [] : groupPages(sections, meta).map(({ name, head }) => namedPages(meta, name, head));
  return `${commonPage(kind, meta)}\n${sheetSize(meta)}\n${named.join('\n')}\n${onPaper}`;
}

/** Whether chapters follow each other without new pages. */
export function flows(kind: WritingKind): boolean {
  return kind === 'notice' || kind === 'redline';
}

function commonPage(kind: WritingKind, meta: ManualMeta): string {
  const control = filledWord(meta, 'print.control', { number: meta.number, version: meta.version, date: meta.effective });
  const warning = kind === 'manual' ? ` "\\A" ${cssString(wordOf(meta, 'print.uncontrolled'))}` : '';
  return `@page {
  size: ${meta.paper} portrait;
  margin: 15mm 13mm 16mm 22mm;
  @top-left { ${marginText} content: ${cssString(`${meta.clinic}: ${meta.title}`)}; }
  @bottom-left { ${marginText} white-space: pre; content: ${cssString(control)}${warning}; }
  @bottom-right { ${marginText} content: ${pageOfPages(meta)}; }
}
@page front { @top-left { content: none; } }`;
}

/** The phrase with the counters of the page in its places. */
function pageOfPages(meta: ManualMeta): string {
  return wordOf(meta, 'print.page-of')
    .split(/\{(pages?)\}/)
    .map((piece, index) => (index % 2 === 1 ? `counter(${piece})` : cssString(piece)))
    .filter((piece) => piece !== '""')
    .join(' ');
}

/** A blank sheet fills its page to the foot, whatever its number of lines. */
function sheetSize({ paper }: ManualMeta): string {
  const [long, short] = paper === 'a4' ? [297, 210] : [279, 216];
  return `@media print {
  section.sheet { display: flex; flex-direction: column; height: ${long - 35}mm; break-inside: avoid; }
  section.sheet.landscape { height: ${short - 45}mm; }
  .chapter > p + section.sheet:not(.landscape) { height: ${long - 65}mm; }
  section.sheet.half { height: ${(long - 41) / 2}mm; }
  section.sheet.half.landscape { height: ${(short - 51) / 2}mm; }
  section.sheet.half + section.sheet.half { margin-top: 5mm; }
  section.sheet h3 { margin-top: 0; }
  .sheetbox { flex: 1; display: flex; flex-direction: column; min-height: 0; }
  .tablebox:has(> table.sheet) { flex: 1; display: flex; margin-bottom: .5em; }
  table.sheet { align-self: stretch; }
}`;
}

/** Each chapter names itself at the head of its pages, upright and lying. */
function namedPages(meta: ManualMeta, name: string, title: string): string {
  const head = `@top-right { ${marginText} font-weight: 600; content: ${cssString(title)}; }`;
  return `@page ${name} { ${head} }
@page ${name}-wide { size: ${meta.paper} landscape; margin: 24mm 15mm 17mm 15mm; ${head} }
@media print { .${name} { page: ${name}; } .${name} .landscape { page: ${name}-wide; } }`;
}

const marginText = `font: 8pt/1.35 "${family}", "${symbols}", sans-serif; color: #333;`;

/** A CSS string that holds exactly that text, whatever is in it. */
function cssString(text: string): string {
  const safe = [...text.normalize('NFC')].map((sign) =>
    /[\p{L}\p{N} ,.:;()-]/u.test(sign) ? sign : `\\${(sign.codePointAt(0) ?? 0x20).toString(16)} `,
  );
  return `"${safe.join('')}"`;
}

const onPaper = `@media print {
  :root { --hang: 21mm; }
  html { font-size: 10.5pt; line-height: 1.25; }
  body { margin: 0; background: none; }
  .skip, .search { display: none; }
  .redline main { padding-left: .9rem; }
  a { color: inherit; text-decoration: none; }
  .front { page: front; }
  .titlepage { height: 225mm; }
  .contents { break-before: page; columns: 2; column-gap: 9mm; font-size: 8.4pt; line-height: 1.15; }
  .contents-title { column-span: all; }
  .contents > ol > li { break-inside: auto; }
  .contents > ol > li > a { break-after: avoid; }
  .chapter { break-before: page; }
  .before + .before, .behind + .behind { break-before: auto; margin-top: 2em; }
  h2, h3, h4 { break-after: avoid; break-inside: avoid; }
  section.sheet:not(.half), section.landscape:not(.half) { break-before: page; break-after: page; }
  .chapter > p + section.sheet:not(.landscape) { break-before: auto; }
  tr, .caution, .note, .opening li { break-inside: avoid; }
  .opening, .lead, .question { break-inside: avoid; }
  .lead, .question, .caption { break-after: avoid; }
  thead { display: table-header-group; }
  tr.group { break-after: avoid; }
  .tasks { columns: 2; column-gap: 8mm; }
  .tasks > h3 { column-span: all; }
  .task { --hang: 0mm; }
  .task > .done > strong:first-child { float: none; margin: 0; }
  .task > p { break-inside: avoid; }
  .task > .often { break-after: avoid; }
  li { orphans: 3; widows: 3; }
  p { orphans: 2; widows: 2; }
  ol > li { break-inside: avoid; }
  .tablebox { overflow: visible; }
}`;
