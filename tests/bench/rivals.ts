import { createRequire } from 'node:module';
import type { Condition, Rulebook, Test } from '../../src/link/rulebook.js';
import { fromBaseUnit } from '../../src/measure/quantity.js';
import type { Subject } from './measure.js';
import type { Facts } from './workload.js';

const require = createRequire(import.meta.url);

/** An engine given the same rules: counts the rules of all decisions that apply, as far as its own language goes. */
export interface Rival extends Subject {
  /** The ids of the rules that apply. */
  fired(facts: Facts): string[] | Promise<string[]>;
}

interface Ruled {
  id: string;
  when: Condition;
}

/** Rules by decision, with bounds in the units of the facts. */
function rulesOf({ decisions, facts }: Rulebook): Ruled[][] {
  const inUnit = (condition: Condition): Condition => {
    if (condition.kind === 'not') return { ...condition, of: inUnit(condition.of) };
    if (condition.kind !== 'test') return { ...condition, of: condition.of.map(inUnit) };
    const unit = facts.get(condition.fact)?.unit;
    const { test } = condition;
    if (test.kind !== 'compare' || unit === undefined) return condition;
    return { ...condition, test: { ...test, value: fromBaseUnit(test.value, unit).value } };
  };
  return [...decisions.values()].map(({ rules }) => rules.map(({ id, when }) => ({ id, when: inUnit(when) })));
}

const signs = { 'at-least': '>=', 'at-most': '<=', above: '>', below: '<' } as const;

/** The engines, each with inputs for one turn that take about as long. */
export function rivals(rulebook: Rulebook, situations: readonly Facts[]): Rival[] {
  const decisions = rulesOf(rulebook);
  return [
    jsonLogicEngine(decisions, situations),
    jsonLogicJs(decisions, situations),
    zenEngine(decisions, situations),
    cedar(decisions, situations),
  ];
}

function toJsonLogic(condition: Condition): unknown {
  switch (condition.kind) {
    case 'all':
      return { and: condition.of.map(toJsonLogic) };
    case 'any':
      return { or: condition.of.map(toJsonLogic) };
    case 'not':
      return { '!': [toJsonLogic(condition.of)] };
    case 'test': {
      const value = { var: condition.fact };
      const { test } = condition;
      if (test.kind === 'compare') {
        const compared = { [signs[test.op]]: [value, test.value] };
        // Nothing is less than any number in this language.
        return test.op === 'below' || test.op === 'at-most' ? { and: [{ '!==': [value, null] }, compared] } : compared;
      }
      if (test.kind === 'any-of') return { some: [value, { in: [{ var: '' }, test.members] }] };
      return test.members.length === 1 ? { '===': [value, test.members[0]] } : { in: [value, test.members] };
    }
  }
}

function jsonLogicEngine(decisions: readonly Ruled[][], situations: readonly Facts[]): Rival {
  const { LogicEngine } = require('json-logic-engine') as {
    LogicEngine: new () => { build(logic: unknown): (data: unknown) => unknown };
  };
  const engine = new LogicEngine();
  const built = decisions.flat().map(({ id, when }) => ({ id, run: engine.build(toJsonLogic(when)) }));
  const fired = (facts: Facts) => {
    const ids: string[] = [];
    for (const { id, run } of built) if (run(facts) === true) ids.push(id);
    return ids;
  };
  return { name: 'json-logic-engine, compiled', fired, count: 2000, run: counting(fired, situations) };
}

function jsonLogicJs(decisions: readonly Ruled[][], situations: readonly Facts[]): Rival {
  const jsonLogic = require('json-logic-js') as { apply(logic: unknown, data: unknown): unknown };
  const rules = decisions.flat().map(({ id, when }) => ({ id, logic: toJsonLogic(when) }));
  const fired = (facts: Facts) => {
    const ids: string[] = [];
    for (const { id, logic } of rules) if (jsonLogic.apply(logic, facts) === true) ids.push(id);
    return ids;
  };
  return { name: 'json-logic-js', fired, count: 300, run: counting(fired, situations) };
}

function counting(fired: (facts: Facts) => string[], situations: readonly Facts[]): Subject['run'] {
  return (start, count) => {
    let sum = 0;
    for (let index = start; index < start + count; index += 1) sum += fired(situations[index] ?? {}).length;
    return sum;
  };
}

function countingAsync(fired: (facts: Facts) => Promise<string[]>, situations: readonly Facts[]): Subject['run'] {
  return async (start, count) => {
    let sum = 0;
    for (let index = start; index < start + count; index += 1) sum += (await fired(situations[index] ?? {})).length;
    return sum;
  };
}

function zenEngine(decisions: readonly Ruled[][], situations: readonly Facts[]): Rival {
  const { ZenEngine } = require('@gorules/zen-engine') as {
    ZenEngine: new () => { createDecision(content: object): { evaluate(context: unknown): Promise<{ result: unknown }> } };
  };
  const expression = (condition: Condition): string => {
    switch (condition.kind) {
      case 'all':
        return `(${condition.of.map(expression).join(' and ')})`;
      case 'any':
        return `(${condition.of.map(expression).join(' or ')})`;
      case 'not':
        return `not (${expression(condition.of)})`;
      case 'test': {
        const { fact, test } = condition;
        if (test.kind === 'compare') return `(${fact} != null and ${fact} ${signs[test.op]} ${test.value})`;
        const list = `[${test.members.map((member) => (typeof member === 'string' ? `'${member}'` : String(member))).join(', ')}]`;
        if (test.kind === 'any-of') return `(${fact} != null and some(${fact}, # in ${list}))`;
        return test.members.length === 1 ? `${fact} == ${list.slice(1, -1)}` : `${fact} in ${list}`;
      }
    }
  };
  const engine = new ZenEngine();
  const tables = decisions.map((rules) =>
    engine.createDecision({
      nodes: [
        { id: 'in', type: 'inputNode', name: 'in', position: { x: 0, y: 0 } },
        {
          id: 'table',
          type: 'decisionTableNode',
          name: 'table',
          position: { x: 0, y: 0 },
          content: {
            hitPolicy: 'collect',
            inputs: [{ id: 'i', name: 'when' }],
            outputs: [{ id: 'o', name: 'rule', field: 'rule' }],
            rules: rules.map(({ id, when }) => ({ _id: id, i: expression(when), o: `'${id}'` })),
          },
        },
        { id: 'out', type: 'outputNode', name: 'out', position: { x: 0, y: 0 } },
      ],
      edges: [
        { id: 'a', sourceId: 'in', targetId: 'table', type: 'edge' },
        { id: 'b', sourceId: 'table', targetId: 'out', type: 'edge' },
      ],
    }),
  );
  const fired = async (facts: Facts) => {
    const ids: string[] = [];
    for (const table of tables) {
      const { result } = await table.evaluate(facts);
      for (const { rule } of result as { rule: string }[]) ids.push(rule);
    }
    return ids;
  };
  return { name: '@gorules/zen-engine, one by one', fired, count: 40, run: countingAsync(fired, situations) };
}

function cedar(decisions: readonly Ruled[][], situations: readonly Facts[]): Rival {
  const wasm = require('@cedar-policy/cedar-wasm/nodejs') as {
    preparsePolicySet(id: string, policies: { staticPolicies: Record<string, string> }): { type: string };
    statefulIsAuthorized(call: object): { type: string; response: { diagnostics: { reason: string[] } } };
  };
  // There are only whole numbers: all are counted in halves.
  const expression = (condition: Condition): string => {
    switch (condition.kind) {
      case 'all':
        return `(${condition.of.map(expression).join(' && ')})`;
      case 'any':
        return `(${condition.of.map(expression).join(' || ')})`;
      case 'not':
        return `!(${expression(condition.of)})`;
      case 'test':
        return `(context has ${condition.fact} && ${testOf(`context.${condition.fact}`, condition.test)})`;
    }
  };
  const testOf = (value: string, test: Test): string => {
    if (test.kind === 'compare') return `${value} ${signs[test.op]} ${2 * test.value}`;
    const list = `[${test.members.map((member) => JSON.stringify(member)).join(', ')}]`;
    if (test.kind === 'any-of') return `${value}.containsAny(${list})`;
    return test.members.length === 1 ? `${value} == ${list.slice(1, -1)}` : `${list}.contains(${value})`;
  };
  decisions.forEach((rules, index) => {
    const staticPolicies = Object.fromEntries(
      rules.map(({ id, when }) => [id, `forbid(principal, action, resource) when { ${expression(when)} };`]),
    );
    const parsed = wasm.preparsePolicySet(`d${index}`, { staticPolicies });
    if (parsed.type !== 'success') throw new Error(`cedar: ${JSON.stringify(parsed).slice(0, 500)}`);
  });
  const contexts = new Map(situations.map((facts) => [facts, inHalves(facts)]));
  const fired = (facts: Facts) => {
    const context = contexts.get(facts);
    const ids: string[] = [];
    for (let index = 0; index < decisions.length; index += 1) {
      const answer = wasm.statefulIsAuthorized({
        principal: { type: 'User', id: 'a' },
        action: { type: 'Action', id: 'a' },
        resource: { type: 'Thing', id: 'a' },
        context,
        preparsedPolicySetId: `d${index}`,
        validateRequest: false,
        entities: [],
      });
      ids.push(...answer.response.diagnostics.reason);
    }
    return ids;
  };
  return { name: '@cedar-policy/cedar-wasm, preparsed', fired, count: 40, run: counting(fired, situations) };
}

function inHalves(facts: Facts): Facts {
  const halves: Facts = {};
  for (const [id, value] of Object.entries(facts)) halves[id] = typeof value === 'number' ? 2 * value : value;
  return halves;
}
