import { referencesIn } from './references.js';
import type { Condition } from './rulebook.js';

/** What a step or a point says, whatever its words stand under. */
export interface Saying {
  words: string;
  why?: string;
  caution?: string;
  ifNot?: string;
  onlyWhen?: Condition;
}

/** What a replaced step or point no longer says: something it named, its caution, what to do otherwise, or some situations. */
export function lostBy(old: Saying, next: Saying): string[] {
  const said = ({ words, why, caution, ifNot }: Saying) =>
    referencesIn([words, why, caution, ifNot].join(' ')).map(({ scheme, id }) => `${scheme} \`${id}\``);
  const kept = said(next);
  return [
    ...said(old).filter((reference) => !kept.includes(reference)),
    ...(old.caution !== undefined && next.caution === undefined ? ['its caution'] : []),
    ...(old.ifNot !== undefined && next.ifNot === undefined ? ['what to do when it does not come out'] : []),
    ...(next.onlyWhen !== undefined && JSON.stringify(next.onlyWhen) !== JSON.stringify(old.onlyWhen) ? ['some situations'] : []),
  ];
}
