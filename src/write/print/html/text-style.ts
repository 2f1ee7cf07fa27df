import { family, symbols } from './embed-fonts.js';

/** The style sheet for the words and tables themselves, on every medium. Black on white, nothing told by color alone. */
export const textStyle = `:root { --hang: 6rem; --line: #777; --hair: #bbb; }
* { box-sizing: border-box; }
html { font: 100%/1.42 "${family}", "${symbols}", sans-serif; color: #111; }
body { margin: 0; }
.unseen { position: absolute; width: 1px; height: 1px; margin: -1px; overflow: hidden; clip-path: inset(50%); white-space: nowrap; }
h1, h2, h3, h4 { line-height: 1.2; font-weight: 650; margin: 0; text-wrap: balance; }
h2 { font-size: 1.9em; padding: .3em 0 0 var(--hang); margin-bottom: .45em; position: relative; border-top: 2pt solid #111; }
h3 { font-size: 1.25em; padding: .3em 0 0 var(--hang); margin: 1em 0 .25em; position: relative; border-top: .5pt solid var(--line); }
h4 { font-size: 1em; margin: 1.1em 0 .1em; padding-left: var(--hang); }
h2 > .number, h3 > .number { position: absolute; left: 0; font-weight: 400; font-variant-numeric: tabular-nums; }
p { margin: 0 0 .5em; }
p, ul, ol, .caution, .note, .opening { max-width: calc(var(--hang) + 43em); }
.chapter > p, .part > p, .chapter > ul, .part > ul, .note, .task > p { padding-left: var(--hang); }
.lead { font-size: 1.08em; color: #222; }
.question { font-weight: 650; }
.caption { font-weight: 650; margin-top: 1.2em; }
.source { font-size: .85em; color: #444; }
ul { margin: 0 0 .8em; padding-left: 1.1em; }
.chapter > ul, .part > ul { padding-left: calc(var(--hang) + 1.1em); }
li { margin: 0 0 .35em; }
a { color: inherit; text-decoration-color: #999; text-underline-offset: .15em; }

.opening ul { list-style: none; margin: .4em 0 .7em; padding: 0; max-width: none; border-top: .5pt solid var(--line); border-bottom: .5pt solid var(--line); }
.opening li { padding: .14em 0 .14em var(--hang); margin: 0; }
.opening li + li { border-top: .4pt solid var(--hair); }
.opening ul { display: grid; grid-template-columns: 1fr 1fr; }
.opening li:first-child { padding-right: 1em; }
.opening li:nth-child(n + 3) { grid-column: 1 / -1; }
.opening li:nth-child(2) { border-top: 0; padding-left: 4.5em; }
.opening li:nth-child(2) > strong:first-child { margin-left: -4.5em; width: 4em; }
.opening strong:first-child, .done > strong:first-child { float: left; margin-left: calc(-1 * var(--hang)); width: calc(var(--hang) - .4em); font-weight: 650; white-space: nowrap; }
.done { clear: left; margin-top: .35em; }
.opening strong:first-child, .done > strong:first-child { font-size: .94em; }
.to-decision, .to-procedure, .to-task, .to-form { font-style: italic; }
.source { clear: left; }

.caution { position: relative; margin: .8em 0 1em; padding-left: calc(var(--hang) + .9em); }
.caution::before { content: ""; position: absolute; left: var(--hang); top: .15em; bottom: .15em; border-left: 2.5pt solid #111; }
.caution > .word { position: absolute; left: 0; margin: 0; font-weight: 750; text-transform: uppercase; letter-spacing: .06em; font-size: .86em; line-height: 1.75; }
.caution p:last-child { margin-bottom: 0; }
.caution .body > p { margin-bottom: .35em; padding: 0; }
.note { border-left: .5pt solid var(--line); padding-left: 1em; margin: 0 0 1em var(--hang); }

.part > ol { list-style: none; counter-reset: step; margin: .7em 0; padding: 0 0 0 var(--hang); }
.part > ol > li { counter-increment: step; position: relative; margin-bottom: .22em; }
.part > ol > li::before { content: counter(step); position: absolute; text-align: right; font-size: 1.4em; line-height: .95; font-weight: 650; left: calc(-1 * var(--hang)); width: calc(var(--hang) - .9em); font-variant-numeric: tabular-nums; }
li > p { margin-bottom: .15em; }
.why { color: #444; font-style: italic; }
li > .caution, .task > .caution { border-left: 2.5pt solid #111; padding-left: .7em; margin: 0 0 .35em; }
li > .caution::before, .task > .caution::before { content: none; }
.task > .caution { margin-left: var(--hang); padding-left: .7em; }

.task { margin: 0 0 .9em; font-size: .86em; line-height: 1.25; }
.task p { margin-bottom: .15em; }
.task > ol { margin: .2em 0 .2em; padding-left: calc(var(--hang) + 1.5em); }
.task > ol > li { margin-bottom: .1em; padding-left: .2em; }
.task > .often { padding-left: var(--hang); }
.task > .done { margin-top: .2em; }
.task > .done > strong:first-child { font-weight: 650; }
.task > .who { color: #333; }

.tablebox { margin: .5em 0 .9em; }
table { border-collapse: collapse; width: 100%; font-size: .85em; line-height: 1.24; }
th, td { text-align: left; vertical-align: top; padding: .16em .9em .2em 0; font-weight: 400; overflow-wrap: break-word; }
th:last-child, td:last-child { padding-right: 0; }
thead th, thead td { font-weight: 650; border-bottom: 1pt solid #111; vertical-align: bottom; }
tbody tr { border-bottom: .4pt solid var(--hair); }
tbody:not(:last-child) > tr:last-child { border-bottom: 0; }
tbody:last-child > tr:last-child { border-bottom: .8pt solid var(--line); }
.right { text-align: right; font-variant-numeric: tabular-nums; padding-right: 1.4em; }
tr.group th { font-weight: 650; padding-top: .35em; font-size: 1.06em; border-top: 1pt solid #111; border-bottom: .4pt solid var(--hair); }
tbody + tbody::before { content: ""; display: block; height: .55em; }
table.answers strong { font-weight: 650; }
table.register, table.index, table.limits { font-size: .78em; }
table.programs { font-size: .8em; }
table.index :is(th, td), table.limits :is(th, td) { padding-top: .18em; padding-bottom: .2em; }
table.signature td, table.signature th { padding-top: 1.1em; padding-bottom: .3em; padding-right: .9em; }
table.signature tbody tr { border-bottom: .6pt solid var(--line); }
table.fill td { border: .6pt solid #333; padding: .15em .4em; height: 8mm; vertical-align: top; }
.tablebox:has(> table.fill) { margin-bottom: .5em; }
table.sheet th, table.sheet td { border: .6pt solid #333; padding: .2em .4em; }
table.sheet th { font-size: .92em; vertical-align: top; }
table.sheet tbody td { height: 4.6mm; }
.sheetbox > p { font-size: .87em; max-width: none; }

.titlepage { display: flex; flex-direction: column; }
.titlepage h1 { font-size: 3em; line-height: 1.08; margin: .3em 0 .2em; font-weight: 700; max-width: 12em; }
.titlepage .clinic { font-size: 1.3em; margin: 0; padding-top: .5em; border-top: 4pt solid #111; }
.titlepage .subtitle { font-size: 1.2em; color: #333; margin-bottom: auto; }
.titlepage .note { margin: 0; padding: .6em 0 0; border: 0; border-top: .5pt solid var(--line); max-width: none; font-size: .9em; }
.titlepage .tablebox { margin-top: 2em; }

.answers { columns: 2; column-gap: 2em; font-size: .85em; line-height: 1.24; margin: .4em 0 .7em; border-bottom: .8pt solid var(--line); padding-bottom: .4em; }
.answers ul { list-style: none; padding: 0; max-width: none; margin: 0; }
.answers li { break-inside: avoid; margin-bottom: .3em; padding-left: .9em; }
.answers strong { font-weight: 650; }
.answers .answer { font-weight: 750; font-size: 1.04em; break-after: avoid; margin: .5em 0 .2em; border-top: .8pt solid #111; padding-top: .15em; }
.answers > .answer:last-child { break-before: avoid; }
.columns { columns: 2; column-gap: 2.2em; font-size: .8em; line-height: 1.28; }
.columns .entry { margin-bottom: .5em; }
#section-trace-rules ~ .columns, #section-trace-pages ~ .columns, #section-trace-sources ~ .columns { font-size: .68em; line-height: 1.22; }
@media print { #section-trace-rules ~ .columns, #section-trace-pages ~ .columns { columns: 3; column-gap: 1.6em; } #section-trace-sources ~ .columns li { break-inside: auto; } }
.columns ul { list-style: none; padding: 0; max-width: none; }
.columns .caption { margin: .7em 0 .2em; break-after: avoid; }
.columns li { break-inside: avoid; margin-bottom: .2em; padding-left: 1em; text-indent: -1em; overflow-wrap: anywhere; }

.contents ol { list-style: none; margin: 0; padding: 0; max-width: none; }
.contents > ol > li { margin: 0 0 .45em; }
.contents > ol > li > a { font-weight: 650; }
.contents li { margin: 0; }
.contents a { display: grid; grid-template-columns: 3.3em 1fr; text-decoration: none; padding: .03em 0; }
.contents .number { font-variant-numeric: tabular-nums; }
.contents-title { font-size: 1.6em; font-weight: 650; }

figure { margin: 1em 0 1.4em; break-inside: avoid; }
.drawing > svg { display: block; max-width: 100%; height: auto; margin: 0 auto; }
.drawing text { font-family: "${family}", "${symbols}", sans-serif; }
figcaption { font-size: .9em; color: #333; margin-top: .4em; max-width: calc(var(--hang) + 43em); }
.part > figure > figcaption, .chapter > figure > figcaption { padding-left: var(--hang); }

ins { text-decoration: underline 1pt; text-underline-offset: .15em; }
del { text-decoration: line-through 1pt; color: #444; }
del + ins { margin-left: .15em; }
.changed { --bar: 3pt solid #111; position: relative; }
.changed.deleted { --bar: 3.5pt double #111; }
.changed.moved { --bar: 2.5pt dotted #111; }
.changed:not(tr)::after, tr.changed > :first-child::after { content: ""; position: absolute; left: -.8rem; top: 0; bottom: 0; border-left: var(--bar); }
.part > ol > li.changed::after { left: calc(-1 * var(--hang) - .8rem); }
tr.changed > :first-child { position: relative; padding-left: .7rem; }
tr.changed > :first-child::after { left: 0; }
.change-word { display: inline-block; font-size: .75rem; line-height: 1.2; font-weight: 700; font-style: normal; letter-spacing: .02em; border: .6pt solid currentcolor; padding: 0 .3em; margin-right: .25em; vertical-align: .08em; }
div.changed > .change-word:first-child, figure > .change-word { display: table; margin-bottom: .3em; }
.deleted { color: #444; text-decoration: line-through .6pt; }`;
