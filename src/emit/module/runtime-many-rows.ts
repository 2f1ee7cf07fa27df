/** The part of the module for decisions with many rows; modules without any do without it. */
export const runtimeManyRows = `
/** After the last evaluation of a decision with many rows: the rules that apply for certain, in order. */
function sureOf(m) {
  const { ruleOf, rules } = m;
  const { sure, general, keyed, some } = m.big.ready;
  const names = [];
  let last = -1;
  let j = 0;
  const before = (limit) => {
    for (; j < some; j++) {
      const r = ruleOf[keyed.rows[j]];
      if (r > limit) return;
      if (keyed.truths[j] !== 2 || r === last) continue;
      names.push(rules[r]);
      last = r;
    }
  };
  for (let w = 0; w < general; w++)
    for (let t = sure[w]; t !== 0; t &= t - 1) {
      const r = ruleOf[32 * w + 31 - Math.clz32(t & -t)];
      if (j < some) before(r);
      if (r === last) continue;
      names.push(rules[r]);
      last = r;
    }
  if (j < some) before(rules.length);
  return names;
}
/** After the last evaluation of a decision with many rows: the rules that may still make it more restrictive, in order. */
function openOf(m, bits) {
  const { ruleOf, rules, ranks } = m;
  const { still, sure, words, keyed, some, may, does } = m.big.ready;
  let isSure = false;
  for (let w = 0; w < words; w++)
    for (let t = sure[w]; t !== 0; t &= t - 1) {
      const r = ruleOf[32 * w + 31 - Math.clz32(t & -t)];
      does[r >> 5] |= 1 << (r & 31);
      isSure = true;
    }
  for (let j = 0; j < some; j++) {
    if (keyed.truths[j] !== 2) continue;
    const r = ruleOf[keyed.rows[j]];
    does[r >> 5] |= 1 << (r & 31);
    isSure = true;
  }
  const floor = isSure ? 31 - Math.clz32(bits & -bits) : -1;
  for (let w = 0; w < words; w++)
    for (let t = still[w] & ~sure[w]; t !== 0; t &= t - 1) {
      const r = ruleOf[32 * w + 31 - Math.clz32(t & -t)];
      if (ranks[r] > floor) may[r >> 5] |= 1 << (r & 31);
    }
  for (let j = 0; j < some; j++) {
    const r = ruleOf[keyed.rows[j]];
    if (ranks[r] > floor) may[r >> 5] |= 1 << (r & 31);
  }
  const names = [];
  for (let w = 0; w < may.length; w++) {
    for (let t = may[w] & ~does[w]; t !== 0; t &= t - 1) names.push(rules[32 * w + 31 - Math.clz32(t & -t)]);
    may[w] = does[w] = 0;
  }
  return names;
}
/** Reads a stream of small numbers. */
function* unpack(text) {
  let each = 0;
  let shift = 0;
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i) - 48;
    const six = code - (code > 12 ? 1 : 0) - (code > 44 ? 1 : 0);
    each |= (six & 31) << shift;
    if (six & 32) shift += 5;
    else {
      yield each;
      each = shift = 0;
    }
  }
}
/** Spreads the tables of a decision with many rows, when it is first asked: of each fact, cell by cell, its words. */
function spread(m) {
  const { big, words, ruleOf, ranks, outcomes } = m;
  const keep = (k, rows) => {
    const at = k * lineOfU + m.firstWord;
    for (const row of rows) U[at + (row >> 5)] &= ~(1 << (row & 31));
  };
  // Of the enum by which rows are looked up, only the words of the other rows.
  const general = big.keyed === null ? words : big.keyed[2];
  const widthOf = (k) => (big.keyed !== null && k === big.keyed[0] ? general : words);
  const tables = new Int32Array(big.fixed.reduce((sum, [k, count]) => sum + count * widthOf(k), 0));
  const starts = [];
  const widths = [];
  let start = 0;
  for (const [k, count, text] of big.fixed) {
    const width = widthOf(k);
    const stream = Int32Array.from(unpack(text));
    const line = new Int32Array(width).fill(-1);
    const rows = [];
    for (let i = 1, row = 0; i < stream.length; i += 2 + 2 * stream[i + 1]) {
      row += stream[i];
      rows.push(row);
      line[row >> 5] &= ~(1 << (row & 31));
    }
    keep(k, rows);
    tables.fill(-1, start, start + width);
    for (let cell = 1; cell < count; cell++) tables.set(line, start + cell * width);
    for (let i = 1, row = 0; i < stream.length; ) {
      row += stream[i];
      const runs = stream[i + 1];
      i += 2;
      let cell = 0;
      for (let j = 0; j < runs; j++, i += 2) {
        cell += stream[i];
        for (const end = cell + stream[i + 1]; cell < end; cell++) tables[start + cell * width + (row >> 5)] |= 1 << (row & 31);
      }
    }
    starts.push(start);
    widths.push(width);
    start += count * width;
  }
  for (const [k, , , text] of big.sets) {
    const [, ...gaps] = unpack(text);
    let row = 0;
    keep(k, gaps.map((gap) => (row += gap)));
  }
  const isRow = (row) => row < big.rows || (big.keyed !== null && row >= 32 * general && row < big.all);
  const rows = new Int32Array(words);
  const byRank = m.kind === 'verdict' ? outcomes.map(() => new Int32Array(words)) : [];
  for (let row = 0; row < big.all; row++) {
    if (!isRow(row)) continue;
    rows[row >> 5] |= 1 << (row & 31);
    if (m.kind === 'verdict') byRank[ranks[ruleOf[row]]][row >> 5] |= 1 << (row & 31);
  }
  const inRules = () => new Int32Array(Math.ceil(m.rules.length / 32));
  return (big.ready = {
    facts: Int32Array.from(big.fixed, ([k]) => k),
    starts: Int32Array.from(starts),
    widths: Int32Array.from(widths),
    at: new Int32Array(starts.length),
    tables,
    rows,
    may: inRules(),
    does: inRules(),
    still: new Int32Array(words),
    sure: new Int32Array(words),
    words,
    some: 0,
    byRank,
    general,
    keyed: big.keyed === null ? null : spreadKeyed(big.keyed),
    sets: big.sets.map(([k, set, from]) => ({ k, set, from })),
  });
}
/** The rows looked up: of each, where its tests are; of each cell of the key, its rows. */
function spreadKeyed([k, count, , text]) {
  const stream = Int32Array.from(unpack(text));
  const tests = new Int32Array(stream[0]);
  const cells = Array.from({ length: count }, () => []);
  for (let row = 0, i = 1; row < tests.length; row++) {
    const keys = stream[i++];
    for (let j = 0; j < keys; j++) cells[stream[i++]].push(row);
    tests[row] = i;
    i += 1 + 3 * stream[i];
  }
  return { k, stream, tests, cells, rows: new Int32Array(tests.length), truths: new Uint8Array(tests.length) };
}
/** 0 where one of the tests of a row fails, 1 where one is open, 2 where all pass. */
function truthOfKeyed(stream, at) {
  let truth = 2;
  for (let i = at + 1, end = i + 3 * stream[at]; i < end; i += 3) {
    const k = stream[i];
    const cell = C[k];
    if (cell === 0) truth = 1;
    else if (stream[i + 1] === 4 ? ((stream[i + 2] >>> cell) & 1) === 0 : !holds(stream[i + 1], stream[i + 2], sets[k].masks[cell])) return 0;
  }
  return truth;
}
/** Of the words p, those rows that eight lines of a table do not rule out. */
function andEight(p, table, at, i, words) {
  const a = at[i];
  const b = at[i + 1];
  const c = at[i + 2];
  const d = at[i + 3];
  const e = at[i + 4];
  const f = at[i + 5];
  const g = at[i + 6];
  const h = at[i + 7];
  for (let w = 0; w < words; w++)
    p[w] &= table[a + w] & table[b + w] & table[c + w] & table[d + w] & table[e + w] & table[f + w] & table[g + w] & table[h + w];
}
function andOne(p, table, at, words) {
  for (let w = 0; w < words; w++) p[w] &= table[at + w];
}
/** Evaluates a decision with many rows: word by word, but rows that are looked up by a wide enum one by one where it is stated. */
function runBig(m, n, q, found) {
  const { big } = m;
  const ready = big.ready ?? spread(m);
  const { facts, starts, widths, at, tables, rows, still, sure, byRank, keyed, general, sets } = ready;
  const off = big.answers.length > 0 || big.direct.length > 0 ? exceptions(m, n, q, found) : null;
  const cell = keyed === null ? 0 : C[keyed.k];
  const words = cell === 0 ? m.words : general;
  const count = facts.length;
  for (let w = 0; w < words; w++) still[w] = rows[w];
  let last = 0;
  for (let i = 0; i < count; i++) {
    const k = facts[i];
    // A fact that is not stated rules out nothing.
    if (C[k] !== 0) at[last++] = starts[i] + widths[i] * C[k];
  }
  let i = 0;
  for (; i + 8 <= last; i += 8) andEight(still, tables, at, i, words);
  for (; i < last; i++) andOne(still, tables, at[i], words);
  for (let j = 0; j < sets.length; j++) {
    const { k, set, from } = sets[j];
    andOne(still, set.b, set.line * C[k] + from, words);
  }
  if (off !== null) for (let w = 0; w < words; w++) still[w] &= off[w];
  for (let w = 0; w < general; w++) sure[w] = still[w];
  for (let w = general; w < words; w++) sure[w] = 0;
  if (off !== null) for (let w = 0; w < general; w++) sure[w] &= off[m.words + w];
  for (let j = 0; j < n; j++) andOne(sure, U, lineOfU * M[j] + m.firstWord, general);
  let x = 0;
  let y = 0;
  for (let rank = 0; rank < byRank.length; rank++) {
    const given = byRank[rank];
    if (meets(still, given, words)) x |= 1 << rank;
    if (meets(sure, given, general)) y |= 1 << rank;
  }
  let some = 0;
  if (cell !== 0) {
    const { stream, tests, cells, rows: hit, truths } = keyed;
    const named = cells[cell];
    for (let j = 0; j < named.length; j++) {
      const truth = truthOfKeyed(stream, tests[named[j]]);
      if (truth === 0) continue;
      const row = 32 * general + named[j];
      hit[some] = row;
      truths[some++] = truth;
      if (byRank.length === 0) continue;
      const rank = 1 << m.ranks[m.ruleOf[row]];
      x |= rank;
      if (truth === 2) y |= rank;
    }
  }
  ready.words = words;
  ready.some = some;
  return m.kind === 'verdict' ? outcomesOf(x, y, 1 << m.otherwise) : chosenBits(m);
}
function meets(a, b, words) {
  for (let w = 0; w < words; w++) if ((a[w] & b[w]) !== 0) return true;
  return false;
}
/** What answers of other decisions and rules tested directly rule out: rows that cannot hold, then rows that may not. */
function exceptions(m, n, q, found) {
  const { words, big } = m;
  const off = new Int32Array(2 * words).fill(-1);
  big.answers.forEach(([, tests], i) => {
    const still = found[i];
    for (const [row, passing] of tests) {
      if (passing.some((bits) => (bits & still) === 0)) off[row >> 5] &= ~(1 << (row & 31));
      if (passing.some((bits) => (still & ~bits) !== 0)) off[words + (row >> 5)] &= ~(1 << (row & 31));
    }
  });
  for (const [row, rule] of big.direct) {
    const truth = truthOfRule(m, rule, n, q);
    if (truth === 0) off[row >> 5] &= ~(1 << (row & 31));
    if (truth !== 2) off[words + (row >> 5)] &= ~(1 << (row & 31));
  }
  return off;
}
`;
