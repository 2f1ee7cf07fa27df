import { ruleOf, stepOf, writtenAbove } from '../link/origins.js';
import type { Card, CardLine, Condition, LinkedRules, Origin, Situation, Step } from '../link/rulebook.js';

type Holds = (condition: Condition | undefined, facts?: Situation) => boolean;
type Point = Card['points'][number];

/** Fewest points that make a card worth a page. */
const fewestPoints = 2;

/**
 * The wall cards of a clinic, from rules whose tasks and procedures are tailored already: lines whose origins are in force, in the
 * words in force, with the steps that regions and the clinic added for the wall.
 */
export function tailorCards(rules: LinkedRules, holds: Holds): Map<string, Card> {
  const cards = [...rules.cards].flatMap(([id, card]): [string, Card][] => {
    if (!isHere(rules, holds, card)) return [];
    const { caution, stop, points, ...rest } = card;
    const printed = withAddedSteps(
      rules,
      card.layer,
      points.flatMap(({ id: point, ...line }): Point[] =>
        linesHere(rules, holds, line, (step) => step.onCard ?? step.do).map((each) => ({ id: point, ...each })),
      ),
    );
    if (printed.length < fewestPoints) return [];
    const [danger] = caution === undefined ? [] : linesHere(rules, holds, caution, (step) => step.caution);
    const [end] = stop === undefined ? [] : linesHere(rules, holds, stop, (step) => step.ifNot);
    return [[id, { ...rest, points: printed, ...(danger && { caution: danger }), ...(end && { stop: end }) }]];
  });
  return new Map(cards);
}

function isHere({ machines }: LinkedRules, holds: Holds, { machine: kind, onlyWhen }: Card): boolean {
  if (kind === undefined) return holds(onlyWhen);
  return [...machines.values()].some((each) => each.kind === kind && each.inService && holds(onlyWhen, each.facts));
}

/** What a line restates of a step. */
type Part = (step: Step) => string | undefined;

/** The line in the words in force, or none where something that it restates does not hold here. */
function linesHere(rules: LinkedRules, holds: Holds, line: CardLine, part: Part): CardLine[] {
  if (!line.from.every((origin) => isInForce(rules, holds, origin))) return [];
  return line.from.some((origin) => writtenAbove(rules, origin, line.layer)) ? inNewWords(rules, line, part) : [line];
}

function isInForce(rules: LinkedRules, holds: Holds, { kind, id }: Origin): boolean {
  switch (kind) {
    case 'step':
      return stepOf(rules, id) !== undefined;
    case 'rule': {
      const rule = ruleOf(rules, id);
      return rule !== undefined && holds(rules.decisions.get(id.split('/')[0] ?? '')?.onlyWhen) && holds(rule.when);
    }
    case 'task':
      return rules.tasks.has(id);
    case 'limit':
      return rules.limits.has(id);
    case 'procedure':
      return rules.procedures.has(id);
  }
}

/** What a line restates, in the words of the steps and rules themselves: a layer above the card wrote them anew. */
function inNewWords(rules: LinkedRules, { from, layer }: CardLine, part: Part): CardLine[] {
  const found = from.flatMap(({ kind, id }): { say: string; layer: string }[] => {
    const step = kind === 'step' ? stepOf(rules, id) : undefined;
    const words = step && part(step);
    if (step !== undefined && words !== undefined) return [{ say: words, layer: step.layer }];
    const rule = kind === 'rule' ? ruleOf(rules, id) : undefined;
    const decision = rules.decisions.get(id.split('/')[0] ?? '');
    if (rule === undefined || decision?.kind !== 'verdict') return [];
    return [{ say: [decision.say[rule.outcome ?? ''], rule.because].join(' '), layer: rule.layer }];
  });
  const texts = [...new Set(found.map((each) => each.say))];
  if (texts.length === 0) return [];
  return [{ say: texts.join(' '), from, layer: found.some((each) => each.layer === 'clinic') ? 'clinic' : layer }];
}

/**
 * Points, and after the step before it each step that a layer above added with words for the wall. It stands on the cards that
 * restate two or more steps of its procedure.
 */
function withAddedSteps(rules: LinkedRules, layer: string, points: readonly Point[]): Point[] {
  const restated = points.flatMap(({ from }) => from.flatMap(({ kind, id }) => (kind === 'step' ? [id] : [])));
  const owners = restated.map((id) => id.split('/')[0] ?? '');
  const own = [...new Set(owners)].filter((owner) => owners.filter((each) => each === owner).length > 1);
  return own.reduce(
    (sofar, owner) => {
      const steps = rules.procedures.get(owner)?.steps ?? [];
      return steps.reduce((printed, step, index) => {
        const added = step.onCard !== undefined && !restated.includes(step.id);
        if (!added || !writtenAbove(rules, { kind: 'step', id: step.id }, layer)) return printed;
        return printed.toSpliced(placeAfter(printed, steps.slice(0, index)), 0, pointOf(step, step.onCard ?? step.do));
      }, sofar);
    },
    [...points],
  );
}

/** Behind the last point that restates one of these steps. */
function placeAfter(points: readonly Point[], before: readonly Step[]): number {
  return points.findLastIndex(({ from }) => from.some(({ id }) => before.some((step) => step.id === id))) + 1;
}

function pointOf({ id, name, layer }: Step, say: string): Point {
  return { id: name, say, from: [{ kind: 'step', id }], layer };
}
