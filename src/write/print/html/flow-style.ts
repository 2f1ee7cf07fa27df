/** The style sheet of notices and redlines, over those of the manual: short, and without a new page for each chapter. */
export const flowStyle = `.front { padding-bottom: 0; }
.front > .clinic { max-width: none; font-size: 1.15em; margin: 0; padding-top: .5em; border-top: 4pt solid #111; }
.front > h1 { font-size: 2.2em; line-height: 1.1; margin: .1em 0; font-weight: 700; }
.front > .subtitle { color: #333; margin-bottom: 1.2em; }
.chapter, .chapter + .chapter { margin-top: 1.6em; }
.chapter > h2 { font-size: 1.4em; padding-top: .25em; border-top-width: 1.2pt; }
.notice { --hang: 0rem; }
@media print {
  .front { page: auto; }
  .chapter { break-before: auto; }
  .notice { font-size: .96em; }
}`;
