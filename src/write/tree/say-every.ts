import type { Rulebook } from '../../link/rulebook.js';
import { formatInterval, strictestInterval } from '../../measure/interval.js';

/** How often a task is done in this clinic: where its machines' makers differ, the strictest. */
export function sayEvery({ tasks, duties }: Pick<Rulebook, 'tasks' | 'duties'>, id: string): string | undefined {
  const task = tasks.get(id);
  const held = duties.flatMap((duty) => (duty.task === id && duty.every !== undefined ? [duty.every] : []));
  const every = held.length > 0 ? held.reduce(strictestInterval) : task?.every;
  return every === undefined ? undefined : formatInterval(every);
}
