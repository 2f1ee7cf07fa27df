import type { Finding } from '../../read/finding.js';
import type { Bundle } from './rulebook-to-json-logic.js';
import { runBundle } from './run.js';

/** Runs every vector of a bundle on a JSON Logic library, as anybody who uses the bundle is asked to. */
export function selfCheck(bundle: Bundle, file: string): Finding[] {
  return bundle.vectors.flatMap((vector, index): Finding[] => {
    const { decision, facts, ...expected } = vector;
    const given = runBundle(bundle, decision, facts);
    if (JSON.stringify(given) === JSON.stringify(expected)) return [];
    return [
      {
        code: 'E406',
        message: `vector ${index} of \`${decision}\` comes out as \`${given.outcome}\` on JSON Logic, the rules answer \`${expected.outcome}\``,
        place: { file, line: 1, column: 1 },
        help: 'this is a fault of the tool, not of your rules: please report it',
      },
    ];
  });
}
