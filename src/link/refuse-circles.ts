import type { Place } from '../read/finding.js';
import { eachOf, type Linking, report } from './linking.js';
import type { Condition, Decision, Fact } from './rulebook.js';

/**
 * Reports facts and decisions that wait for themselves: a decision through its conditions, a fact through its `only-when`,
 * an answer through its decision. Returns whether there are any; nothing can be worked out from such rules.
 */
export function refuseCircles(
  linking: Linking,
  facts: ReadonlyMap<string, Fact>,
  decisions: ReadonlyMap<string, Decision>,
): boolean {
  const behind = ({ kind, id }: Node): Node[] => {
    if (kind === 'decision') {
      const conditions =
        decisions.get(id)?.rules.flatMap(({ when, needs }) => [when, ...(needs === undefined ? [] : [needs])]) ?? [];
      return conditions.flatMap(factIds).map((each) => ({ kind: 'fact', id: each }));
    }
    const { onlyWhen, decision } = facts.get(id) ?? {};
    const guards = onlyWhen === undefined ? [] : factIds(onlyWhen);
    return [
      ...guards.map((each): Node => ({ kind: 'fact', id: each })),
      ...(decision === undefined ? [] : [{ kind: 'decision', id: decision } as const]),
    ];
  };
  const done = new Set<string>();
  let found = false;
  const visit = (node: Node, path: readonly Node[]): void => {
    const start = path.findIndex((each) => nameOf(each) === nameOf(node));
    if (start >= 0) {
      found = true;
      reportCircle(linking, path.slice(start), decisions);
    } else if (!done.has(nameOf(node))) {
      for (const each of behind(node)) visit(each, [...path, node]);
      done.add(nameOf(node));
    }
  };
  for (const id of decisions.keys()) visit({ kind: 'decision', id }, []);
  for (const id of facts.keys()) visit({ kind: 'fact', id }, []);
  return found;
}

interface Node {
  kind: 'fact' | 'decision';
  id: string;
}

function nameOf({ kind, id }: Node): string {
  return `${kind} \`${id}\``;
}

function reportCircle(linking: Linking, circle: readonly Node[], decisions: ReadonlyMap<string, Decision>): void {
  const first = circle.find(({ kind }) => kind === 'decision') ?? circle[0];
  if (first === undefined) return;
  const place = first.kind === 'decision' ? decisions.get(first.id)?.place : placeOfFact(linking, first.id);
  const position = circle.indexOf(first);
  const around = [...circle.slice(position), ...circle.slice(0, position), first].map(({ id }) => id);
  const message =
    first.kind === 'decision'
      ? `${nameOf(first)} waits for its own answer`
      : `${nameOf(first)} only has a meaning when it has one`;
  if (place !== undefined) report(linking, 'E317', place, message, `the circle is ${around.join(' -> ')}; take one of them out`);
}

function placeOfFact(linking: Linking, id: string): Place | undefined {
  const document = eachOf(linking, 'facts').find((each) => Object.hasOwn(each.document.data.facts, id))?.document;
  return document?.atKey(['facts', id]);
}

function factIds(condition: Condition): string[] {
  if (condition.kind === 'test') return [condition.fact];
  return condition.kind === 'not' ? factIds(condition.of) : condition.of.flatMap(factIds);
}
