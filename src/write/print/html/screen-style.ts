/** The style sheet for the screen: a calm column, search and contents at the side where there is room, else above the text. */
export const screenStyle = `@media screen {
  :root { color-scheme: light; --paper: #fff; --side: #f6f6f3; }
  html { background: var(--paper); scroll-padding-top: 1rem; }
  .front, main { max-width: 56rem; margin: 0 auto; padding: 2rem clamp(1rem, 4vw, 3.5rem); outline: 0; }
  main { padding-bottom: 6rem; }
  .chapter + .chapter { margin-top: 5rem; }
  .titlepage { min-height: 36rem; }
  .contents a { min-height: 24px; padding: .15rem 0; }
  .contents a:hover, .contents a:focus-visible { text-decoration: underline; }
  .contents [aria-current] { box-shadow: -.6rem 0 0 var(--side), -.8rem 0 0 #111; }
  .contents.out { display: none; }
  a.to-at { display: inline-block; min-width: 24px; min-height: 24px; line-height: 24px; }
  .columns { font-size: .875em; line-height: 24px; }
  .answers, table { font-size: .9em; line-height: 1.35; }
  table.register, table.index, table.limits, table.programs { font-size: .85em; }
  .task { font-size: .95em; line-height: 1.35; }
  .tablebox, .drawing { position: relative; overflow-x: auto; }
  .skip { position: absolute; left: -100vw; top: 0; z-index: 3; background: #fff; padding: .6rem 1rem; }
  .skip:focus { left: 0; }
  :focus-visible { outline: 3px solid #111; outline-offset: 2px; }
  main:focus-visible, h2:focus-visible, h3:focus-visible, h4:focus-visible { outline: 0; }
  tr:target, li:target { background: #f0f0e4; }
  mark, ::highlight(found) { background: #ffe48a; color: #111; }

  .search label { font-weight: 650; }
  .search input { display: block; width: 100%; font: inherit; padding: .4rem .6rem; margin: .2rem 0; border: 1px solid #666; border-radius: .2rem; background: #fff; color: inherit; }
  .search .found { min-height: 1.4em; margin: .15rem 0 .3rem; font-size: .9em; color: #333; }
  .hits { list-style: none; margin: 0; padding: 0; }
  .hits li { margin: 0; border-top: .5pt solid var(--hair); }
  .hits a { display: block; padding: .5rem 0; text-decoration: none; }
  .hits a:hover .where, .hits a:focus-visible .where { text-decoration: underline; }
  .hits .where { display: block; font-weight: 650; }
  .hits .snippet { display: block; color: #333; overflow-wrap: break-word; }
}
@media screen and (min-width: 80rem) {
  body:has(> .side) { padding-left: 20rem; }
  .side { position: fixed; left: 0; top: 0; bottom: 0; width: 20rem; padding: 1.5rem 1.25rem 2rem; overflow-y: auto; overscroll-behavior: contain; scrollbar-width: thin; background: var(--side); border-right: 1px solid #ddd; font-size: .875rem; line-height: 1.35; }
  .search { position: sticky; top: -1.5rem; z-index: 1; margin: -1.5rem -1.25rem .5rem; padding: 1.5rem 1.25rem 0; background: var(--side); }
  .search:has(.hits > li) { position: static; }
  .search .to-contents { display: none; }
  .contents-title { font-size: 1.1rem; margin-top: .25rem; }
}
@media screen and (max-width: 79.99rem) {
  html:has(.search:not([hidden])) { scroll-padding-top: 5.5rem; }
  .side { display: contents; }
  .contents { max-width: 56rem; margin: 0 auto; padding: 1rem clamp(1rem, 4vw, 3.5rem); }
  .search:not([hidden]) { position: sticky; top: 0; z-index: 2; display: grid; grid-template-columns: auto 1fr auto; gap: 0 .8rem; align-items: center; padding: .5rem clamp(1rem, 4vw, 3.5rem); background: var(--side); border-block: 1px solid #ddd; }
  .search input { margin: 0; }
  .search .to-contents { grid-column: 3; grid-row: 1; padding: .3rem 0; }
  .search .found { grid-column: 1 / -1; min-height: 0; margin: 0; }
  .search .found:empty { display: none; }
  .search .found:not(:empty) { padding-top: .3rem; }
  .hits { grid-column: 1 / -1; max-height: 55vh; overflow-y: auto; overscroll-behavior: contain; }
}
@media screen and (max-width: 45rem) {
  :root { --hang: 0rem; }
  h2 > .number, h3 > .number { position: static; }
  .titlepage { min-height: 0; }
  .titlepage h1 { font-size: 2.2em; }
  .opening ul { display: block; }
  .opening li + li { border-top: .4pt solid var(--hair); }
  .opening li:nth-child(2) { padding-left: 0; border-top: .4pt solid var(--hair); }
  .opening strong:first-child, .opening li:nth-child(2) > strong:first-child, .done > strong:first-child, .caution > .word { float: none; position: static; display: block; margin-left: 0; width: auto; }
  .part > ol { padding-left: 2.4rem; }
  .part > ol > li::before { left: -2.4rem; width: 1.7rem; }
  .columns, .answers { columns: 1; }
  .tablebox > table:has(tr > :nth-child(3)) { min-width: 34rem; }
  .tablebox > table:has(tr > :nth-child(6)) { min-width: 56rem; }
}`;
