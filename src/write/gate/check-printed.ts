import type { Root } from 'mdast';
import type { Rulebook } from '../../link/rulebook.js';
import type { Finding } from '../../read/finding.js';
import { printedDecisions } from '../model/printed-decisions.js';
import { walk } from '../tree/walk.js';
import { placeOfMark } from './place-of.js';

/** Reports everything in force that no page of the manual shows. */
export function checkPrinted(tree: Root, rulebook: Rulebook): Finding[] {
  const printed = new Set<string>();
  walk(tree, (node) => {
    for (const { kind, id } of node.data?.marks ?? []) printed.add(`${kind}:${id}`);
  });
  return inForce(rulebook).flatMap(({ kind, id }) => {
    if (printed.has(`${kind}:${id}`)) return [];
    const place = placeOfMark({ kind, id }, rulebook) ?? { file: 'manual', line: 1, column: 1 };
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

function inForce(rulebook: Rulebook): { kind: string; id: string }[] {
  const { limits, tasks, procedures, policies, forms, requirements } = rulebook;
  const decisions = printedDecisions(rulebook);
  const of = (kind: string, ids: Iterable<string>) => [...ids].map((id) => ({ kind, id }));
  return [
    ...of(
      'decision',
      decisions.map(({ id }) => id),
    ),
    ...of(
      'rule',
      decisions.flatMap(({ rules }) => rules.map(({ id }) => id)),
    ),
    ...of('limit', limits.keys()),
    ...of('task', tasks.keys()),
    ...of('procedure', procedures.keys()),
    ...of(
      'step',
      [...procedures.values()].flatMap(({ steps }) => steps.map(({ id }) => id)),
    ),
    ...of('policy', policies.keys()),
    ...of(
      'point',
      [...policies.values()].flatMap(({ points }) => points.map(({ id }) => id)),
    ),
    ...of('form', forms.keys()),
    ...of('requirement', requirements.keys()),
  ];
}
