import type { Rulebook } from '../../link/rulebook.js';
import { headOf } from '../head.js';
import { type CutFact, countCells } from './cells.js';
import { compact } from './compact.js';
import { type Layout, layOut, mostWordsWrittenOut } from './lay-out.js';
import { jsonText, keyLiteral, literal, numbers } from './literal.js';
import { runtimeAnswer } from './runtime-answer.js';
import { runtimeBatch } from './runtime-batch.js';
import { runtimeManyRows } from './runtime-many-rows.js';
import { runtimeRead } from './runtime-read.js';
import { runtimeRows } from './runtime-rows.js';
import { runtimeTrace } from './runtime-trace.js';
import { bitsOf, mostClassesInABitSet } from './selections.js';
import { sparseWords } from './tables.js';
import { generalWords, partOf, type Shared, shareOf, writeDecision, writeEvaluator, writeInner } from './write-decision.js';
import { callDecoder, decoderName, writeDecoders } from './write-decoders.js';
import { askings, factText, TestTexts, types } from './write-texts.js';
import { typesOf } from './write-types.js';

const format = 'clinic-rulebook-module/1';

/**
 * One ES module that answers the decisions of a rulebook, and its types. It needs nothing else, and is the same for equal rulebooks.
 *
 * @throws RangeError when another decision looks at an answer with more than 30 outcomes.
 */
export function rulebookToModule(rulebook: Rulebook): { code: string; types: string } {
  const layout = layOut(rulebook);
  const shared = shareOf(layout);
  const facts = [...layout.facts.values()];
  const texts = new TestTexts(layout.facts);
  const evaluators = layout.decisions.map((laid) => writeEvaluator(laid, layout, shared));
  const hasMany = layout.decisions.some(({ isBig }) => isBig);
  const head = { ...headOf(rulebook), format };
  const lines = [
    '// Made from the rules of a clinic; not to be changed by hand. It needs nothing else.',
    `export const rulebook=Object.freeze(${literal(head)});`,
    `const ids=${literal(facts.map(({ fact }) => fact.id))};`,
    `const guarded=${literal(facts.map(({ fact }) => Number(fact.id in Object.prototype)))};`,
    `const clinic=${literal(Object.fromEntries(facts.flatMap(({ index, clinic }) => (clinic === undefined ? [] : [[index, clinic.value]]))))};`,
    `const C=new Int32Array(${facts.length}),M=new Int32Array(${facts.length}),E=new Int32Array(${2 * layout.words}),V=new Array(${facts.length}).fill(undefined);`,
    `const lineOfU=${layout.words},same=Array.from({length:${32 * mostWordsWrittenOut}},(_,i)=>i);`,
    `const A=new Int32Array([${numbers(shared.tables)}]);`,
    `const U=new Int32Array(${facts.length * layout.words}).fill(-1);`,
    `{const u=[${numbers(shared.unmentioned)}];for(let i=0;i<u.length;i+=3)U[u[i]*lineOfU+u[i+1]]=u[i+2];}`,
    ...writeSets(facts, layout, shared),
    ...writeDecoders(facts),
    `const counts=${literal(facts.map(({ cells }) => countCells(cells)))};`,
    `const decoders=[${facts.map(decoderName)}];`,
    ...evaluators,
    ...writeInner(layout),
    ...layout.decisions.map((laid) => writeDecision(laid, rulebook, shared, texts)),
    `const metas=[${layout.decisions.map(({ index }) => `m${index}`)}];`,
    'const byId=new Map(metas.map((m)=>[m.id,m]));',
    `const testTexts=()=>${jsonText(texts.all())};`,
    `const factTexts=()=>${jsonText(facts.map(factText))};`,
    `const types=${literal(types)},askings=${literal(askings)};`,
    ...writeAll(layout),
    ...[runtimeRead, runtimeRows, hasMany ? runtimeManyRows : '', runtimeAnswer, runtimeTrace, runtimeBatch, tail].map(compact),
  ];
  return { code: lines.join('\n'), types: typesOf(rulebook, layout) };
}

const tail = `
/** What the decisions are: id, kind, question, outcomes from least to most restrictive, and the facts that each reads. */
export const decisions = Object.freeze(
  metas.map(({ id, kind, question, outcomes, reads }) => ({ id, kind, question, outcomes, reads: reads.map((k) => ids[k]) })),
);
/** What a fact is: type, members, unit, and what is expected of a value. */
export function describeFact(fact) {
  const found = facts().find(({ id }) => id === fact);
  if (found === undefined) throw new RangeError('no fact ' + String(fact));
  return { ...found, expected: expectedOf(found) };
}
`;

/** The set facts `s3` and so on: their tests with the rows that ask them, and the parts of their lines. */
function writeSets(facts: readonly CutFact[], layout: Layout, shared: Shared): string[] {
  const written = facts.flatMap((fact) => {
    if (fact.cells.kind !== 'set') return [];
    const isWide = fact.cells.classes.length > mostClassesInABitSet;
    const tests = new Map<string, [number, number | number[], number[]]>();
    for (const laid of layout.decisions) {
      const mention = laid.mentions.find((each) => each.fact === fact);
      const part = shared.parts.get(partOf(laid, fact));
      if (mention === undefined || part === undefined) continue;
      for (const { test, rows } of mention.tests) {
        const key = `${test.op} ${test.classes}`;
        const known = tests.get(key) ?? [test.op, isWide ? test.classes : bitsOf(test.classes), []];
        known[2].push(
          ...sparseWords(rows, (word) =>
            word < generalWords(laid) ? part.general + word : part.rest + word - generalWords(laid),
          ),
        );
        tests.set(key, known);
      }
    }
    const parts = Object.fromEntries(
      layout.decisions.flatMap((laid) => {
        const part = shared.parts.get(partOf(laid, fact));
        return part === undefined ? [] : [[laid.index, part.general]];
      }),
    );
    const classes = isWide ? -1 : fact.cells.classes.length;
    const line = shared.lines.get(fact) ?? 0;
    return [`const s${fact.index}=setOf(${line},${literal([...tests.values()])},${literal(parts)},${classes});`];
  });
  const names = facts.flatMap(({ index, cells }) => (cells.kind === 'set' ? [`${index}:s${index}`] : []));
  return [...written, `const sets={${names}};`];
}

/** Of more facts than this, reading is not written out: a situation states few of them. */
const mostReadsWrittenOut = 100;

/** The function that answers everything in short, reading each fact once. */
function writeAll({ facts, decisions }: Layout): string[] {
  const read = [...facts.values()].map((each) => {
    const { index, cells } = each;
    const cell = callDecoder(each, `V[${index}]`);
    return cells.kind === 'answer' ? `C[${index}]=${cell};` : `if((C[${index}]=${cell})===0)M[n++]=${index};`;
  });
  const reading = read.length > mostReadsWrittenOut ? 'n=readAll(f);' : `gather(f);${read.join('\n')}`;
  const answers = decisions.map((laid) => {
    const { index, firstWord, words, decision } = laid;
    const run = `const x${index}=e${index}(n,true)`;
    if (decision.kind === 'verdict' && words === 1 && !laid.isBig)
      return `${run},r${index}=briefOfWord(m${index},x${index},E[${2 * firstWord}],E[${2 * firstWord + 1}]);`;
    if (decision.kind === 'verdict' && laid.isBig) return `${run},r${index}=briefOfBig(m${index},x${index});`;
    return `${run},r${index}=brief(m${index},x${index},hitsOf(m${index}));`;
  });
  const result = decisions.map(({ index, decision }) => `${keyLiteral(decision.id)}:r${index}`);
  return [
    '/** Answers all decisions in short: outcome and rules of each. Each fact is read once. */',
    `export function decideAll(f){let n=0;${reading}fresh();\n${answers.join('\n')}\nreturn{${result}}}`,
  ];
}
