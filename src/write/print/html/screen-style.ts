/** The style sheet for the screen: a calm column, the contents at the side where there is room. */
export const screenStyle = `@media screen {
  html { background: #f4f4f2; scroll-padding-top: 1rem; }
  main { max-width: 56rem; margin: 0 auto; padding: 2rem clamp(1rem, 4vw, 3.5rem) 6rem; background: #fff; outline: 0; }
  .chapter { margin-top: 5rem; }
  .titlepage { min-height: 38rem; }
  .contents { margin-top: 3rem; }
  .contents a { min-height: 24px; align-items: center; }
  .contents a:hover, .contents a:focus-visible { text-decoration: underline; }
  .tablebox { overflow-x: auto; }
  .skip { position: absolute; left: -100vw; top: 0; z-index: 2; background: #fff; padding: .6rem 1rem; }
  .skip:focus { left: 0; }
  :focus-visible { outline: 3px solid #111; outline-offset: 2px; }
  :target { scroll-margin-top: 1rem; }
  tr:target, li:target { background: #f0f0e4; }
}
@media screen and (min-width: 80rem) {
  body { padding-left: 20rem; }
  .contents { position: fixed; left: 0; top: 0; bottom: 0; width: 20rem; margin: 0; padding: 1.5rem 1.25rem; overflow-y: auto; background: #f4f4f2; border-right: 1px solid #ddd; font-size: .85rem; line-height: 1.35; }
  .contents-title { font-size: 1.1rem; }
}
@media screen and (max-width: 45rem) {
  :root { --hang: 0rem; }
  h2 > .number, h3 > .number { position: static; }
  .opening strong:first-child, .done > strong:first-child, .caution > .word { float: none; position: static; display: block; margin-left: 0; width: auto; }
  .part > ol { padding-left: 2.4rem; }
  .part > ol > li::before { left: -2.4rem; width: auto; }
  .columns { columns: 1; }
}`;
