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
  // The words of rows that are looked up lie apart: mostly only the others are touched.
  const general = big.keyed === null ? words : big.keyed[2];
  const rest = words - general;
  const cellCount = big.fixed.reduce((sum, [, count]) => sum + count, 0);
  // After all lines, one that rules out nothing.
  const tables = new Int32Array((cellCount + 1) * general).fill(-1, cellCount * general);
  const restTables = new Int32Array((cellCount + 1) * rest).fill(-1, cellCount * rest);
  const starts = [];
  let start = 0;
  for (const [k, count, text] of big.fixed) {
    const stream = Int32Array.from(unpack(text));
    const line = new Int32Array(words).fill(-1);
    const rows = [];
    for (let i = 1, row = 0; i < stream.length; i += 2 + 2 * stream[i + 1]) {
      row += stream[i];
      rows.push(row);
      line[row >> 5] &= ~(1 << (row & 31));
    }
    keep(k, rows);
    const [first, second] = [line.subarray(0, general), line.subarray(general)];
    tables.fill(-1, start * general, (start + 1) * general);
    restTables.fill(-1, start * rest, (start + 1) * rest);
    for (let cell = start + 1; cell < start + count; cell++) {
      tables.set(first, cell * general);
      restTables.set(second, cell * rest);
    }
    for (let i = 1, row = 0; i < stream.length; ) {
      row += stream[i];
      const runs = stream[i + 1];
      const word = row >> 5;
      const bit = 1 << (row & 31);
      i += 2;
      let cell = start;
      for (let j = 0; j < runs; j++, i += 2) {
        cell += stream[i];
        for (const end = cell + stream[i + 1]; cell < end; cell++)
          if (word < general) tables[cell * general + word] |= bit;
          else restTables[cell * rest + word - general] |= bit;
      }
    }
    starts.push(start);
    start += count;
  }
  for (const [k, , , , text] of big.sets) {
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
    at: new Int32Array(starts.length + 8),
    cells: new Int32Array(starts.length + 8),
    noneRuledOut: cellCount,
    tables,
    restTables,
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
    sets: big.sets.map(([k, set, from, fromRest]) => ({ k, set, from, fromRest })),
  });
}
/** The rows looked up: of each cell of the key, one after the other, how many rows, and of each its number and its tests. */
function spreadKeyed([k, count, , text]) {
  const stream = Int32Array.from(unpack(text));
  const cells = Array.from({ length: count }, () => []);
  for (let row = 0, i = 1; row < stream[0]; row++) {
    const keys = stream.subarray(i + 1, i + 1 + stream[i]);
    i += 1 + keys.length;
    const end = i + 1 + 3 * stream[i];
    for (const cell of keys) cells[cell].push([row, ...stream.subarray(i, end)]);
    i = end;
  }
  const starts = new Int32Array(count);
  const lines = [0];
  cells.forEach((rows, cell) => {
    starts[cell] = rows.length === 0 ? 0 : lines.length;
    if (rows.length > 0) lines.push(rows.length, ...rows.flat());
  });
  return { k, starts, lines: Int32Array.from(lines), rows: new Int32Array(stream[0]), truths: new Uint8Array(stream[0]) };
}
/** 0 where one of the tests of a row fails, 1 where one is open, 2 where all pass. */
function truthOfKeyed(lines, at) {
  let truth = 2;
  for (let i = at + 1, end = i + 3 * lines[at]; i < end; i += 3) {
    const k = lines[i];
    const cell = C[k];
    if (cell === 0) truth = 1;
    else if (lines[i + 1] === 4 ? ((lines[i + 2] >>> cell) & 1) === 0 : !holds(lines[i + 1], lines[i + 2], sets[k].masks[cell])) return 0;
  }
  return truth;
}
/** Of words, those rows that eight lines of a table do not rule out. */
function andEight(p, from, table, at, i, words) {
  const a = at[i];
  const b = at[i + 1];
  const c = at[i + 2];
  const d = at[i + 3];
  const e = at[i + 4];
  const f = at[i + 5];
  const g = at[i + 6];
  const h = at[i + 7];
  for (let w = 0; w < words; w++)
    p[from + w] &=
      table[a + w] & table[b + w] & table[c + w] & table[d + w] & table[e + w] & table[f + w] & table[g + w] & table[h + w];
}
function andOne(p, from, table, at, words) {
  for (let w = 0; w < words; w++) p[from + w] &= table[at + w];
}
/** Evaluates a decision with many rows: word by word, but rows that are looked up by a wide enum one by one where it is stated. */
function runBig(m, n, q, found) {
  const { big } = m;
  const ready = big.ready ?? spread(m);
  const { facts, starts, at, cells, rows, still, sure, byRank, keyed, general, sets, noneRuledOut } = ready;
  const off = big.answers.length > 0 || big.direct.length > 0 ? exceptions(m, n, q, found) : null;
  const key = keyed === null ? 0 : C[keyed.k];
  const words = key === 0 ? m.words : general;
  const count = facts.length;
  for (let w = 0; w < words; w++) still[w] = rows[w];
  let last = 0;
  for (; last < count; last++) cells[last] = starts[last] + C[facts[last]];
  while ((last & 7) !== 0) cells[last++] = noneRuledOut;
  for (let i = 0; i < last; i++) at[i] = general * cells[i];
  for (let i = 0; i < last; i += 8) andEight(still, 0, ready.tables, at, i, general);
  for (let j = 0; j < sets.length; j++) andOne(still, 0, sets[j].set.b, sets[j].set.line * C[sets[j].k] + sets[j].from, general);
  if (words > general) {
    const rest = words - general;
    for (let i = 0; i < last; i++) at[i] = rest * cells[i];
    for (let i = 0; i < last; i += 8) andEight(still, general, ready.restTables, at, i, rest);
    for (let j = 0; j < sets.length; j++)
      andOne(still, general, sets[j].set.b, sets[j].set.line * C[sets[j].k] + sets[j].fromRest, rest);
  }
  if (off !== null) for (let w = 0; w < words; w++) still[w] &= off[w];
  for (let w = 0; w < general; w++) sure[w] = still[w];
  for (let w = general; w < words; w++) sure[w] = 0;
  if (off !== null) for (let w = 0; w < general; w++) sure[w] &= off[m.words + w];
  for (let j = 0; j < n; j++) andOne(sure, 0, U, lineOfU * M[j] + m.firstWord, general);
  let x = 0;
  let y = 0;
  for (let rank = 0; rank < byRank.length; rank++) {
    const given = byRank[rank];
    if (meets(still, given, words)) x |= 1 << rank;
    if (meets(sure, given, general)) y |= 1 << rank;
  }
  let some = 0;
  if (key !== 0) {
    const { lines, rows: hit, truths } = keyed;
    let place = keyed.starts[key];
    for (let left = lines[place++]; left > 0; left--) {
      const truth = truthOfKeyed(lines, place + 1);
      const row = 32 * general + lines[place];
      place += 2 + 3 * lines[place + 1];
      if (truth === 0) continue;
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
