import type { Rule, Rulebook, Verdict } from '../../link/rulebook.js';
import { groupBy } from '../text/group-by.js';
import { refer } from '../text/markdown.js';
import { ruleText, textOfLayer } from '../text/markdown-safe.js';
import { capitalize, joinWith, uncapitalize } from '../text/say-list.js';
import { type Bibliography, citeInText } from './cite.js';
import { sayCondition } from './say-condition.js';

/**
 * A verdict as a table, most restrictive answer first: the first line that fits is the answer.
 */
export function modelDecision(rulebook: Rulebook, bibliography: Bibliography, decision: Verdict) {
  const rank = ({ outcome }: Rule) => decision.outcomes.indexOf(outcome ?? '');
  const rules = [...decision.rules].sort((a, b) => rank(b) - rank(a));
  return {
    id: decision.id,
    title: decision.title,
    question: decision.question,
    about: decision.about === undefined ? null : ruleText(decision.about),
    answers: [...groupBy(rules, ({ outcome }) => outcome ?? '')].flatMap(([outcome, group]) => {
      const lines = group.flatMap((rule) => lineOf(rulebook, bibliography, rule));
      return lines.length === 0 ? [] : [{ answer: ruleText(capitalize(sayAnswer(decision, outcome))), lines }];
    }),
    otherwise: ruleText(uncapitalize(sayAnswer(decision, decision.otherwise))),
  };
}

function sayAnswer({ say }: Verdict, outcome: string): string {
  return (say[outcome] ?? outcome).replace(/\.$/, '');
}

function lineOf(rulebook: Rulebook, bibliography: Bibliography, rule: Rule) {
  const { holds, lines } = sayCondition(rulebook, rule.when);
  if (holds === 'never') return [];
  return [
    {
      id: rule.id,
      always: holds === 'always',
      situation: joinWith(rulebook, 'list.semicolon', lines),
      ...sayWhy(rulebook, bibliography, rule),
    },
  ];
}

/** Why a rule holds, what can hurt, and where it is from. */
export function sayWhy(rulebook: Rulebook, bibliography: Bibliography, rule: Rule) {
  return {
    why: textOfLayer(rule.because, rule.layer),
    cautions: rule.cautions.map((each) => textOfLayer(each, rule.layer)),
    instead: rule.instead === undefined ? null : refer('procedure', rule.instead),
    source: citeInText(rulebook, bibliography, rule.source),
  };
}
