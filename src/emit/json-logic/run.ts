import jsonLogic, { type RulesLogic } from 'json-logic-js';
import type { Bundle, Vector } from './rulebook-to-json-logic.js';

/** Answers a decision as the bundle's `about` says. Facts are checked by the caller. */
export function runBundle(
  { decisions, clinic }: Bundle,
  decision: string,
  facts: Readonly<Record<string, unknown>>,
): Omit<Vector, 'decision' | 'facts'> {
  const stated = {
    ...clinic,
    ...Object.fromEntries(Object.entries(facts).filter(([, value]) => value !== null && value !== undefined)),
  };
  const nestedFacts = nest(Object.entries(stated));
  const known = new Map<string, string[]>();
  const possibleOf = (id: string): string[] => {
    const before = known.get(id) ?? run(id, {}).possible;
    known.set(id, before);
    return before;
  };
  const run = (id: string, told: Readonly<Record<string, unknown>>): Omit<Vector, 'decision' | 'facts'> => {
    const asked = decisions[id];
    if (asked === undefined) throw new RangeError(`no decision \`${id}\``);
    const answers = Object.entries(asked.asks).map(([fact, other]): [string, string[]] => {
      const possible = possibleOf(other);
      const narrowed = possible.filter((each) => each === told[fact]);
      return [fact, narrowed.length > 0 ? narrowed : possible];
    });
    const data = { facts: nestedFacts, answers: nest(answers) };
    const apply = (logic: unknown, on: object): unknown => jsonLogic.apply(logic as RulesLogic, on);
    const certain = asked.rules.filter((rule) => apply(rule.certain, data) === true).map((rule) => rule.id);
    const open = asked.rules
      .filter((rule) => !certain.includes(rule.id) && apply(rule.possible, data) === true)
      .map((rule) => rule.id);
    const lists = { certain, open };
    return {
      outcome: String(apply(asked.outcome, lists)),
      possible: (apply(asked.possible, lists) as unknown[]).map(String),
      settled: apply(asked.settled, lists) === true,
      certain,
      open,
    };
  };
  return run(decision, stated);
}

/** `load.wait` becomes `{ load: { wait } }`. */
function nest(entries: readonly (readonly [string, unknown])[]): Record<string, unknown> {
  const root: Record<string, unknown> = Object.create(null);
  for (const [id, value] of entries) {
    const parts = id.split('.');
    const last = parts.pop() ?? '';
    let at = root;
    for (const part of parts) {
      const next = at[part];
      const child: Record<string, unknown> = isRecord(next) ? next : Object.create(null);
      at[part] = child;
      at = child;
    }
    at[last] = value;
  }
  return root;
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
