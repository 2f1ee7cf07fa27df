import type { Fact, Rulebook } from '../../link/rulebook.js';
import { join, type Markdown } from '../text/markdown.js';
import { ruleText, said } from '../text/markdown-safe.js';
import { phrase } from '../text/phrase.js';

/** A member of a fact in words: a term, an outcome, yes or no. */
export function sayMember(rulebook: Rulebook, fact: Fact, member: string | boolean): string | Markdown {
  if (typeof member === 'boolean') return phrase(rulebook, member ? 'answer.yes' : 'answer.no');
  if (fact.type !== 'answer') return rulebook.terms.get(member)?.label ?? member;
  return sayOutcome(rulebook, fact.decision ?? '', member);
}

/** An outcome of a decision in words: what it says, or the name of a program. */
export function sayOutcome(rulebook: Rulebook, decisionId: string, outcome: string): string | Markdown {
  const decision = rulebook.decisions.get(decisionId);
  if (decision?.kind === 'verdict') return ruleText(decision.say[outcome] ?? outcome);
  return outcome === 'none' ? phrase(rulebook, 'answer.no-program') : sayProgram(rulebook, outcome);
}

/** A program's name with its machine's, as on the panel. */
export function sayProgram(rulebook: Rulebook, id: string): Markdown {
  const machine = rulebook.machines.get(id.split('/')[0] ?? '');
  const program = machine?.programs.find((each) => each.id === id);
  if (machine === undefined || program === undefined) return join([id]);
  return said(`${machine.name}: ${program.name}`, id);
}
