import type { Root } from 'mdast';
import type { Rulebook } from '../../link/rulebook.js';
import type { Finding } from '../../read/finding.js';
import { inForce } from '../model/in-force.js';
import { walk } from '../tree/walk.js';

/** Reports everything in force that no page of the manual shows. */
export function checkPrinted(tree: Root, rulebook: Rulebook): Finding[] {
  const printed = new Set<string>();
  walk(tree, (node) => {
    for (const { kind, id } of node.data?.marks ?? []) printed.add(`${kind}:${id}`);
  });
  return inForce(rulebook).flatMap(({ kind, id, place = { file: 'manual', line: 1, column: 1 } }) => {
    if (printed.has(`${kind}:${id}`)) return [];
    return [
      {
        code: 'E608',
        message: `the ${kind} \`${id}\` is in force but not printed`,
        place,
        help: 'give it a place in a template of the manual',
      },
    ];
  });
}
