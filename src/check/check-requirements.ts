import type { AnswerReference, Requirement, Rulebook } from '../link/rulebook.js';
import type { Finding } from '../read/finding.js';
import { quotedList } from '../read/quoted.js';

/** Warns of everything asked of the written program that nothing in these rules answers for this clinic. */
export function checkRequirements(rulebook: Rulebook): Finding[] {
  return [...rulebook.requirements.values()].flatMap((requirement): Finding[] => {
    const { answeredBy, place } = requirement;
    if (answersHere(rulebook, requirement).length > 0) return [];
    const named = answeredBy.map(({ scheme, id }) => `${scheme}:${id}`);
    const why = named.length === 0 ? 'nothing answers it' : `what answers it does not hold here: ${quotedList(named)}`;
    return [
      {
        code: 'W511',
        message: `item ${requirement.item} of the written program is open, ${why}`,
        place,
        help: 'write what answers it, and name it under `answered-by:`',
      },
    ];
  });
}

/** The answers of a requirement that hold for this clinic. */
export function answersHere(rulebook: Rulebook, { answeredBy }: Requirement): AnswerReference[] {
  return answeredBy.filter((answer) => holdsHere(rulebook, answer));
}

function holdsHere({ notHere, policies, limits }: Rulebook, { scheme, id }: AnswerReference): boolean {
  if (scheme === 'limit') return limits.has(id);
  if (scheme !== 'policy') return !notHere.has(id);
  const policy = policies.get(id.split('/')[0] ?? '');
  return policy !== undefined && (!id.includes('/') || policy.points.some((point) => point.id === id));
}
