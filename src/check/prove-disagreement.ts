import { isWithin } from '../link/choose-packs.js';
import type { Limit, Rulebook, Task } from '../link/rulebook.js';
import { formatInterval, isAtLeastAsOften } from '../measure/interval.js';
import { compareQuantities, dimensionOf, formatQuantity } from '../measure/quantity.js';
import { citationOf, type FixtureThat, known, readPublished, readPublishedInterval, type Wrong } from './fixture-parts.js';

type Position = FixtureThat<'disagreement'>['positions'][number];

/**
 * Holds sources that do not say the same to that, and the rules of a region to be at least as strict as its own guidance.
 * `sources` are those of all packs: a disagreement goes across regions.
 */
export function proveDisagreement(
  fixture: FixtureThat<'disagreement'>,
  rulebook: Rulebook,
  region: string,
  sources: ReadonlyMap<string, unknown>,
): Wrong | undefined {
  const subject = fixture.about === undefined ? undefined : subjectOf(fixture.about, rulebook);
  const seen = new Set<string>();
  for (const [index, position] of fixture.positions.entries()) {
    known('E304', 'source', citationOf(position.source).id, sources, ['positions', index, 'source']);
    const { said, isLooser, actual } = judge(position, subject, ['positions', index, 'value']);
    seen.add(said);
    if (!isLooser || position.region === undefined || !isWithin(region, position.region)) continue;
    const message = `\`${fixture.about}\` is ${actual}, the guidance of ${position.region} is ${said}`;
    return { code: 'E402', at: ['positions', index, 'value'], message };
  }
  if (seen.size > 1) return undefined;
  return {
    code: 'E402',
    at: ['positions'],
    message: 'these sources all say the same',
    help: 'write a limit or interval fixture',
  };
}

function subjectOf(id: string, rulebook: Rulebook): { limit: Limit } | { task: Task } {
  const limit = rulebook.limits.get(id);
  if (limit !== undefined) return { limit };
  return { task: known('E306', 'limit or task', id, rulebook.tasks, ['about']) };
}

function judge(
  { value, says }: Position,
  subject: { limit: Limit } | { task: Task } | undefined,
  at: (string | number)[],
): { said: string; isLooser: boolean; actual: string } {
  if (value === undefined || subject === undefined) return { said: value ?? says, isLooser: false, actual: '' };
  if (value === 'none') return { said: value, isLooser: false, actual: '' };
  if ('limit' in subject) {
    const { limit } = subject;
    const published = readPublished(value, dimensionOf(limit.value), at);
    const difference = compareQuantities(limit.value, published);
    const isLooser = limit.stricter === 'lower' ? difference > 0 : difference < 0;
    return { said: formatQuantity(published), isLooser, actual: formatQuantity(limit.value) };
  }
  const published = readPublishedInterval(value, at);
  const { every } = subject.task;
  return {
    said: formatInterval(published),
    isLooser: every === undefined || !isAtLeastAsOften(every, published),
    actual: every === undefined ? 'only due after events' : `due ${formatInterval(every)}`,
  };
}
