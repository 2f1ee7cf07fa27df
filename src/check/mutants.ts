import type { Choice, Comparison, Condition, Decision, Rule } from '../link/rulebook.js';

/** A decision with one deliberate mistake in one rule. */
export interface Mutant {
  rule: Rule;
  /** The rule with the mistake. */
  mutated: Rule;
  kind: 'bound' | 'condition' | 'outcome' | 'need';
  /** What was done, in words. */
  what: string;
  /** Of a bound: the comparison that was moved. */
  fact?: string;
  decision: Decision;
}

/**
 * The mistakes that somebody could make in each rule: a bound that counts on the wrong side, a condition or a need that is left out,
 * an outcome one step more or less restrictive.
 */
export function mutantsOf(decision: Decision): Mutant[] {
  return decision.rules.flatMap((rule) => {
    const mutant = (mutated: Rule, more: Pick<Mutant, 'kind' | 'what'> & { fact?: string }): Mutant => ({
      rule,
      mutated,
      ...more,
      decision: { ...decision, rules: decision.rules.map((each) => (each === rule ? mutated : each)) },
    });
    const needs = rule.needs;
    return [
      ...changesOf(rule.when).map(({ condition, isBound, what, fact }) =>
        mutant({ ...rule, when: condition }, { kind: isBound ? 'bound' : 'condition', what, fact }),
      ),
      ...(needs === undefined
        ? []
        : changesOf(needs).map(({ condition, what, fact }) =>
            mutant({ ...rule, needs: condition }, { kind: 'need', what, fact }),
          )),
      ...otherOutcomes(decision, rule).map((outcome) =>
        mutant({ ...rule, outcome }, { kind: 'outcome', what: `\`${outcome}\` for \`${rule.outcome ?? ''}\`` }),
      ),
    ];
  });
}

function otherOutcomes(decision: Exclude<Decision, Choice> | Choice, rule: Rule): string[] {
  if (decision.kind === 'choice') return [];
  const rank = decision.outcomes.indexOf(rule.outcome ?? '');
  return [rank - 1, rank + 1].flatMap((each) => decision.outcomes[each] ?? []);
}

interface Change {
  condition: Condition;
  isBound: boolean;
  what: string;
  fact: string;
}

const always: Condition = { kind: 'all', of: [] };
const never: Condition = { kind: 'any', of: [] };

/** A condition with one test of it moved or left out, in each way. `neutral` is what leaves the rest as it is. */
function changesOf(condition: Condition, neutral: Condition = always): Change[] {
  switch (condition.kind) {
    case 'all':
    case 'any': {
      const without = condition.kind === 'all' ? always : never;
      return condition.of.flatMap((part, index) =>
        changesOf(part, without).map((change) => ({
          ...change,
          condition: { ...condition, of: condition.of.map((each, at) => (at === index ? change.condition : each)) },
        })),
      );
    }
    case 'not':
      return changesOf(condition.of, neutral === always ? never : always).map((change) => ({
        ...change,
        condition: { kind: 'not', of: change.condition },
      }));
    case 'test': {
      const { fact, test } = condition;
      const dropped = { condition: neutral, isBound: false, what: `without its test on \`${fact}\``, fact };
      if (test.kind !== 'compare') return [dropped];
      const op = otherSide[test.op];
      const moved: Condition = { ...condition, test: { ...test, op } };
      return [dropped, { condition: moved, isBound: true, what: `\`${op}\` for \`${test.op}\` ${test.shown}`, fact }];
    }
  }
}

const otherSide: Record<Comparison, Comparison> = {
  'at-least': 'above',
  above: 'at-least',
  'at-most': 'below',
  below: 'at-most',
};
