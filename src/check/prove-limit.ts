import type { Citation, Rulebook, SetBy } from '../link/rulebook.js';
import { formatInterval, type Interval, isAtLeastAsOften } from '../measure/interval.js';
import { compareQuantities, dimensionOf, formatQuantity } from '../measure/quantity.js';
import { citationOf, type FixtureThat, known, readPublished, readPublishedInterval, type Wrong } from './fixture-parts.js';

/**
 * Compares a limit with its published value. `equals` holds the layer that cites the fixture's source to the very value,
 * however much stricter a later layer is; where no layer cites it, the value in force must be the published one.
 */
export function proveLimit(fixture: FixtureThat<'limit'>, rulebook: Rulebook): Wrong | undefined {
  const limit = known('E303', 'limit', fixture.limit, rulebook.limits, ['limit']);
  const read = (test: 'equals' | 'at-least-as-strict-as') => {
    const text = fixture[test];
    return text === undefined ? undefined : readPublished(text, dimensionOf(limit.value), [test]);
  };
  const [exactly, atLeast] = [read('equals'), read('at-least-as-strict-as')];
  const says = `limit \`${limit.id}\` is`;
  if (exactly !== undefined) {
    const strays = citing(limit.chain, citationOf(fixture.source)).filter(
      ({ quantity }) => quantity !== undefined && compareQuantities(quantity, exactly) !== 0,
    );
    const [stray] = strays;
    if (stray !== undefined) return differs('equals', saysOf(stray, limit.id), formatQuantity(exactly));
  }
  for (const [test, published] of [
    ['equals', exactly],
    ['at-least-as-strict-as', atLeast],
  ] as const) {
    if (published === undefined) continue;
    const difference = compareQuantities(limit.value, published);
    const isLooser = limit.stricter === 'lower' ? difference > 0 : difference < 0;
    if (isLooser)
      return differs(
        test,
        `${says} ${formatQuantity(limit.value)}`,
        `${formatQuantity(published)}, and ${limit.stricter} is stricter`,
      );
  }
  return exactly === undefined && atLeast === undefined ? comparesWithNothing : undefined;
}

/** Compares a task's interval with the published one, in the same way. */
export function proveInterval(fixture: FixtureThat<'interval'>, rulebook: Rulebook): Wrong | undefined {
  const task = known('E306', 'task', fixture.task, rulebook.tasks, ['task']);
  const read = (test: 'equals' | 'at-least-as-strict-as') => {
    const text = fixture[test];
    return text === undefined ? undefined : readPublishedInterval(text, [test]);
  };
  const [exactly, atLeast] = [read('equals'), read('at-least-as-strict-as')];
  const says = `task \`${task.id}\` is due`;
  if (exactly !== undefined) {
    const [stray] = citing(task.chain, citationOf(fixture.source)).filter(
      ({ every }) => every !== undefined && !isSame(every, exactly),
    );
    if (stray !== undefined) return differs('equals', saysOf(stray, task.id), formatInterval(exactly));
  }
  for (const [test, published] of [
    ['equals', exactly],
    ['at-least-as-strict-as', atLeast],
  ] as const) {
    if (published === undefined || (task.every !== undefined && isAtLeastAsOften(task.every, published))) continue;
    const actual = task.every === undefined ? 'only after events' : formatInterval(task.every);
    return differs(test, `${says} ${actual}`, formatInterval(published));
  }
  return exactly === undefined && atLeast === undefined ? comparesWithNothing : undefined;
}

/**
 * The layers that cite a source: those that name the same clause, where several cite it. Where none does, the one in force.
 */
function citing(chain: readonly SetBy[], { id, at }: Citation): SetBy[] {
  const cited = chain.filter(({ source }) => source.id === id);
  if (cited.length === 0) return chain.slice(-1);
  const sameClause = cited.filter(({ source }) => source.at === at);
  return cited.length > 1 && sameClause.length > 0 ? sameClause : cited;
}

function isSame(a: Interval, b: Interval): boolean {
  return isAtLeastAsOften(a, b) && isAtLeastAsOften(b, a);
}

function saysOf({ layer, value }: SetBy, id: string): string {
  return `layer \`${layer}\` says ${value} for \`${id}\``;
}

function differs(test: string, is: string, published: string): Wrong {
  return { code: 'E402', at: [test], message: `${is}, published is ${published}` };
}

const comparesWithNothing: Wrong = {
  code: 'E402',
  at: [],
  message: 'it compares with nothing',
  help: 'add `equals` or `at-least-as-strict-as`',
};
