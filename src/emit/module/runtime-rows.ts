/** The part of the module that evaluates rows: what is shared by the written-out evaluators, and the loop for many rows. */
export const runtimeRows = `
function D(index, id, question, outcomes, otherwise, prefix, names, ranks, ruleOf, reads, words, firstWord, run, big, texts, speaks, lacks, against) {
  const rules = names.map((name) => prefix + name);
  const kind = speaks === undefined ? 'verdict' : 'choice';
  return { index, id, kind, question, outcomes, otherwise, rules, ranks, ruleOf, reads, words, firstWord, run, big, texts, known: undefined, speaks, lacks, against };
}
/** Of rows, those that do not mention a missing fact. */
function surely(rows, n, word) {
  let t = rows;
  for (let i = 0; i < n; i++) t &= U[lineOfU * M[i] + word];
  return t;
}
/** From the ranks of rules that may and that do apply to the possible outcomes: those at or above the highest that does. */
function outcomesOf(may, sure, otherwise) {
  if (sure === 0) return may | otherwise;
  const floor = 31 - Math.clz32(sure);
  return (may >>> floor) << floor;
}
/** Of the still possible answers, the one that the caller stated, if it is among them. */
function told(possible, cell) {
  return cell !== 0 && cell < 32 && ((possible >>> (cell - 1)) & 1) === 1 ? 1 << (cell - 1) : possible;
}
let hits;
/** The words of the last evaluation in which a row may hold: word, rows that may, rows that do. */
function hitsOf(m) {
  if (m.big !== null) return hits;
  const found = [];
  for (let w = 0; w < m.words; w++) {
    const at = 2 * (m.firstWord + w);
    if (E[at] !== 0) found.push(w, E[at], E[at + 1]);
  }
  return found;
}
/** The rules that apply for certain and those that are open, each in order. */
function judged(m, found) {
  const { ruleOf } = m;
  const sure = [];
  const open = [];
  if (m.big !== null) {
    const { may, does } = m.big.ready;
    for (let i = 0; i < found.length; i += 3) {
      const first = found[i] << 5;
      const t = found[i + 2];
      for (let p = found[i + 1]; p !== 0; p &= p - 1) {
        const b = 31 - Math.clz32(p & -p);
        const r = ruleOf[first + b];
        may[r >> 5] |= 1 << (r & 31);
        if ((t >>> b) & 1) does[r >> 5] |= 1 << (r & 31);
      }
    }
    for (let w = 0; w < may.length; w++) {
      if (may[w] === 0) continue;
      const t = does[w];
      for (let p = may[w]; p !== 0; p &= p - 1) {
        const b = 31 - Math.clz32(p & -p);
        ((t >>> b) & 1 ? sure : open).push(w * 32 + b);
      }
      may[w] = does[w] = 0;
    }
    return { sure, open };
  }
  let last = -1;
  let isSure = false;
  for (let i = 0; i < found.length; i += 3) {
    const first = found[i] << 5;
    const t = found[i + 2];
    for (let p = found[i + 1]; p !== 0; p &= p - 1) {
      const b = 31 - Math.clz32(p & -p);
      const r = ruleOf[first + b];
      const does = ((t >>> b) & 1) === 1;
      if (r === last) isSure ||= does;
      else {
        if (last !== -1) (isSure ? sure : open).push(last);
        last = r;
        isSure = does;
      }
    }
  }
  if (last !== -1) (isSure ? sure : open).push(last);
  return { sure, open };
}
/** Open rules count while they could still make a verdict more restrictive. */
function stillOpen(m, sure, open, possible) {
  if (m.kind === 'choice' || sure.length === 0) return open;
  const floor = 31 - Math.clz32(possible & -possible);
  return open.filter((r) => m.ranks[r] > floor);
}
/** The programs that meet all needs, and those that may. */
function choose(m, sure, open) {
  const { lacks, speaks } = m;
  const does = sure.some((r) => speaks[r] === '1');
  const may = does || open.some((r) => speaks[r] === '1');
  return lacks.map((lack) => {
    const isLacking = (r) => lack[r] === '1';
    const surely = !sure.some(isLacking);
    return { meets: does && surely && !open.some(isLacking), mayMeet: may && surely };
  });
}
/** The possible answers of a choice as a bit set: its programs, and none while no program is certain. */
function chosenBits(m) {
  const { sure, open } = judged(m, hitsOf(m));
  let bits = 0;
  let isCertain = false;
  choose(m, sure, open).forEach(({ meets, mayMeet }, j) => {
    if (mayMeet) bits |= 1 << j;
    isCertain ||= meets;
  });
  return isCertain ? bits : bits | (1 << m.lacks.length);
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
/** Spreads the tables of a decision with many rows, when it is first asked. */
function spread(m) {
  const { big, words, ruleOf, ranks, outcomes } = m;
  const { summary } = big;
  const length = summary + words;
  const keep = (k, rows) => {
    const at = k * lineOfU + m.firstWord;
    for (const row of rows) U[at + (row >> 5)] &= ~(1 << (row & 31));
  };
  const facts = [];
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
    const table = new Int32Array(count * length).fill(-1, 0, length);
    for (let cell = 1; cell < count; cell++) table.set(line, cell * length + summary);
    for (let i = 1, row = 0; i < stream.length; ) {
      row += stream[i];
      const runs = stream[i + 1];
      i += 2;
      let cell = 0;
      for (let j = 0; j < runs; j++, i += 2) {
        cell += stream[i];
        for (const end = cell + stream[i + 1]; cell < end; cell++) table[cell * length + summary + (row >> 5)] |= 1 << (row & 31);
      }
    }
    for (let cell = 0; cell < count; cell++) summarize(table, cell * length, summary, words);
    facts.push({ k, set: null, table, length, from: 0, count: rows.length });
  }
  for (const [k, set, from, text] of big.sets) {
    const [count, ...gaps] = unpack(text);
    let row = 0;
    keep(k, gaps.map((gap) => (row += gap)));
    facts.push({ k, set, table: null, length: set.line, from, count });
  }
  facts.sort((a, b) => b.count - a.count || a.k - b.k);
  const rows = new Int32Array(words).fill(-1);
  const left = ruleOf.length & 31;
  if (left !== 0) rows[words - 1] = (1 << left) - 1;
  const byRank = outcomes.map(() => new Int32Array(words));
  if (m.kind === 'verdict') ruleOf.forEach((r, row) => (byRank[ranks[r]][row >> 5] |= 1 << (row & 31)));
  big.ready = {
    facts,
    tables: facts.map(({ table }) => table),
    at: new Int32Array(facts.length),
    rows,
    byRank: m.kind === 'verdict' ? byRank : [],
    may: new Int32Array(Math.ceil(m.rules.length / 32)),
    does: new Int32Array(Math.ceil(m.rules.length / 32)),
  };
  return big.ready;
}
/** Evaluates a decision with many rows: by the summaries to the words in which a row may hold, and of these all facts. */
function runBig(m, n, q, found) {
  const { big, words } = m;
  const { facts, tables, at, rows, byRank } = big.ready ?? spread(m);
  const { summary, answers, direct } = big;
  const count = facts.length;
  for (let i = 0; i < count; i++) {
    const fact = facts[i];
    at[i] = fact.length * C[fact.k] + fact.from;
    if (fact.set !== null) tables[i] = fact.set.b;
  }
  let off = null;
  if (answers.length > 0 || direct.length > 0) off = exceptions(m, n, q, found);
  const hit = [];
  let x = 0;
  let y = 0;
  for (let s = 0; s < summary; s++) {
    let some = -1;
    for (let i = 0; i < count; i++) some &= tables[i][at[i] + s];
    for (; some !== 0; some &= some - 1) {
      const w = 32 * s + 31 - Math.clz32(some & -some);
      if (w >= words) break;
      let p = rows[w];
      for (let i = 0; i < count && p !== 0; i++) p &= tables[i][at[i] + summary + w];
      if (off !== null) p &= off[w];
      if (p === 0) continue;
      let t = p;
      if (off !== null) t &= off[words + w];
      for (let i = 0; i < n; i++) t &= U[lineOfU * M[i] + m.firstWord + w];
      hit.push(w, p, t);
      for (let i = 0; i < byRank.length; i++) {
        const given = byRank[i][w];
        if ((p & given) !== 0) {
          x |= 1 << i;
          if ((t & given) !== 0) y |= 1 << i;
        }
      }
    }
  }
  hits = hit;
  return m.kind === 'verdict' ? outcomesOf(x, y, 1 << m.otherwise) : chosenBits(m);
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
