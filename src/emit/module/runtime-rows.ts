/** The part of the module that evaluates rows: what is shared by the written-out evaluators, and the loop for many rows. */
export const runtimeRows = `
function D(index, id, question, outcomes, otherwise, prefix, names, ranks, ruleOf, reads, words, firstWord, run, big, texts, rowCount, tables, speaks, lacks, against) {
  const rules = names.map((name) => prefix + name);
  const kind = speaks === undefined ? 'verdict' : 'choice';
  return { index, id, kind, question, outcomes, otherwise, rules, ranks, ruleOf, reads, words, firstWord, run, big, texts, rowCount, tables, known: undefined, nodes: undefined, speaks, lacks, against };
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
/** The words of the last evaluation in which a row may hold: word, rows that may, rows that do. */
function hitsOf(m) {
  const found = [];
  if (m.big !== null) {
    const { still, sure, words, keyed, some } = m.big.ready;
    for (let w = 0; w < words; w++) if (still[w] !== 0) found.push(w, still[w], sure[w]);
    for (let j = 0; j < some; j++) {
      const row = keyed.rows[j];
      found.push(row >> 5, 1 << (row & 31), keyed.truths[j] === 2 ? 1 << (row & 31) : 0);
    }
    return found;
  }
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
`;
