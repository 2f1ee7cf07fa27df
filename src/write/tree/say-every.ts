import type { Rulebook } from '../../link/rulebook.js';
import { strictestInterval } from '../../measure/interval.js';
import { sayInterval } from '../text/say-interval.js';

/** How often a task is done in this clinic: where its machines' makers differ, the strictest. */
export function sayEvery(rulebook: Rulebook, id: string): string | undefined {
  const { tasks, duties } = rulebook;
  const task = tasks.get(id);
  const held = duties.flatMap((duty) => (duty.task === id && duty.every !== undefined ? [duty.every] : []));
  const every = held.length > 0 ? held.reduce(strictestInterval) : task?.every;
  return every === undefined ? undefined : sayInterval(rulebook, every);
}
