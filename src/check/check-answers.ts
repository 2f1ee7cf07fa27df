import { type Analysis, analyse } from '../analyse/questions.js';
import type { Effort } from '../analyse/regions.js';
import { boxInLine } from '../analyse/say-box.js';
import type { Decision, Rulebook } from '../link/rulebook.js';
import type { Finding } from '../read/finding.js';

/**
 * Warns of what an exact look at all situations shows: situations no rule speaks about, and rules without effect. Whatever a clinic
 * states about itself, since that may change tomorrow.
 */
export function checkAnswers(rulebook: Rulebook, effort?: Effort): Finding[] {
  const anyClinic: Rulebook = { ...rulebook, clinic: { ...rulebook.clinic, facts: {} } };
  return analyse(anyClinic, effort).flatMap((analysis) => {
    const decision = rulebook.decisions.get(analysis.decision);
    return decision === undefined ? [] : findingsOf(analysis, decision);
  });
}

function findingsOf(analysis: Analysis, { id, place, gaps, rules }: Decision): Finding[] {
  const at = (rule: string) => rules.find((each) => each.id === rule)?.place ?? place;
  const [gap] = analysis.gaps;
  const more = analysis.gaps.length > 1 ? `, and in ${analysis.gaps.length - 1} more regions` : '';
  return [
    ...(gap === undefined
      ? []
      : [
          {
            code: 'W505' as const,
            message: `no rule of \`${id}\` speaks where ${boxInLine(gap.where)}${more}`,
            place,
            help: 'add a rule, or say under `gaps:` why none is needed',
          },
        ]),
    ...analysis.idleMarks.flatMap((index): Finding[] => {
      const mark = gaps[index];
      const message = 'there is no such gap: in every situation that this describes, a rule speaks';
      return mark === undefined ? [] : [{ code: 'W506', message, place: mark.place, help: 'take it out' }];
    }),
    ...analysis.neverTrue.map(
      (rule): Finding => ({
        code: 'W507',
        message: `rule \`${rule}\` can never apply: its condition contradicts itself`,
        place: at(rule),
        help: 'correct the condition, or take the rule out',
      }),
    ),
    ...analysis.overruled.map(
      (rule): Finding => ({
        code: 'W508',
        message: `rule \`${rule}\` never decides: wherever it applies, a more restrictive one does too`,
        place: at(rule),
        help: 'retire it: that changes no answer',
      }),
    ),
    ...analysis.repeats.map(
      ({ rule, of }): Finding => ({
        code: 'W509',
        message: `rule \`${rule}\` applies exactly where \`${of}\` does and says the same`,
        place: at(rule),
        help: 'keep one of them',
      }),
    ),
    ...analysis.undecided.map(
      (what): Finding => ({
        code: 'W510',
        message: `not decided within the limit of the search: ${what} of \`${id}\``,
        place,
        help: 'split the decision: what many facts settle can be an answer of its own',
      }),
    ),
  ];
}
