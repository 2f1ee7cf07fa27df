/** The part of the module that answers: conditions as trees, what is still needed, and the answer whose parts are worked out when read. */
export const runtimeAnswer = `
let tests;
let guards;
let sources;
function load() {
  const [all, ofFacts, cited] = JSON.parse(testTexts());
  tests = all.map(([f, passing, asking, bound, limit]) => {
    const kind = sets[f] !== undefined ? 2 : inner[f] !== undefined ? 3 : Array.isArray(passing) ? 1 : 0;
    const test = { f, kind, a: kind === 1 ? new Set(passing) : passing, op: asking < 3 ? asking : 0, id: ids[f], guard: undefined, shown: undefined, show: null };
    test.show = () => (test.shown = shownTest(test, asking, bound, limit));
    return test;
  });
  guards = new Map(ofFacts);
  for (const test of tests) test.guard = guards.get(test.f);
  sources = cited;
}
/** What a test asks for, as people would see it. */
function shownTest({ f, kind, a, op }, asking, bound, limit) {
  const { type, unit, members } = facts()[f];
  const is = askings[asking];
  if (asking > 3) return Object.freeze({ is, value: bound, ...(unit && { unit }), ...(limit && { limit }) });
  const isNone = is === 'none-of';
  const passes = (member) => {
    if (kind === 2) return holds(0, a, sets[f].masks[decoders[f]([member], f)]);
    const cell = decoders[f](member, f);
    return (kind === 3 ? ((a >>> (cell - 1)) & 1) === 1 : kind === 0 ? ((a >>> cell) & 1) === 1 : a.has(cell)) !== isNone;
  };
  return Object.freeze({ is, members: (type === 'boolean' ? [true, false] : members).filter(passes) });
}
function textsOf(m) {
  if (tests === undefined) load();
  return (m.known ??= JSON.parse(m.texts()));
}
function answersOf(k, n, q) {
  const [still, clinic] = inner[k];
  return told(still(n), q ? C[k] : clinic);
}
/** 0 false, 1 unknown, 2 true: of one test without the only-when of its fact. */
function truthOfTest(t, n, q) {
  const c = C[t.f];
  if (t.kind === 3) {
    const still = answersOf(t.f, n, q);
    return (still & ~t.a) === 0 ? 2 : (still & t.a) === 0 ? 0 : 1;
  }
  if (c === 0) return 1;
  if (t.kind === 0) return (t.a >>> c) & 1 ? 2 : 0;
  if (t.kind === 1) return t.a.has(c) ? 2 : 0;
  return holds(t.op, t.a, sets[t.f].masks[c]) ? 2 : 0;
}
/** Of a tree: a number is a test; [0, ...] all, [1, ...] any, [2, tree] not. */
function truthOfTree(x, n, q) {
  if (typeof x === 'number') {
    const t = tests[x];
    const meaningful = t.guard === undefined ? 2 : truthOfTree(t.guard, n, q);
    return meaningful === 0 ? 0 : Math.min(meaningful, truthOfTest(t, n, q));
  }
  if (x[0] === 2) return 2 - truthOfTree(x[1], n, q);
  let truth = x[0] === 0 ? 2 : 0;
  for (let i = 1; i < x.length; i++) {
    const each = truthOfTree(x[i], n, q);
    if (x[0] === 0 ? each < truth : each > truth) truth = each;
  }
  return truth;
}
function truthOfRule(m, rule, n, q) {
  return truthOfTree(textsOf(m)[rule][2], n, q);
}
/** Adds the facts that a tree looks at, each after those that its only-when looks at. */
function looksOf(x, found) {
  if (typeof x === 'number') {
    const { f, guard } = tests[x];
    if (guard !== undefined) looksOf(guard, found);
    found.add(f);
  } else for (let i = 1; i < x.length; i++) looksOf(x[i], found);
  return found;
}
/** Adds the missing facts that leave a tree open. */
function addMissing(x, n, found) {
  if (truthOfTree(x, n, true) !== 1) return;
  if (typeof x === 'number') {
    const { f, guard } = tests[x];
    if (guard !== undefined) addMissing(guard, n, found);
    if (C[f] === 0) found.add(f);
  } else for (let i = 1; i < x.length; i++) addMissing(x[i], n, found);
}
/** An answer cannot be asked of a person: what its decision still needs is asked instead. */
function askable(found, n) {
  const asked = new Set();
  for (const f of found) {
    if (inner[f] === undefined) {
      asked.add(f);
      continue;
    }
    const further = new Set();
    for (const text of textsOf(metas[inner[f][2]])) addMissing(text[2], n, further);
    for (const each of askable(further, n)) asked.add(each);
  }
  return asked;
}
function unique(lists) {
  return [...new Set(lists.flat())];
}
/** The answer to one question about one situation. Parts are worked out when they are read; toJSON gives all of them. */
class Answer {
  #m;
  #values;
  #bits;
  #found;
  #judged;
  #offers;
  #reasons;
  #needed;
  constructor(m, values, bits, found) {
    this.#m = m;
    this.#values = values;
    this.#bits = bits;
    this.#found = found;
  }
  #rules() {
    if (this.#judged === undefined) {
      const m = this.#m;
      const { sure, open } = judged(m, this.#found);
      const counting = stillOpen(m, sure, open, this.#bits);
      this.#judged = { sure, open, counting, offered: m.kind === 'choice' ? choose(m, sure, open) : [] };
    }
    return this.#judged;
  }
  #counting() {
    const { sure, counting } = this.#rules();
    return this.settled ? sure : [...sure, ...counting];
  }
  get decision() {
    return this.#m.id;
  }
  get outcome() {
    const m = this.#m;
    if (m.kind === 'verdict') return m.outcomes[31 - Math.clz32(this.#bits)];
    const best = this.#rules().offered.findIndex(({ meets }) => meets);
    return best === -1 ? 'none' : m.outcomes[best];
  }
  get possible() {
    const m = this.#m;
    if (m.kind === 'verdict') return m.outcomes.filter((_, rank) => (this.#bits >>> rank) & 1);
    const { offered } = this.#rules();
    const may = m.outcomes.filter((_, j) => j < offered.length && offered[j].mayMeet);
    return offered.some(({ meets }) => meets) ? may : [...may, 'none'];
  }
  get settled() {
    if (this.#m.kind === 'verdict') return (this.#bits & (this.#bits - 1)) === 0;
    return this.#rules().offered.every(({ meets, mayMeet }) => meets === mayMeet);
  }
  get reasons() {
    return (this.#reasons ??= this.#giveReasons());
  }
  #giveReasons() {
    const m = this.#m;
    const counting = this.#counting();
    if (counting.length === 0 && m.kind === 'verdict')
      return [{ outcome: m.outcomes[m.otherwise], because: 'No rule speaks about this.', certain: true, facts: {} }];
    const texts = textsOf(m);
    const { sure } = this.#rules();
    return counting.map((r, i) => {
      const [because, source, tree] = texts[r];
      return {
        rule: m.rules[r],
        ...(m.kind === 'verdict' && { outcome: m.outcomes[m.ranks[r]] }),
        because,
        certain: i < sure.length,
        facts: Object.fromEntries([...looksOf(tree, new Set())].flatMap((k) => this.#stated(k))),
        source: sources[source],
      };
    });
  }
  #stated(k) {
    const v = this.#values[this.#m.reads.indexOf(k)] ?? clinic[k];
    if (v === undefined) return [];
    return [[ids[k], Array.isArray(v) && v !== clinic[k] ? [...new Set(v)].sort() : v]];
  }
  get needed() {
    return (this.#needed ??= this.settled ? [] : this.#findNeeded());
  }
  #findNeeded() {
    const texts = textsOf(this.#m);
    const { counting } = this.#rules();
    const n = readAgain(this.#m, this.#values);
    const waiting = new Map();
    for (const r of counting) {
      const found = new Set();
      addMissing(texts[r][2], n, found);
      for (const each of askable(found, n)) waiting.set(each, (waiting.get(each) ?? 0) + 1);
    }
    return [...waiting].sort(([, a], [, b]) => b - a).map(([k]) => ids[k]);
  }
  get instead() {
    const m = this.#m;
    const texts = textsOf(m);
    const winning = m.kind === 'verdict' ? m.outcomes.indexOf(this.outcome) : -1;
    const counting = this.#counting().filter((r) => m.kind === 'choice' || m.ranks[r] === winning);
    return unique(counting.map((r) => texts[r][4] ?? []));
  }
  get cautions() {
    const texts = textsOf(this.#m);
    return unique(this.#counting().map((r) => texts[r][3] ?? []));
  }
  get offers() {
    return this.#m.kind === 'choice' ? (this.#offers ??= this.#makeOffers()) : undefined;
  }
  #makeOffers() {
    const m = this.#m;
    const against = m.against();
    const { sure, open, offered } = this.#rules();
    const offers = offered.map(({ meets, mayMeet }, j) => ({
      program: m.outcomes[j],
      meets,
      mayMeet,
      lacks: [...sure, ...open].flatMap((r) => (m.lacks[j][r] === '1' ? [{ rule: m.rules[r], facts: against[j][r] }] : [])),
    }));
    return offers.sort((a, b) => Number(b.meets) - Number(a.meets) || Number(b.mayMeet) - Number(a.mayMeet));
  }
  get rulebook() {
    return rulebook.digest;
  }
  toJSON() {
    const { decision, outcome, possible, settled, reasons, instead, cautions, needed, offers } = this;
    return {
      decision,
      outcome,
      possible,
      settled,
      reasons,
      instead,
      cautions,
      needed,
      ...(offers !== undefined && { offers }),
      rulebook: rulebook.digest,
    };
  }
}
/** Answers one decision for one situation. */
export function decide(decision, given) {
  const m = byId.get(decision) ?? unknownDecision(decision);
  const n = read(m, given);
  const values = m.reads.map((k) => V[k]);
  const bits = m.run(n, true);
  return new Answer(m, values, bits, hitsOf(m));
}
function outcomeAfter(m, bits) {
  if (m.kind === 'verdict') return 31 - Math.clz32(bits);
  const { sure, open } = judged(m, hitsOf(m));
  const best = choose(m, sure, open).findIndex(({ meets }) => meets);
  return best === -1 ? m.lacks.length : best;
}
/** Only the outcome of one decision. */
export function outcomeOf(decision, given) {
  const m = byId.get(decision) ?? unknownDecision(decision);
  const n = read(m, given);
  return m.outcomes[outcomeAfter(m, m.run(n, true))];
}
const nothing = Object.freeze([]);
/** An answer in short: the outcome, the rules that apply, and those that may while facts are missing. */
function brief(m, bits, found) {
  if (m.kind === 'verdict' && found.length === 3 && found[1] === found[2])
    return { outcome: m.outcomes[31 - Math.clz32(bits)], settled: true, rules: named(m, found[0] << 5, found[1]), open: nothing };
  const { sure, open } = judged(m, found);
  const name = (r) => m.rules[r];
  if (m.kind === 'choice') {
    const offered = choose(m, sure, open);
    const best = offered.findIndex(({ meets }) => meets);
    const settled = offered.every(({ meets, mayMeet }) => meets === mayMeet);
    return {
      outcome: best === -1 ? 'none' : m.outcomes[best],
      settled,
      rules: sure.map(name),
      open: settled || open.length === 0 ? nothing : open.map(name),
    };
  }
  const settled = (bits & (bits - 1)) === 0;
  return {
    outcome: m.outcomes[31 - Math.clz32(bits)],
    settled,
    rules: sure.map(name),
    open: settled || open.length === 0 ? nothing : stillOpen(m, sure, open, bits).map(name),
  };
}
/** As brief, of a verdict with many rows. */
function briefOfBig(m, bits) {
  const settled = (bits & (bits - 1)) === 0;
  const outcome = m.outcomes[31 - Math.clz32(bits)];
  const rules = sureOf(m);
  return { outcome, settled, rules, open: settled ? nothing : openOf(m, bits) };
}
/** As brief, of a decision with one word of rows. */
function briefOfWord(m, bits, p, t) {
  const outcome = m.outcomes[31 - Math.clz32(bits)];
  if (p === t) return { outcome, settled: true, rules: t === 0 ? nothing : named(m, 0, t), open: nothing };
  const settled = (bits & (bits - 1)) === 0;
  return { outcome, settled, rules: t === 0 ? nothing : named(m, 0, t), open: settled ? nothing : openOfWord(m, bits, p, t) };
}
function openOfWord(m, bits, p, t) {
  const { rules, ruleOf, ranks } = m;
  const floor = t === 0 ? -1 : 31 - Math.clz32(bits & -bits);
  const names = [];
  let last = -1;
  for (let rest = p & ~t; rest !== 0; rest &= rest - 1) {
    const r = ruleOf[31 - Math.clz32(rest & -rest)];
    if (r !== last && ranks[r] > floor && !hasRow(ruleOf, t, r)) names.push(rules[r]);
    last = r;
  }
  return names;
}
function hasRow(ruleOf, rows, rule) {
  for (let t = rows; t !== 0; t &= t - 1) if (ruleOf[31 - Math.clz32(t & -t)] === rule) return true;
  return false;
}
function named(m, first, bits) {
  const { rules, ruleOf } = m;
  const names = [];
  let last = -1;
  for (let t = bits; t !== 0; t &= t - 1) {
    const r = ruleOf[first + 31 - Math.clz32(t & -t)];
    if (r !== last) {
      names.push(rules[r]);
      last = r;
    }
  }
  return names;
}
`;
