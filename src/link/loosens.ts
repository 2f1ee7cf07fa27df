import type { Decision, Rule } from './rulebook.js';

/** Whether a change may make an answer less strict somewhere, and how. */
interface Loosening {
  looser: boolean;
  because: string;
}

/** Whether adding (`old` absent), retiring (`next` absent) or replacing a rule may loosen an answer somewhere. */
export function loosens(decision: Decision, old: Rule | undefined, next: Rule | undefined): Loosening {
  if (next === undefined) return retiringLoosens(decision, old);
  return old === undefined ? addingLoosens(decision, next) : replacingLoosens(decision, old, next);
}

/**
 * Adding a rule never loosens a verdict when its outcome is at least as restrictive as `otherwise`: where others apply,
 * the most restrictive still wins, and where none did, `otherwise` held. In a choice, a rule that only adds needs never
 * loosens; one that also answers may turn "none" into a program.
 */
function addingLoosens(decision: Decision, rule: Rule): Loosening {
  if (decision.kind === 'choice')
    return {
      looser: !rule.addsOnly,
      because: 'the rule may answer where none did; mark it `adds-only: true` if it only adds needs',
    };
  const rank = (outcome: string) => decision.outcomes.indexOf(outcome);
  return {
    looser: rank(rule.outcome ?? '') < rank(decision.otherwise),
    because: `where no other rule speaks, \`${decision.otherwise}\` would become \`${rule.outcome ?? ''}\``,
  };
}

/** Retiring a rule loosens nothing only when its outcome is the least restrictive one, which never wins over another. */
function retiringLoosens(decision: Decision, rule: Rule | undefined): Loosening {
  if (decision.kind === 'choice') return { looser: true, because: 'its needs would no longer be asked for' };
  return {
    looser: rule?.outcome !== decision.outcomes[0],
    because: `situations that were \`${rule?.outcome ?? ''}\` would fall to what is left`,
  };
}

/** A replaced rule is as strict when it holds in the same situations and asks for at least as much. */
function replacingLoosens(decision: Decision, old: Rule, next: Rule): Loosening {
  if (JSON.stringify(old.when) !== JSON.stringify(next.when))
    return { looser: true, because: 'its condition is another, so it may no longer hold where the old rule held' };
  if (decision.kind === 'choice') {
    const asked = needsOf(next);
    return {
      looser: needsOf(old).some((need) => !asked.includes(need)) || (old.addsOnly && !next.addsOnly),
      because: 'it no longer asks for everything the old rule asked for',
    };
  }
  const rank = ({ outcome = '' }: Rule) => decision.outcomes.indexOf(outcome);
  return { looser: rank(next) < rank(old), because: `\`${old.outcome ?? ''}\` would become \`${next.outcome ?? ''}\`` };
}

function needsOf({ needs }: Rule): string[] {
  if (needs === undefined) return [];
  return (needs.kind === 'all' ? needs.of : [needs]).map((need) => JSON.stringify(need));
}
