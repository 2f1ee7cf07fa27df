import type { Condition, Rulebook, Test } from '../../src/link/rulebook.js';
import { fromBaseUnit } from '../../src/measure/quantity.js';

/** How the functions are written: plainly, with the facts read into locals first, or with a trace of the conditions reached. */
export type Manner = 'plain' | 'careful' | 'traced';

/** A module as people write it: a function per decision, which tests every rule; a condition about a missing fact is false. */
export function handWritten({ decisions, facts }: Rulebook, manner: Manner): string {
  const unitOf = (fact: string) => facts.get(fact)?.unit;
  const bound = (fact: string, value: number) => {
    const unit = unitOf(fact);
    return unit === undefined ? value : fromBaseUnit(value, unit).value;
  };
  const read = (fact: string) => (manner === 'careful' ? fact : `f.${fact}`);
  const test = (fact: string, each: Test): string => {
    const value = read(fact);
    const literals = (members: readonly (string | boolean)[]) => members.map((member) => JSON.stringify(member));
    switch (each.kind) {
      case 'one-of':
        return wrap(literals(each.members).map((member) => `${value} === ${member}`));
      case 'any-of':
        return `(${value} !== undefined && ${wrap(literals(each.members).map((member) => `${value}.includes(${member})`))})`;
      case 'compare':
        return `${value} ${{ 'at-least': '>=', 'at-most': '<=', above: '>', below: '<' }[each.op]} ${bound(fact, each.value)}`;
      default:
        throw new RangeError(each.kind);
    }
  };
  const expression = (condition: Condition): string => {
    switch (condition.kind) {
      case 'all':
        return `(${condition.of.map(expression).join(' && ')})`;
      case 'any':
        return `(${condition.of.map(expression).join(' || ')})`;
      case 'not':
        return `!(${expression(condition.of)})`;
      case 'test': {
        const tested = test(condition.fact, condition.test);
        if (manner !== 'traced') return tested;
        return `step(c, ${JSON.stringify(condition.fact)}, ${JSON.stringify(shown(condition.test))}, f.${condition.fact}, ${tested})`;
      }
    }
  };
  const functions = [...decisions.values()].map((decision) => {
    if (decision.kind !== 'verdict') throw new RangeError(decision.id);
    const names = decision.rules.flatMap(({ when }) => factNames(when));
    const locals = manner === 'careful' ? [...new Set(names)].map((name) => `  const ${name} = f.${name};`) : [];
    const start = decision.outcomes.indexOf(decision.otherwise);
    const lines = decision.rules.map(({ id, when, outcome = '' }) => {
      const rank = decision.outcomes.indexOf(outcome);
      const then = `reasons.push('${id}'); if (s < ${rank}) s = ${rank};`;
      if (manner !== 'traced') return `  if (${expression(when)}) { ${then} }`;
      return `  { const c = []; const t = ${expression(when)}; rules.push({ rule: '${id}', truth: t, conditions: c }); if (t) { ${then} } }`;
    });
    return [
      `function ${decision.id}(f) {`,
      ...locals,
      `  let s = -1; const reasons = [];${manner === 'traced' ? ' const rules = [];' : ''}`,
      ...lines,
      `  return { outcome: outcomes[s < 0 ? ${start} : s], reasons${manner === 'traced' ? ', rules' : ''} };`,
      '}',
    ].join('\n');
  });
  const ids = [...decisions.keys()];
  return [
    `const outcomes = ${JSON.stringify([...decisions.values()].map((each) => (each.kind === 'verdict' ? each.outcomes : []))[0])};`,
    ...(manner === 'traced'
      ? ['function step(c, fact, test, value, truth) { c.push({ fact, test, value, truth }); return truth; }']
      : []),
    ...functions,
    `export function all(f) { return { ${ids.map((id) => `${id}: ${id}(f)`).join(', ')} }; }`,
    `export { ${ids.join(', ')} };`,
  ].join('\n');
}

function wrap(parts: readonly string[]): string {
  return parts.length === 1 ? (parts[0] ?? '') : `(${parts.join(' || ')})`;
}

function shown(test: Test): string {
  return test.kind === 'compare' ? `${test.op} ${test.value}` : `${test.kind} ${test.members.join(', ')}`;
}

function factNames(condition: Condition): string[] {
  if (condition.kind === 'test') return [condition.fact];
  return condition.kind === 'not' ? factNames(condition.of) : condition.of.flatMap(factNames);
}
