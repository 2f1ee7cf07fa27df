import { isWithin } from '../link/choose-packs.js';
import { citationOf } from '../link/linking.js';
import type { Rulebook } from '../link/rulebook.js';
import { type FixtureThat, known, type Wrong } from './fixture-parts.js';
import { limitSubject, type Subject, taskSubject } from './subject.js';

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
    const { value, says, region: itsRegion } = position;
    known('E304', 'source', citationOf(position.source).id, sources, ['positions', index, 'source']);
    const at = ['positions', index, 'value'];
    const published = value === undefined || value === 'none' ? undefined : subject?.read(value, at);
    seen.add(published?.said ?? value ?? says);
    if (published?.isKept !== false || itsRegion === undefined || !isWithin(region, itsRegion)) continue;
    const message = `\`${fixture.about}\` ${subject?.is}, the guidance of ${itsRegion} is ${published.said}`;
    return { code: 'E402', at, message };
  }
  if (seen.size > 1) return undefined;
  return {
    code: 'E402',
    at: ['positions'],
    message: 'these sources all say the same',
    help: 'write a limit or interval fixture',
  };
}

function subjectOf(id: string, rulebook: Rulebook): Subject {
  const limit = rulebook.limits.get(id);
  return limit === undefined ? taskSubject(known('E306', 'limit or task', id, rulebook.tasks, ['about'])) : limitSubject(limit);
}
