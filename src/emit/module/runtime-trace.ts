/** The part of the module that traces: each rule with the conditions reached. Nothing of it is touched by an answer. */
export const runtimeTrace = `
const truths = [false, null, true];
function traceTree(x, n, values, reached) {
  if (typeof x === 'number') {
    const t = tests[x];
    const guard = guards.get(t.f);
    let meaningful = 2;
    if (guard !== undefined) {
      meaningful = traceTree(guard, n, values, reached);
      if (meaningful === 0) return 0;
    }
    const truth = truthOfTest(t, n, true);
    const value = t.kind === 3 ? stillNames(t.f, n) : values[t.f];
    reached.push({ fact: ids[t.f], test: t.show(), value, truth: truths[truth] });
    return truth < meaningful ? truth : meaningful;
  }
  const kind = x[0];
  if (kind === 2) return 2 - traceTree(x[1], n, values, reached);
  let truth = kind === 0 ? 2 : 0;
  const end = kind === 0 ? 0 : 2;
  for (let i = 1; i < x.length; i++) {
    const each = traceTree(x[i], n, values, reached);
    if (kind === 0 ? each < truth : each > truth) truth = each;
    if (truth === end) break;
  }
  return truth;
}
function stillNames(k, n) {
  const still = answersOf(k, n, true);
  return metas[inner[k][2]].outcomes.filter((_, i) => (still >>> i) & 1);
}
const traced = [];
/** Each rule of a decision with its conditions as far as they were reached, their values and truths; null is unknown. */
export function trace(decision, given) {
  const m = byId.get(decision) ?? unknownDecision(decision);
  const texts = textsOf(m);
  const { reads, rules } = m;
  const n = read(m, given, scratch);
  for (let i = 0; i < reads.length; i++) traced[reads[i]] = scratch[i] ?? clinic[reads[i]];
  const steps = [];
  for (let r = 0; r < rules.length; r++) {
    const conditions = [];
    const truth = traceTree(texts[r][2], n, traced, conditions);
    steps.push({ rule: rules[r], truth: truths[truth], conditions });
  }
  return { decision: m.id, rules: steps, rulebook: rulebook.digest };
}
`;
