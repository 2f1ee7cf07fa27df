import { testsOf } from '../../analyse/pieces.js';
import type { Answering } from '../../decide/decide.js';
import { factsOf } from '../../decide/facts-of.js';
import type { Decision, Test } from '../../link/rulebook.js';
import { type CutFact, countCells, cutFacts, passingAnswers, passingCells, type SetTest, setTest } from './cells.js';
import { type KeyedRow, keyedRow, keyFactOf } from './key-rows.js';
import { type Literal, type Row, Rows } from './rows.js';

/** What the rows of one decision say about one fact. */
export interface Mention {
  fact: CutFact;
  /** Of members and numbers, by row that mentions the fact: the cells that it does not rule out. */
  cells: [row: number, cells: ReadonlySet<number>][];
  /** Of a set: its tests with the rows that ask them. */
  tests: { test: SetTest; rows: number[] }[];
  /** Of an answer, by row: bit sets of the answers that pass each of its tests. */
  answers: [row: number, passing: number[]][];
  /** All rows that mention it. */
  rows: number[];
}

/** A decision laid out for bit sets: one bit a row, 32 rows a word. */
export interface Laid {
  index: number;
  decision: Decision;
  /** By row, its rule. */
  ruleOf: number[];
  /** Rows that are not looked up. */
  rows: number;
  words: number;
  /** Its place among the words of all decisions. */
  firstWord: number;
  mentions: Mention[];
  /** Rules that are tested directly, with their row, which mentions nothing. */
  direct: { row: number; rule: number }[];
  /** Whether it is looped over instead of written out. */
  isBig: boolean;
  /**
   * The rows that are looked up by the members of a wide enum. They come after the first `words` words, which are those of all other
   * rows, and mention that enum no more: where it is not stated, they are evaluated as rows, and none holds for certain.
   */
  keyed?: { fact: CutFact; words: number; rows: KeyedRow[] };
  /** The facts that it reads with those of the decisions it looks at, by place. */
  reads: number[];
}

export interface Layout {
  facts: Map<string, CutFact>;
  decisions: Laid[];
  words: number;
}

/** No more words than these are written out as code, which grows with them. */
export const mostWordsWrittenOut = 4;

/** Lays out all decisions of a rulebook. */
export function layOut(rulebook: Answering): Layout {
  const decisions = [...rulebook.decisions.values()];
  const conditions = decisions.flatMap(({ rules }) => rules.map(({ when }) => when));
  const facts = cutFacts(rulebook, testsOf(conditions, rulebook.facts));
  const rows = new Rows(rulebook.facts);
  const laid: Laid[] = [];
  let words = 0;
  decisions.forEach((decision, index) => {
    const each = layOutDecision(decision, index, words, facts, rows, readsOf(rulebook, facts, decision));
    words += each.words;
    laid.push(each);
  });
  return { facts, decisions: laid, words };
}

/** The facts that the conditions of a decision look at, and those of the decisions whose answers they look at. */
function readsOf(rulebook: Answering, facts: ReadonlyMap<string, CutFact>, decision: Decision): number[] {
  const reads = new Set<string>();
  const seen = new Set<string>();
  const follow = ({ id, rules }: Decision): void => {
    if (seen.has(id)) return;
    seen.add(id);
    for (const fact of rules.flatMap(({ when }) => factsOf(when, rulebook.facts))) {
      reads.add(fact);
      const asked = rulebook.decisions.get(rulebook.facts.get(fact)?.decision ?? '');
      if (asked !== undefined) follow(asked);
    }
  };
  follow(decision);
  return [...reads].flatMap((id) => facts.get(id)?.index ?? []).sort((a, b) => a - b);
}

interface Placed {
  rule: number;
  row: Row;
  isDirect: boolean;
}

function layOutDecision(
  decision: Decision,
  index: number,
  firstWord: number,
  facts: ReadonlyMap<string, CutFact>,
  rows: Rows,
  reads: number[],
): Laid {
  const placed = decision.rules.flatMap(({ when }, rule): Placed[] => {
    const ofRule = rows.of(when);
    if (ofRule === undefined || ofRule.some((row) => row.some((each) => hasManyAnswers(facts.get(each.fact)))))
      return [{ rule, row: [], isDirect: true }];
    return ofRule.map((row) => ({ rule, row, isDirect: false }));
  });
  const isBig = placed.length > 32 * mostWordsWrittenOut;
  const key = isBig
    ? keyFactOf(
        placed.map(({ row }) => row),
        facts,
      )
    : undefined;
  const looked = key === undefined ? [] : placed.map(({ row }) => keyedRow(row, key, facts, allowedOf));
  const general = placed.filter((_, place) => looked[place] === undefined);
  const rest = placed.filter((_, place) => looked[place] !== undefined);
  const generalWords = Math.ceil(general.length / 32);
  const gap = Array.from({ length: rest.length === 0 ? 0 : 32 * generalWords - general.length }, (): Placed => ({ ...unused }));
  const inOrder = [
    ...general,
    ...gap,
    ...rest.map((each) => ({ ...each, row: each.row.filter(({ fact }) => fact !== key?.fact.id) })),
  ];
  return {
    index,
    decision,
    ruleOf: inOrder.map(({ rule }) => rule),
    rows: general.length,
    words: Math.ceil(inOrder.length / 32),
    firstWord,
    mentions: mentionsOf(inOrder, facts),
    direct: inOrder.flatMap(({ rule, isDirect }, row) => (isDirect ? [{ row, rule }] : [])),
    isBig,
    ...(key !== undefined &&
      rest.length > 0 && { keyed: { fact: key, words: generalWords, rows: looked.flatMap((each) => each ?? []) } }),
    reads,
  };
}

/** Fills the last word before the rows that are looked up. */
const unused: Placed = { rule: 0, row: [], isDirect: false };

function allowedOf(fact: CutFact, { test, negated }: Literal): ReadonlySet<number> {
  return allowedCells(fact, test, negated);
}

/** A table of possible answers has a line for each selection of them. */
const mostTabulatedAnswers = 6;

function hasManyAnswers(fact: CutFact | undefined): boolean {
  return fact?.cells.kind === 'answer' && fact.cells.possible.length > mostTabulatedAnswers;
}

function mentionsOf(placed: readonly Placed[], facts: ReadonlyMap<string, CutFact>): Mention[] {
  const mentions = new Map<string, Mention>();
  const setTests = new Map<string, { test: SetTest; rows: number[] }>();
  placed.forEach(({ row: literals }, row) => {
    for (const { fact: id, test, negated } of literals) {
      const fact = facts.get(id);
      if (fact === undefined) throw new RangeError(`unknown fact ${id}`);
      const mention = mentions.get(id) ?? { fact, cells: [], tests: [], answers: [], rows: [] };
      mentions.set(id, mention);
      if (mention.rows.at(-1) !== row) mention.rows.push(row);
      if (fact.cells.kind === 'set') {
        const asked = setTest(fact.cells.classes, test, negated);
        const key = `${id} ${asked.op} ${asked.classes}`;
        const known = setTests.get(key) ?? { test: asked, rows: [] };
        if (known.rows.length === 0) mention.tests.push(known);
        known.rows.push(row);
        setTests.set(key, known);
      } else if (fact.cells.kind === 'answer') {
        const passing = passingAnswers(fact.cells.possible, test);
        const bits = negated ? ~passing & ((1 << fact.cells.possible.length) - 1) : passing;
        const last = mention.answers.at(-1);
        if (last?.[0] === row) last[1].push(bits);
        else mention.answers.push([row, [bits]]);
      } else {
        const cells = allowedCells(fact, test, negated);
        const last = mention.cells.at(-1);
        if (last?.[0] === row) last[1] = new Set([...last[1]].filter((cell) => cells.has(cell)));
        else mention.cells.push([row, cells]);
      }
    }
  });
  return [...mentions.values()].sort((a, b) => a.fact.index - b.fact.index);
}

/** By fact as one rulebook cuts it. */
const allowed = new WeakMap<CutFact, Map<Test, [ReadonlySet<number>?, ReadonlySet<number>?]>>();

function allowedCells(fact: CutFact, test: Test, negated: boolean): ReadonlySet<number> {
  const ofFact = allowed.get(fact) ?? new Map<Test, [ReadonlySet<number>?, ReadonlySet<number>?]>();
  allowed.set(fact, ofFact);
  const ofTest = ofFact.get(test) ?? [];
  ofFact.set(test, ofTest);
  const known = ofTest[negated ? 1 : 0];
  if (known !== undefined) return known;
  const passing = new Set(passingCells(fact, test));
  const all = Array.from({ length: countCells(fact.cells) - 1 }, (_, index) => index + 1);
  const cells = negated ? new Set(all.filter((cell) => !passing.has(cell))) : passing;
  ofTest[negated ? 1 : 0] = cells;
  return cells;
}
