/** The part of the module that answers many situations at once, from columns. */
export const runtimeBatch = `
const blockSize = 256;
const leastInColumns = 1000;
/** How one column is read: a function that writes the cells of rows from start to end into a block. */
function cellReader(k, column) {
  const decodeOf = decoders[k];
  const decode = (v) => decodeOf(v, k);
  const unstated = decode(undefined);
  if (column === undefined || column === null) return (block, at, start, end) => void block.fill(unstated, at, at + end - start);
  const { type, members } = facts()[k];
  if (type === 'quantity' || type === 'count') {
    // What was found for halves from 0 to 255 is kept: most numbers are such.
    const known = new Uint16Array(512);
    return (block, at, start, end) => {
      for (let i = start; i < end; i++) {
        const v = column[i];
        const twice = v * 2;
        const place = twice | 0;
        let cell;
        if (place !== twice || place < 0 || place > 511 || typeof v !== 'number') cell = decode(v !== v ? undefined : v);
        else {
          cell = known[place];
          if (cell === 0) cell = known[place] = decode(v);
        }
        block[at + i - start] = cell;
      }
    };
  }
  if (!ArrayBuffer.isView(column) || type === 'date')
    return (block, at, start, end) => {
      for (let i = start; i < end; i++) block[at + i - start] = decode(column[i]);
    };
  const none = unstatedOf(column);
  if (type === 'set') {
    const s = sets[k];
    const isNarrow = members.length <= 12;
    let era = -1;
    let known;
    const cellOf = (bits) => {
      if (bits === none) return decode(undefined);
      if (era !== s.era) {
        era = s.era;
        known = isNarrow ? new Uint16Array(1 << members.length) : new Map();
      }
      if (members.length < 32 && bits >>> members.length !== 0) refuse(k);
      const found = isNarrow ? known[bits] : known.get(bits);
      if (found) return found;
      const cell = decode(members.filter((_, place) => (bits >>> place) & 1));
      if (era === s.era) isNarrow ? (known[bits] = cell) : known.set(bits, cell);
      return cell;
    };
    return (block, at, start, end) => {
      for (let i = start; i < end; i++) block[at + i - start] = cellOf(column[i]);
    };
  }
  const cells = new Uint16Array(type === 'boolean' ? 2 : members.length);
  for (let place = 0; place < cells.length; place++) cells[place] = decode(type === 'boolean' ? place === 1 : members[place]);
  return (block, at, start, end) => {
    for (let i = start; i < end; i++) {
      const place = column[i];
      block[at + i - start] = place < cells.length && place >= 0 ? cells[place] : place === none ? unstated : refuse(k);
    }
  };
}
/** In typed arrays of whole numbers: -1 where signed, the largest number where not. */
function unstatedOf(column) {
  if (column instanceof Uint8Array || column instanceof Uint8ClampedArray) return 255;
  if (column instanceof Uint16Array) return 65535;
  return column instanceof Uint32Array ? 4294967295 : -1;
}
/** Answers one decision for many situations. */
export function decideMany(decision, columns, count) {
  const m = byId.get(decision) ?? unknownDecision(decision);
  return manyOf([m], columns, count)[0];
}
/** Answers all decisions for many situations; each column is read once. */
export function decideAllMany(columns, count) {
  const all = manyOf(metas, columns, count);
  return Object.fromEntries(metas.map(({ id }, i) => [id, all[i]]));
}
function eras() {
  let sum = 0;
  for (const k in sets) sum += sets[k].era;
  return sum;
}
function manyOf(asked, columns, count) {
  const reads = Int32Array.from(new Set(asked.flatMap((m) => m.reads))).sort();
  const readers = Array.from(reads, (k) => cellReader(k, hasOwn.call(columns, ids[k]) ? columns[ids[k]] : undefined));
  const results = asked.map((m) => {
    const words = Math.ceil(m.rules.length / 32);
    return {
      decision: m.id,
      names: m.outcomes,
      rules: m.rules,
      words,
      outcomes: m.outcomes.length > 255 ? new Uint16Array(count) : new Uint8Array(count),
      settled: new Uint8Array(count),
      fired: new Uint32Array(count * words),
    };
  });
  const puts = asked.map((m, j) => putterOf(m, results[j]));
  const width = reads.length;
  const groups = groupsOf(reads);
  const block = new Int32Array(width * blockSize);
  const joint = new Int32Array(groups.length * blockSize);
  const placeOfFact = new Map(Array.from(reads, (k, j) => [k, j * blockSize]));
  const inColumns = asked.map((m, j) => (m.tables < 0 || count < leastInColumns ? null : columnsFor(m, results[j], groups, placeOfFact)));
  const inRows = asked.flatMap((_, j) => (inColumns[j] === null ? [j] : []));
  const all = asked.map((_, j) => j);
  const gaps = [];
  for (let start = 0; start < count; start += blockSize) {
    const end = Math.min(count, start + blockSize);
    const before = eras();
    gaps.length = 0;
    for (let j = 0; j < width; j++) {
      readers[j](block, j * blockSize, start, end);
      for (let i = 0, at = j * blockSize; i < end - start; i++, at++) if (block[at] === 0) gaps.push(i, reads[j]);
    }
    // When lines of a set were dropped meanwhile, each row is read right before it is evaluated.
    const isStale = eras() !== before;
    if (!isStale) {
      if (count >= leastInColumns) joinColumns(groups, placeOfFact, block, joint, end - start);
      for (let j = 0; j < asked.length; j++) if (inColumns[j] !== null) evaluateColumns(inColumns[j], block, joint, gaps, start, end - start);
    }
    const left = isStale ? all : inRows;
    if (left.length === 0) continue;
    for (let i = start; i < end; i++) {
      let n = 0;
      for (let j = 0, at = i - start; j < width; j++, at += blockSize) {
        const k = reads[j];
        if (isStale) readers[j](block, at, i, i + 1);
        const cell = block[at];
        C[k] = cell;
        if (cell === 0) M[n++] = k;
      }
      fresh();
      for (const j of left) puts[j](i, asked[j].run(n, true));
    }
  }
  return results;
}
/** Facts in groups whose cells together are few: one look into a table then does for all of them. */
function groupsOf(reads) {
  const groups = [];
  const plain = Array.from(reads).filter((k) => sets[k] === undefined && inner[k] === undefined);
  for (const k of plain.sort((a, b) => counts[b] - counts[a])) {
    const group = groups.find(({ size }) => size * counts[k] <= 256);
    if (group === undefined) groups.push({ facts: [k], size: counts[k] });
    else {
      group.facts.push(k);
      group.size *= counts[k];
    }
  }
  return groups;
}
/** The cells of each group together, as one number. */
function joinColumns(groups, placeOfFact, block, joint, count) {
  groups.forEach(({ facts: [first, ...others] }, g) => {
    const at = g * blockSize;
    const from = placeOfFact.get(first);
    for (let i = 0; i < count; i++) joint[at + i] = block[from + i];
    for (const k of others) addColumn(joint, at, counts[k], block, placeOfFact.get(k), count);
  });
}
function addColumn(joint, at, factor, block, from, count) {
  for (let i = 0; i < count; i++) joint[at + i] = joint[at + i] * factor + block[from + i];
}
/** Of each selection of cells of a group's facts, the rows of one word of a decision that it does not rule out. */
function jointTable({ facts: all, size }, starts, word, line) {
  const table = new Int32Array(size).fill(-1);
  let step = size;
  for (const k of all) {
    step /= counts[k];
    const start = starts.get(k);
    if (start === undefined) continue;
    for (let i = 0; i < size; i++) table[i] &= A[start + word + line * (Math.floor(i / step) % counts[k])];
  }
  return table;
}
const may = new Int32Array(blockSize);
const does = new Int32Array(blockSize);
const ranksMay = new Int32Array(blockSize);
const ranksDo = new Int32Array(blockSize);
/** What evaluating a decision column by column needs: where the cells of its facts are in a block, and their tables. */
function columnsFor(m, result, groups, placeOfFact) {
  const starts = new Map();
  const ofSets = [];
  let table = m.tables;
  for (const k of m.reads) {
    const set = sets[k];
    if (set !== undefined) ofSets.push({ column: placeOfFact.get(k), set, from: set.parts[m.index] });
    else {
      starts.set(k, table);
      table += counts[k] * m.words;
    }
  }
  const own = groups.flatMap(({ facts: of }, g) => (of.some((k) => starts.has(k)) ? [g] : []));
  const words = Array.from({ length: m.words }, (_, word) => {
    const byRank = new Int32Array(m.outcomes.length);
    const fold = new Int32Array(1024);
    const count = Math.min(32, m.rowCount - 32 * word);
    for (let bit = 0; bit < count; bit++) {
      const r = m.ruleOf[32 * word + bit];
      byRank[m.ranks[r]] |= 1 << bit;
      for (let byte = 0; byte < 256; byte++) if ((byte >> (bit & 7)) & 1) fold[256 * (bit >> 3) + byte] |= 1 << r;
    }
    const joints = own.map((g) => ({ at: g * blockSize, table: jointTable(groups[g], starts, word, m.words) }));
    return { word, byRank, fold, joints, rows: count === 32 ? -1 : (1 << count) - 1 };
  });
  return { m, result, words, ofSets };
}
/** Evaluates a block of rows of one decision. */
function evaluateColumns({ m, result, words, ofSets }, block, joint, gaps, start, count) {
  ranksMay.fill(0);
  ranksDo.fill(0);
  for (const { word, byRank, fold, joints, rows } of words) {
    may.fill(rows);
    let j = 0;
    for (; j + 4 <= joints.length; j += 4) andFour(may, joint, joints[j], joints[j + 1], joints[j + 2], joints[j + 3], count);
    for (; j < joints.length; j++) andColumn(may, joint, joints[j].at, joints[j].table, 0, 1, count);
    for (const { column, set, from } of ofSets) andColumn(may, block, column, set.b, from + word, set.line, count);
    for (let i = 0; i < count; i++) does[i] = may[i];
    for (let g = 0; g < gaps.length; g += 2) does[gaps[g]] &= U[lineOfU * gaps[g + 1] + m.firstWord + word];
    for (let rank = 0; rank < byRank.length; rank++) addRank(byRank[rank], 1 << rank, count);
    foldRules(result.fired, fold, start, count);
  }
  const { outcomes, settled } = result;
  const otherwise = 1 << m.otherwise;
  for (let i = 0; i < count; i++) {
    const bits = outcomesOf(ranksMay[i], ranksDo[i], otherwise);
    outcomes[start + i] = 31 - Math.clz32(bits);
    settled[start + i] = (bits & (bits - 1)) === 0 ? 1 : 0;
  }
}
function andFour(p, joint, { at: a, table: s }, { at: b, table: t }, { at: c, table: u }, { at: d, table: v }, count) {
  for (let i = 0; i < count; i++) p[i] &= s[joint[a + i]] & t[joint[b + i]] & u[joint[c + i]] & v[joint[d + i]];
}
function andColumn(p, block, column, table, from, line, count) {
  for (let i = 0; i < count; i++) p[i] &= table[from + line * block[column + i]];
}
function addRank(rows, bit, count) {
  for (let i = 0; i < count; i++) {
    if ((may[i] & rows) !== 0) ranksMay[i] |= bit;
    if ((does[i] & rows) !== 0) ranksDo[i] |= bit;
  }
}
function foldRules(fired, fold, start, count) {
  for (let i = 0; i < count; i++) {
    const t = does[i];
    if (t !== 0) fired[start + i] |= fold[t & 255] | fold[256 + ((t >>> 8) & 255)] | fold[512 + ((t >>> 16) & 255)] | fold[768 + (t >>> 24)];
  }
}
/** Writes what the last evaluation of a decision gave into its result. */
function putterOf(m, { words, fired, outcomes, settled }) {
  if (m.kind === 'choice')
    return (i) => {
      const found = hitsOf(m);
      const { sure, open } = judged(m, found);
      const offered = choose(m, sure, open);
      const best = offered.findIndex(({ meets }) => meets);
      outcomes[i] = best === -1 ? m.lacks.length : best;
      settled[i] = offered.every(({ meets, mayMeet }) => meets === mayMeet) ? 1 : 0;
      for (let h = 0; h < found.length; h += 3) fire(m, fired, i * words, found[h], found[h + 2]);
    };
  return (i, bits) => {
    outcomes[i] = 31 - Math.clz32(bits);
    settled[i] = (bits & (bits - 1)) === 0 ? 1 : 0;
    const found = hitsOf(m);
    for (let h = 0; h < found.length; h += 3) fire(m, fired, i * words, found[h], found[h + 2]);
  };
}
function fire({ ruleOf }, fired, at, word, rows) {
  for (let t = rows; t !== 0; t &= t - 1) {
    const r = ruleOf[32 * word + 31 - Math.clz32(t & -t)];
    fired[at + (r >> 5)] |= 1 << (r & 31);
  }
}
`;
