import { knownFacts } from '../decide/decide.js';
import { missingFacts } from '../decide/facts-of.js';
import { truthOf } from '../decide/truth.js';
import type { Rulebook } from '../link/rulebook.js';
import type { Finding } from '../read/finding.js';

/** Runs the examples of every rule: each must come out as it says, by the facts it gives and nothing else. */
export function checkExamples(rulebook: Rulebook): Finding[] {
  const withoutClinic: Rulebook = { ...rulebook, clinic: { ...rulebook.clinic, facts: {} } };
  return [...rulebook.decisions.values()].flatMap(({ rules }) =>
    rules.flatMap((rule) =>
      rule.examples.flatMap(({ given, applies, place }): Finding[] => {
        const known = knownFacts(withoutClinic, given);
        const truth = truthOf(rule.when, known);
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
      }),
    ),
  );
}
