import type { ManualMeta } from '../../model/model-title.js';

/**
 * The style sheet of wall cards, over those of the manual: large type, a card a page, black on white. On paper the size of the
 * type goes with the page.
 */
export function cardStyle({ paper }: Pick<ManualMeta, 'paper'>): string {
  return `@page { size: ${paper} portrait; margin: 13mm 14mm 12mm; @top-left { content: none; } @top-right { content: none; } @bottom-left { content: none; } @bottom-right { content: none; } }
.chapter { display: flex; flex-direction: column; --hang: 2em; }
.chapter > h2 { font-size: 1.8em; padding: .2em 0 .1em; margin: 0; border-top: 5pt solid #111; }
.chapter > p.place { padding: 0; margin: 0 0 .7em; font-size: .85em; color: #333; max-width: none; }
.chapter > .caution { order: 0; border: 2.5pt solid #111; padding: .35em .7em .4em; margin: 0 0 .7em; max-width: none; }
.chapter > .caution::before { content: none; }
.chapter > .caution > .word { position: static; font-size: .72em; line-height: 1.3; }
.chapter > .caution .body > p { margin: 0; font-weight: 650; }
.chapter > ol { list-style: none; counter-reset: step; margin: 0 0 .5em; padding: 0; max-width: none; }
.chapter > ol > li { counter-increment: step; position: relative; padding: .16em 0 .2em var(--hang); margin: 0; border-bottom: .5pt solid var(--hair); }
.chapter > ol > li::before { content: counter(step); position: absolute; left: 0; font-weight: 700; font-size: 1.25em; line-height: 1; }
.chapter > p.stop { padding: .35em .7em; margin: .2em 0 .8em; background: #111; color: #fff; max-width: none; font-weight: 600; print-color-adjust: exact; -webkit-print-color-adjust: exact; }
.chapter > p.stop strong { text-transform: uppercase; letter-spacing: .06em; margin-right: .4em; }
.chapter table { font-size: .9em; }
.chapter table.choose td { padding-top: .1em; padding-bottom: .12em; }
.chapter table.call td:last-child { white-space: nowrap; font-size: 1.1em; }
.chapter .tablebox { margin: 0 0 .6em; }
.chapter > p.foot { padding: .4em 0 0; margin: 0; font-size: .58em; color: #333; max-width: none; border-top: .5pt solid var(--line); }
@media screen { .chapter { margin: 0 0 4rem; font-size: 1.2rem; } }
@media print {
  html { font-size: 17pt; line-height: 1.22; }
  .chapter:not(:has(> ol > li:nth-child(8))):not(:has(table.choose)) { font-size: 1.12em; }
  .chapter:has(table.choose) { font-size: .84em; }
  .chapter:has(> ol > li:nth-child(10)) { font-size: .84em; }
  .chapter { height: calc(${paper === 'a4' ? 297 : 279}mm - 26mm); break-inside: avoid; }
  section.chapter:first-of-type { break-before: auto; }
  .chapter > p.foot { margin-top: auto; }
}`;
}
