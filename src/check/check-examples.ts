import { knownFacts } from '../decide/decide.js';
import { missingFacts } from '../decide/facts-of.js';
import { truthOf } from '../decide/truth.js';
import type { Condition, Rulebook } from '../link/rulebook.js';
import { inBaseUnit } from '../measure/quantity.js';
import type { Finding } from '../read/finding.js';

/**
 * Runs the examples of every rule: each must come out as it says, by the facts it gives and nothing else. An example is
 * judged by the limits as they were when its layer was written: a later layer that makes a limit stricter breaks none.
 */
export function checkExamples(rulebook: Rulebook): Finding[] {
  const withoutClinic: Rulebook = { ...rulebook, clinic: { ...rulebook.clinic, facts: {} } };
  const layers = [...rulebook.packs.map(({ id }) => id), 'clinic'];
  return [...rulebook.decisions.values()].flatMap(({ rules }) =>
    rules.flatMap((rule) => {
      const upTo = layers.slice(0, layers.indexOf(rule.layer) + 1);
      return rule.examples.flatMap(({ given, applies, place }): Finding[] => {
        const known = knownFacts(withoutClinic, given);
        const truth = truthOf(withLimitsOf(rule.when, upTo, rulebook), known);
        if (truth === applies) return [];
        if (truth === undefined) {
          const missing = missingFacts(rule.when, known).map((fact) => `\`${fact}\``);
          return [
            {
              code: 'E401',
              message: `this example leaves open whether \`${rule.id}\` applies`,
              place,
              help: `add ${missing.join(', ')} to \`given\``,
            },
          ];
        }
        const [does, should] = truth ? ['applies', 'does not'] : ['does not apply', 'does'];
        return [
          {
            code: 'E401',
            message: `\`${rule.id}\` ${does} in this example, which says that it ${should}`,
            place,
            help: 'correct the condition or the example',
          },
        ];
      });
    }),
  );
}

/** A condition with the values that its limits had in these layers. */
function withLimitsOf(condition: Condition, layers: readonly string[], rulebook: Rulebook): Condition {
  switch (condition.kind) {
    case 'all':
    case 'any':
      return { ...condition, of: condition.of.map((each) => withLimitsOf(each, layers, rulebook)) };
    case 'not':
      return { ...condition, of: withLimitsOf(condition.of, layers, rulebook) };
    case 'test': {
      const { test } = condition;
      if (test.kind !== 'compare' || test.limit === undefined) return condition;
      const value = rulebook.limits.get(test.limit)?.chain.findLast(({ layer }) => layers.includes(layer))?.quantity;
      return value === undefined ? condition : { ...condition, test: { ...test, value: inBaseUnit(value) } };
    }
  }
}
