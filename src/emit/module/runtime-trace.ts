/** The part of the module that traces: each rule with the conditions reached. Nothing of it is touched by an answer. */
export const runtimeTrace = `
const truths = [false, null, true];
/** A tree as nodes: kind 3 is a test. */
function nodeOf(x) {
  if (typeof x === 'number') return { kind: 3, test: tests[x], of: nothing, guard: tests[x].guard === undefined ? null : nodeOf(tests[x].guard) };
  return { kind: x[0], test: null, of: x.slice(1).map(nodeOf), guard: null };
}
function traceNode(node, n, reached) {
  const { kind, of } = node;
  if (kind === 3) {
    let meaningful = 2;
    if (node.guard !== null) {
      meaningful = traceNode(node.guard, n, reached);
      if (meaningful === 0) return 0;
    }
    const t = node.test;
    const c = C[t.f];
    const truth = t.kind === 0 ? (c === 0 ? 1 : (t.a >>> c) & 1 ? 2 : 0) : truthOfTest(t, n, true);
    const value = t.kind === 3 ? stillNames(t.f, n) : (V[t.f] ?? clinic[t.f]);
    reached.push({ fact: t.id, test: t.shown ?? t.show(), value, truth: truth === 2 ? true : truth === 0 ? false : null });
    return truth < meaningful ? truth : meaningful;
  }
  if (kind === 2) return 2 - traceNode(of[0], n, reached);
  const end = kind === 0 ? 0 : 2;
  let truth = 2 - end;
  for (let i = 0; i < of.length && truth !== end; i++) {
    const each = traceNode(of[i], n, reached);
    if (kind === 0 ? each < truth : each > truth) truth = each;
  }
  return truth;
}
function stillNames(k, n) {
  const still = answersOf(k, n, true);
  return metas[inner[k][2]].outcomes.filter((_, i) => (still >>> i) & 1);
}
/** Each rule of a decision with its conditions as far as they were reached, their values and truths; null is unknown. */
export function trace(decision, given) {
  const m = byId.get(decision) ?? unknownDecision(decision);
  const nodes = (m.nodes ??= textsOf(m).map((text) => nodeOf(text[2])));
  const { rules } = m;
  const n = read(m, given);
  const steps = [];
  for (let r = 0; r < rules.length; r++) {
    const conditions = [];
    const truth = traceNode(nodes[r], n, conditions);
    steps.push({ rule: rules[r], truth: truths[truth], conditions });
  }
  return { decision: m.id, rules: steps, rulebook: rulebook.digest };
}
`;
