/** The part of the module that answers many situations at once, from columns. */
export const runtimeBatch = `
const blockSize = 256;
/** How one column is read: a function that gives the cell of a row. */
function cellReader(k, column) {
  const decodeOf = decoders[k];
  const decode = (v) => decodeOf(v, k);
  if (column === undefined || column === null) {
    const cell = decode(undefined);
    return () => cell;
  }
  const { type, members } = facts()[k];
  const isTyped = ArrayBuffer.isView(column);
  if (type === 'quantity' || type === 'count') {
    // What was found for halves from 0 to 255 is kept: most numbers are such.
    const known = new Uint16Array(512);
    return (i) => {
      const v = column[i];
      const twice = v * 2;
      const place = twice | 0;
      if (place !== twice || place < 0 || place > 511 || typeof v !== 'number') return decode(v !== v ? undefined : v);
      return known[place] !== 0 ? known[place] : (known[place] = decode(v));
    };
  }
  if (!isTyped || type === 'date') return (i) => decode(column[i]);
  const none = unstatedOf(column);
  const unstated = decode(undefined);
  if (type === 'set') {
    const s = sets[k];
    let era = -1;
    let known = null;
    return (i) => {
      const bits = column[i];
      if (bits === none) return unstated === 0 ? 0 : decode(undefined);
      if (era !== s.era) {
        era = s.era;
        known = new Map();
      }
      const found = known.get(bits);
      if (found !== undefined) return found;
      if (members.length < 32 && bits >>> members.length !== 0) refuse(k);
      const cell = decode(members.filter((_, place) => (bits >>> place) & 1));
      if (era === s.era) known.set(bits, cell);
      return cell;
    };
  }
  const cells = new Uint16Array(type === 'boolean' ? 2 : members.length);
  for (let place = 0; place < cells.length; place++) cells[place] = decode(type === 'boolean' ? place === 1 : members[place]);
  return (i) => {
    const place = column[i];
    return place < cells.length && place >= 0 ? cells[place] : place === none ? unstated : refuse(k);
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
  const block = new Int32Array(width * blockSize);
  for (let start = 0; start < count; start += blockSize) {
    const end = Math.min(count, start + blockSize);
    const before = eras();
    for (let j = 0; j < width; j++) readColumn(readers[j], start, end, block, j, width);
    // When lines of a set were dropped meanwhile, each row is read right before it is evaluated.
    const isStale = eras() !== before;
    for (let i = start; i < end; i++) {
      let n = 0;
      const at = (i - start) * width;
      for (let j = 0; j < width; j++) {
        const k = reads[j];
        const cell = isStale ? readers[j](i) : block[at + j];
        C[k] = cell;
        if (cell === 0) M[n++] = k;
      }
      fresh();
      for (let j = 0; j < asked.length; j++) puts[j](i, asked[j].run(n, true));
    }
  }
  return results;
}
function readColumn(reader, start, end, block, j, width) {
  for (let i = start, at = j; i < end; i++, at += width) block[at] = reader(i);
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
  if (m.big !== null || m.words !== 1 || words !== 1)
    return (i, bits) => {
      outcomes[i] = 31 - Math.clz32(bits);
      settled[i] = (bits & (bits - 1)) === 0 ? 1 : 0;
      const found = hitsOf(m);
      for (let h = 0; h < found.length; h += 3) fire(m, fired, i * words, found[h], found[h + 2]);
    };
  // One word of rows: by each of its four bytes, the rules.
  const rulesOf = new Int32Array(1024);
  for (let row = 0; row < m.ruleOf.length && row < 32; row++)
    for (let byte = 0; byte < 256; byte++)
      if ((byte >> (row & 7)) & 1) rulesOf[256 * (row >> 3) + byte] |= 1 << m.ruleOf[row];
  const at = 2 * m.firstWord + 1;
  return (i, bits) => {
    outcomes[i] = 31 - Math.clz32(bits);
    settled[i] = (bits & (bits - 1)) === 0 ? 1 : 0;
    const t = E[at];
    fired[i] = rulesOf[t & 255] | rulesOf[256 + ((t >>> 8) & 255)] | rulesOf[512 + ((t >>> 16) & 255)] | rulesOf[768 + (t >>> 24)];
  };
}
function fire({ ruleOf }, fired, at, word, rows) {
  for (let t = rows; t !== 0; t &= t - 1) {
    const r = ruleOf[32 * word + 31 - Math.clz32(t & -t)];
    fired[at + (r >> 5)] |= 1 << (r & 31);
  }
}
`;
