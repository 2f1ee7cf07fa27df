/** The style sheet for the words and tables themselves, on every medium. Black on white, nothing told by color alone. */
export const textStyle = `:root { --hang: 6.5rem; --line: #777; --hair: #bbb; }
* { box-sizing: border-box; }
html { font: 100%/1.5 "Source Sans 3", "Segoe UI", "Helvetica Neue", Arial, "Liberation Sans", sans-serif; color: #111; }
body { margin: 0; }
h1, h2, h3, h4 { line-height: 1.2; font-weight: 650; margin: 0; text-wrap: balance; }
h2 { font-size: 1.9em; padding-left: var(--hang); margin-bottom: .5em; position: relative; }
h3 { font-size: 1.25em; padding-left: var(--hang); margin: 1.8em 0 .5em; position: relative; }
h4 { font-size: 1em; margin: 1.1em 0 .1em; padding-left: var(--hang); }
h2 > .number, h3 > .number { position: absolute; left: 0; font-weight: 400; font-variant-numeric: tabular-nums; }
h2::before { content: ""; position: absolute; left: 0; right: 0; top: -.45em; border-top: 2pt solid #111; }
h3::before { content: ""; position: absolute; left: 0; right: 0; top: -.35em; border-top: .5pt solid var(--line); }
p { margin: 0 0 .6em; }
p, ul, ol, .caution, .note, .opening { max-width: calc(var(--hang) + 36em); }
.chapter > p, .part > p, .chapter > ul, .part > ul, .note, .task > p { padding-left: var(--hang); }
.lead { font-size: 1.08em; color: #222; }
.question { font-weight: 650; }
.caption { font-weight: 650; margin-top: 1.2em; }
.source { font-size: .85em; color: #444; }
ul { margin: 0 0 .8em; padding-left: 1.1em; }
.chapter > ul, .part > ul { padding-left: calc(var(--hang) + 1.1em); }
li { margin: 0 0 .35em; }
a { color: inherit; text-decoration-color: #999; text-underline-offset: .15em; }

.opening ul { list-style: none; margin: .6em 0 1em; padding: 0; max-width: none; border-top: .5pt solid var(--line); border-bottom: .5pt solid var(--line); }
.opening li { padding: .22em 0 .22em var(--hang); margin: 0; }
.opening li + li { border-top: .4pt solid var(--hair); }
.opening strong:first-child, .done > strong:first-child { float: left; margin-left: calc(-1 * var(--hang)); width: calc(var(--hang) - .8em); font-weight: 650; }
.done { margin-top: .4em; }

.caution { position: relative; margin: .8em 0 1em; padding-left: calc(var(--hang) + .9em); }
.caution::before { content: ""; position: absolute; left: var(--hang); top: .15em; bottom: .15em; border-left: 2.5pt solid #111; }
.caution > .word { position: absolute; left: 0; margin: 0; font-weight: 750; text-transform: uppercase; letter-spacing: .06em; font-size: .86em; line-height: 1.75; }
.caution p:last-child { margin-bottom: 0; }
.caution .body > p { margin-bottom: .35em; padding: 0; }
.note { border-left: .5pt solid var(--line); padding-left: 1em; margin: 0 0 1em var(--hang); }

.part > ol { list-style: none; counter-reset: step; margin: 1em 0; padding: 0 0 0 var(--hang); }
.part > ol > li { counter-increment: step; position: relative; margin-bottom: .75em; }
.part > ol > li::before { content: counter(step); position: absolute; left: calc(-1 * var(--hang)); width: calc(var(--hang) - .8em); text-align: right; font-size: 1.75em; line-height: .95; font-weight: 650; left: calc(-1 * var(--hang)); width: calc(var(--hang) / 1.75 - .5em); font-variant-numeric: tabular-nums; }
li > p { margin-bottom: .25em; }
.why { color: #444; font-style: italic; }
li > .caution, .task > .caution { border-left: 2.5pt solid #111; padding-left: .7em; margin: 0 0 .35em; }
li > .caution::before, .task > .caution::before { content: none; }
.task > .caution { margin-left: var(--hang); padding-left: .7em; }

.task { margin: 0 0 .9em; font-size: .95em; }
.task p { margin-bottom: .15em; }
.task > ol { margin: .2em 0 .2em; padding-left: calc(var(--hang) + 1.3em); }
.task > ol > li { margin-bottom: .1em; padding-left: .2em; }
.task > .often { padding-left: var(--hang); }
.task > .done { margin-top: .2em; }
.task > .done > strong:first-child { font-weight: 650; }
.task > .who { color: #333; }

.tablebox { margin: .6em 0 1.2em; }
table { border-collapse: collapse; width: 100%; font-size: .87em; line-height: 1.38; }
th, td { text-align: left; vertical-align: top; padding: .32em .9em .38em 0; font-weight: 400; overflow-wrap: break-word; }
th:last-child, td:last-child { padding-right: 0; }
thead th, thead td { font-weight: 650; border-bottom: 1pt solid #111; vertical-align: bottom; }
tbody tr { border-bottom: .4pt solid var(--hair); }
tbody:last-child tr:last-child { border-bottom: .8pt solid var(--line); }
.right { text-align: right; font-variant-numeric: tabular-nums; padding-right: 1.4em; }
tr.group th { font-weight: 650; padding-top: .9em; border-bottom: .8pt solid var(--line); }
table.answers strong { font-weight: 650; }
table.register { font-size: .8em; }
table.index, table.limits { font-size: .8em; }
table.index td, table.limits td { padding-top: .18em; padding-bottom: .2em; }
table.signature td, table.signature th { padding-top: 1.1em; padding-bottom: .3em; padding-right: .9em; }
table.signature tbody tr { border-bottom: .6pt solid var(--line); }
table.sheet th, table.sheet td { border: .6pt solid #333; padding: .2em .4em; }
table.sheet th { font-size: .92em; vertical-align: top; }
table.sheet tbody td { height: var(--row, 7mm); }
.sheet-head, .sheet-foot { font-size: .87em; max-width: none !important; padding-left: 0 !important; }

.titlepage { display: flex; flex-direction: column; }
.titlepage h1 { font-size: 3em; line-height: 1.08; margin: .3em 0 .2em; font-weight: 700; max-width: 12em; }
.titlepage .clinic { font-size: 1.3em; margin: 0; padding-top: .5em; border-top: 4pt solid #111; }
.titlepage .subtitle { font-size: 1.2em; color: #333; margin-bottom: auto; }
.titlepage .note { margin: 0; padding: .6em 0 0; border: 0; border-top: .5pt solid var(--line); max-width: none; font-size: .9em; }
.titlepage .tablebox { margin-top: 2em; }

.columns ul { columns: 2; column-gap: 2.2em; list-style: none; padding: 0; max-width: none; font-size: .87em; line-height: 1.4; }
.columns li { break-inside: avoid; margin-bottom: .5em; }
.columns strong { display: block; }

.contents ol { list-style: none; margin: 0; padding: 0; max-width: none; }
.contents > ol > li { margin: 0 0 .7em; }
.contents > ol > li > a { font-weight: 650; }
.contents li { margin: 0; }
.contents a { display: grid; grid-template-columns: 2.6em 1fr; text-decoration: none; padding: .08em 0; }
.contents .number { font-variant-numeric: tabular-nums; }
.contents-title { font-size: 1.6em; font-weight: 650; }`;
