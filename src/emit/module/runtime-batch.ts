/** The part of the module that answers many situations at once, from columns. */
export const runtimeBatch = `
/** How one column is read: a function from a row to a cell. Typed arrays of whole numbers hold places of members, or bit masks of sets. */
function cellReader(k, column) {
  const decodeOf = decoders[k];
  const decode = (v) => decodeOf(v, k);
  if (column === undefined || column === null) {
    const cell = decode(undefined);
    return () => cell;
  }
  if (Array.isArray(column) || column instanceof Float64Array || column instanceof Float32Array) {
    const { type } = facts()[k];
    if (type !== 'quantity' && type !== 'count') return (i) => decode(column[i]);
    return (i) => {
      const v = column[i];
      return decode(v !== v ? undefined : v);
    };
  }
  const { type, members } = facts()[k];
  const none = unstatedOf(column);
  if (type === 'quantity' || type === 'count') return (i) => decode(column[i]);
  if (type === 'set') {
    const s = sets[k];
    const known = new Map();
    return (i) => {
      const bits = column[i];
      if (bits === none) return decode(undefined);
      let v = known.get(bits);
      if (v === undefined) {
        v = members.filter((_, place) => (bits >>> place) & 1);
        if (members.length < 32 && bits >>> members.length !== 0) refuse(k);
        known.set(bits, v);
      }
      return decode(v);
    };
  }
  if (type === 'date') return (i) => decode(column[i]);
  const cells = new Uint16Array(type === 'boolean' ? 2 : members.length);
  for (let place = 0; place < cells.length; place++) cells[place] = decode(type === 'boolean' ? place === 1 : members[place]);
  const unstated = decode(undefined);
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
function manyOf(asked, columns, count) {
  const reads = [...new Set(asked.flatMap((m) => m.reads))].sort((a, b) => a - b);
  const readers = reads.map((k) => cellReader(k, hasOwn.call(columns, ids[k]) ? columns[ids[k]] : undefined));
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
  for (let i = 0; i < count; i++) {
    let n = 0;
    for (let j = 0; j < reads.length; j++) {
      const k = reads[j];
      if ((C[k] = readers[j](i)) === 0) M[n++] = k;
    }
    fresh();
    for (let j = 0; j < asked.length; j++) put(asked[j], results[j], i, asked[j].run(n, true));
  }
  return results;
}
function put(m, result, i, bits) {
  const { words, fired } = result;
  if (m.kind === 'verdict') {
    result.outcomes[i] = 31 - Math.clz32(bits);
    result.settled[i] = (bits & (bits - 1)) === 0 ? 1 : 0;
  } else {
    const { sure, open } = judged(m, hitsOf(m));
    const offered = choose(m, sure, open);
    const best = offered.findIndex(({ meets }) => meets);
    result.outcomes[i] = best === -1 ? m.lacks.length : best;
    result.settled[i] = offered.every(({ meets, mayMeet }) => meets === mayMeet) ? 1 : 0;
  }
  if (m.big !== null) {
    const hits = hitsOf(m);
    for (let h = 0; h < hits.length; h += 3) fire(m, fired, i * words, hits[h], hits[h + 2]);
    return;
  }
  for (let w = 0; w < m.words; w++) fire(m, fired, i * words, w, E[2 * (m.firstWord + w) + 1]);
}
function fire({ ruleOf }, fired, at, word, rows) {
  for (let t = rows; t !== 0; t &= t - 1) {
    const r = ruleOf[32 * word + 31 - Math.clz32(t & -t)];
    fired[at + (r >> 5)] |= 1 << (r & 31);
  }
}
`;
