import { isLooser } from '../link/link-limits.js';
import type { Limit, SetBy, Task } from '../link/rulebook.js';
import { formatInterval, isAtLeastAsOften } from '../measure/interval.js';
import { compareQuantities, dimensionOf, formatQuantity } from '../measure/quantity.js';
import { readPublished, readPublishedInterval } from './fixture-parts.js';

/** What a source speaks about by a value: a limit, or how often a task is done. */
export interface Subject {
  /** `limit \`id\``. */
  name: string;
  /** The layers that set it, oldest first. */
  chain: readonly SetBy[];
  /** Its value in force, as the end of a sentence that starts with its name: `is 10 minutes`. */
  is: string;
  /** What to say of a published value that it falls short of. */
  stricter: string;
  /** @throws FixtureError when the text is no such value. */
  read(text: string, at: (string | number)[]): Published;
}

/** A published value beside the rules. */
export interface Published {
  /** As printed. */
  said: string;
  /** Whether the value in force is at least as strict. */
  isKept: boolean;
  /** Whether a layer says something else; false where it says nothing. */
  differsFrom(entry: SetBy): boolean;
}

export function limitSubject(limit: Limit): Subject {
  return {
    name: `limit \`${limit.id}\``,
    chain: limit.chain,
    is: `is ${formatQuantity(limit.value)}`,
    stricter: `, and ${limit.stricter} is stricter`,
    read(text, at) {
      const published = readPublished(text, dimensionOf(limit.value), at);
      return {
        said: formatQuantity(published),
        isKept: !isLooser(limit, limit.value, published),
        differsFrom: ({ quantity }) => quantity !== undefined && compareQuantities(quantity, published) !== 0,
      };
    },
  };
}

export function taskSubject(task: Task): Subject {
  const { every: actual } = task;
  return {
    name: `task \`${task.id}\``,
    chain: task.chain,
    is: `is due ${actual === undefined ? 'only after events' : formatInterval(actual)}`,
    stricter: '',
    read(text, at) {
      const published = readPublishedInterval(text, at);
      return {
        said: formatInterval(published),
        isKept: actual !== undefined && isAtLeastAsOften(actual, published),
        differsFrom: ({ every }) =>
          every !== undefined && !(isAtLeastAsOften(every, published) && isAtLeastAsOften(published, every)),
      };
    },
  };
}
