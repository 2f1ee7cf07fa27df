import { type Answering, knownFacts, needsOf, programsOf } from '../../decide/decide.js';
import { factsAgainst } from '../../decide/facts-of.js';
import { truthOf } from '../../decide/truth.js';
import { type CutFact, countCells } from './cells.js';
import type { KeyedRow } from './key-rows.js';
import type { Laid, Layout } from './lay-out.js';
import { jsonText, literal } from './literal.js';
import { answerTables, Bits, packed, streamOf, tableOf, unmentioned } from './tables.js';
import type { TestTexts } from './write-texts.js';

/** What the decisions written out share. */
export interface Shared {
  /** Words of all tables one after the other. */
  tables: number[];
  /** Triples of a fact, a word and the rows in it that do not mention the fact. */
  unmentioned: number[];
  /** By set fact: the length of one of its lines. */
  lines: Map<CutFact, number>;
  /** Where a decision's parts of a set fact's line begin: of rows that are not looked up, and of those that are. */
  parts: Map<string, { general: number; rest: number }>;
  /** Where the tables begin of decisions over plain facts; those of their facts follow one another. */
  starts: Map<Laid, number>;
}

/** Where each decision's words lie in the lines of the set facts. */
export function shareOf({ decisions }: Layout): Shared {
  const shared: Shared = { tables: [], unmentioned: [], lines: new Map(), parts: new Map(), starts: new Map() };
  const add = (fact: CutFact, words: number): number => {
    const start = shared.lines.get(fact) ?? 0;
    shared.lines.set(fact, start + words);
    return start;
  };
  const ofSets = decisions.flatMap((laid) =>
    laid.mentions.filter(({ fact }) => fact.cells.kind === 'set').map(({ fact }) => ({ laid, fact })),
  );
  for (const { laid, fact } of ofSets) shared.parts.set(partOf(laid, fact), { general: add(fact, generalWords(laid)), rest: 0 });
  for (const { laid, fact } of ofSets) {
    const part = shared.parts.get(partOf(laid, fact));
    if (part !== undefined) part.rest = add(fact, laid.words - generalWords(laid));
  }
  return shared;
}

/** Words of the rows that are not looked up. */
export function generalWords({ keyed, words }: Laid): number {
  return keyed === undefined ? words : keyed.words;
}

/** The name of a decision's part of the lines of a set fact. */
export function partOf({ index }: Laid, fact: CutFact): string {
  return `${index} ${fact.index}`;
}

/** The function `e0` and so on that evaluates a decision: leaves its words behind and returns the possible outcomes as a bit set. */
export function writeEvaluator(laid: Laid, layout: Layout, shared: Shared): string {
  const { index, words, firstWord, decision } = laid;
  const range = Array.from({ length: words }, (_, word) => word);
  const lines: string[] = [];
  if (laid.isBig) {
    const answers = laid.mentions.filter(({ fact }) => fact.cells.kind === 'answer');
    const found = answers.map(({ fact }) => stillPossible(fact, layout));
    return `function e${index}(n,q){return runBig(m${index},n,q,[${found}])}`;
  }
  if (isPlain(laid)) shared.starts.set(laid, shared.tables.length);
  const terms: string[][] = range.map(() => []);
  const certain: string[][] = range.map(() => []);
  for (const mention of laid.mentions) {
    const { fact } = mention;
    const place = fact.index;
    const base = shared.tables.length;
    const at = (start: number, cell: string, word: number) => `A[${start + word}+${words === 1 ? cell : `${words}*${cell}`}]`;
    switch (fact.cells.kind) {
      case 'set': {
        const part = shared.parts.get(partOf(laid, fact))?.general ?? 0;
        const line = shared.lines.get(fact) ?? 0;
        for (const word of range) terms[word]?.push(`s${place}.b[${line}*C[${place}]+${part + word}]`);
        break;
      }
      case 'answer': {
        const { possible, certain: sure } = answerTables(laid, mention);
        shared.tables.push(...possible, ...sure);
        lines.push(`const a${place}=${stillPossible(fact, layout)};`);
        for (const word of range) {
          terms[word]?.push(at(base, `a${place}`, word));
          certain[word]?.push(at(base + possible.length, `a${place}`, word));
        }
        break;
      }
      default:
        shared.tables.push(...tableOf(laid, mention));
        for (const word of range) terms[word]?.push(at(base, `C[${place}]`, word));
    }
    if (fact.cells.kind !== 'answer')
      unmentioned(laid, mention).forEach((bits, word) => {
        if (bits !== -1) shared.unmentioned.push(place, firstWord + word, bits);
      });
  }
  const last = laid.rows - 32 * (words - 1);
  for (const word of range) {
    const rows = word === words - 1 && last < 32 ? (1 << last) - 1 : -1;
    lines.push(
      `let p${word}=${[rows, ...(terms[word] ?? [])].join('&')}${certain[word]?.length ? `,t${word}=p${word}&${certain[word]?.join('&')}` : `,t${word}=p${word}`};`,
    );
  }
  if (laid.direct.length > 0) {
    lines.push('let g;');
    for (const { row, rule } of laid.direct) {
      const [word, bit] = [row >> 5, 1 << (row & 31)];
      lines.push(`if((g=truthOfRule(m${index},${rule},n,q))!==2){t${word}&=${~bit};if(g===0)p${word}&=${~bit}}`);
    }
  }
  if (laid.mentions.length > 0) for (const word of range) lines.push(`if(n!==0)t${word}=surely(t${word},n,${firstWord + word});`);
  for (const word of range) lines.push(`E[${2 * (firstWord + word)}]=p${word};E[${2 * (firstWord + word) + 1}]=t${word};`);
  if (decision.kind === 'verdict') {
    const ranks = decision.outcomes.map((outcome) => outcomeRows(laid, outcome));
    const bitsOf = (letter: string) =>
      ranks
        .map((masks, rank) => {
          const tests = range.flatMap((word) => (masks[word] === 0 ? [] : [`${letter}${word}&${masks[word]}`]));
          return tests.length === 0 ? '' : `((${tests.join('|')})!==0?${1 << rank}:0)`;
        })
        .filter((each) => each !== '')
        .join('|') || '0';
    const same = range.map((word) => `p${word}===t${word}`).join('&&') || 'true';
    lines.push(
      `const x=${bitsOf('p')};return outcomesOf(x,${same}?x:${bitsOf('t')},${1 << decision.outcomes.indexOf(decision.otherwise)})`,
    );
  } else lines.push(`return chosenBits(m${index})`);
  return `function e${index}(n,q){${lines.join('')}}`;
}

/** Whether a few words of rows over plain facts decide, so that columns are evaluated one after the other. */
function isPlain({ decision, words, isBig, direct, mentions, reads }: Laid): boolean {
  return (
    decision.kind === 'verdict' &&
    !isBig &&
    words > 0 &&
    direct.length === 0 &&
    decision.rules.length <= 32 &&
    mentions.every(({ fact }) => fact.cells.kind !== 'answer') &&
    mentions.map(({ fact }) => fact.index).join() === reads.join()
  );
}

/** By word, the rows whose rules give an outcome. */
function outcomeRows({ words, ruleOf, decision }: Laid, outcome: string): Int32Array {
  const bits = new Bits(words);
  ruleOf.forEach((rule, row) => {
    if (decision.rules[rule]?.outcome === outcome) bits.set(row);
  });
  return bits.words;
}

function stillPossible(fact: CutFact, { decisions }: Layout): string {
  if (fact.cells.kind !== 'answer') return '0';
  const { decision } = fact.cells;
  const asked = decisions.find((each) => each.decision.id === decision)?.index;
  return `told(i${asked}(n),q?C[${fact.index}]:${fact.clinic?.cell ?? 0})`;
}

/** The functions `i0` and so on: what a decision's answer can be when another looks at it, worked out once an evaluation. */
export function writeInner(layout: Layout): string[] {
  const looked = new Set(
    [...layout.facts.values()].flatMap(({ cells }) =>
      cells.kind === 'answer' ? layout.decisions.filter(({ decision }) => decision.id === cells.decision) : [],
    ),
  );
  const names = [...looked].map(({ index }) => index);
  return [
    ...names.map((index) => `let b${index}=-1;function i${index}(n){return b${index}<0?b${index}=e${index}(n,false):b${index}}`),
    `function fresh(){${names.map((index) => `b${index}=-1;`).join('')}}`,
    `const inner={${[...layout.facts.values()].flatMap(({ index, cells, clinic }) => {
      const asked = cells.kind === 'answer' ? layout.decisions.find(({ decision }) => decision.id === cells.decision) : undefined;
      return asked === undefined ? [] : [`${index}:[i${asked.index},${clinic?.cell ?? 0},${asked.index}]`];
    })}};`,
  ];
}

/** What the module keeps of a decision, `m0` and so on. */
export function writeDecision(laid: Laid, rulebook: Answering, shared: Shared, texts: TestTexts): string {
  const { decision, index } = laid;
  const programs = decision.kind === 'choice' ? programsOf(decision, rulebook) : [];
  const outcomes = decision.kind === 'verdict' ? decision.outcomes : [...programs.map(({ id }) => id), 'none'];
  const lacks = programs.map((program) => {
    const stated = knownFacts(rulebook, program.facts);
    return decision.rules.map((rule) => (truthOf(needsOf(rule), stated) === true ? '' : factsAgainst(needsOf(rule), stated)));
  });
  const isVerdict = decision.kind === 'verdict';
  const prefix = `${decision.id}/`;
  const ids = decision.rules.map(({ id }) => id);
  const isPrefixed = ids.every((id) => id.startsWith(prefix));
  const fields = [
    index,
    literal(decision.id),
    literal(decision.question),
    literal(outcomes),
    isVerdict ? decision.outcomes.indexOf(decision.otherwise) : -1,
    literal(isPrefixed ? prefix : ''),
    literal(isPrefixed ? ids.map((id) => id.slice(prefix.length)) : ids),
    literal(isVerdict ? decision.rules.map(({ outcome }) => decision.outcomes.indexOf(outcome ?? '')) : []),
    laid.ruleOf.every((rule, row) => rule === row) && !laid.isBig ? 'same' : literal(laid.ruleOf),
    literal(laid.reads),
    laid.words,
    laid.firstWord,
    `e${index}`,
    laid.isBig ? writeBig(laid, shared) : 'null',
    `()=>${jsonText(texts.rulesOf(decision))}`,
    laid.rows,
    shared.starts.get(laid) ?? -1,
    ...(isVerdict
      ? []
      : [
          literal(decision.rules.map(({ addsOnly }) => (addsOnly ? '0' : '1')).join('')),
          literal(lacks.map((each) => each.map((facts) => (facts === '' ? '0' : '1')).join(''))),
          `()=>${literal(lacks.map((each) => Object.fromEntries(each.flatMap((facts, rule) => (facts === '' ? [] : [[rule, facts]])))))}`,
        ]),
  ];
  return `const m${index}=D(${fields.join(',')});`;
}

function writeBig(laid: Laid, shared: Shared): string {
  const fixed = laid.mentions.filter(({ fact }) => fact.cells.kind === 'members' || fact.cells.kind === 'numbers');
  const sets = laid.mentions.filter(({ fact }) => fact.cells.kind === 'set');
  const answers = laid.mentions.filter(({ fact }) => fact.cells.kind === 'answer');
  const count = ({ cells }: CutFact) => countCells(cells);
  const keyed =
    laid.keyed === undefined
      ? 'null'
      : `[${laid.keyed.fact.index},${count(laid.keyed.fact)},${laid.keyed.words},"${packed(keyedStream(laid.keyed.rows))}"]`;
  return `{rows:${laid.rows},all:${laid.ruleOf.length},fixed:[${fixed.map((each) => `[${each.fact.index},${count(each.fact)},"${packed(streamOf(each))}"]`)}],sets:[${sets.map(
    ({ fact, rows }) =>
      `[${fact.index},s${fact.index},${shared.parts.get(partOf(laid, fact))?.general},${shared.parts.get(partOf(laid, fact))?.rest},"${packed(deltas(rows))}"]`,
  )}],answers:[${answers.map((each) => literal([each.fact.index, each.answers]))}],direct:${literal(laid.direct.map(({ row, rule }) => [row, rule]))},keyed:${keyed},ready:null}`;
}

/** By row: how many keys and the keys; how many tests, and of each the fact, how it is tested and what passes. */
function keyedStream(rows: readonly KeyedRow[]): number[] {
  return [rows.length, ...rows.flatMap(({ keys, tests }) => [keys.length, ...keys, tests.length, ...tests.flat()])];
}

function deltas(rows: readonly number[]): number[] {
  return [rows.length, ...rows.map((row, index) => row - (rows[index - 1] ?? 0))];
}
