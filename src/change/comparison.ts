import { type Impact, impactOf } from '../analyse/impact.js';
import type { Rulebook } from '../link/rulebook.js';
import { type SectionText, sectionTexts } from '../write/tree/section-texts.js';
import type { Writing } from '../write/writing.js';
import { compareTexts, type SectionChange } from './compare-texts.js';
import { type FrozenText, freezeText } from './frozen-text.js';
import { type PracticeChange, practiceChanges, type ScheduleChange, scheduleChanges } from './practice.js';

/** A manual as it was released: what it was made from, and what it printed. */
export interface Released {
  rulebook: Rulebook;
  text: FrozenText;
}

/** All that changed since a release: in the answers, in practice, in the schedules, and on the pages. */
export interface Comparison {
  before: Rulebook;
  after: Rulebook;
  impact: Impact;
  practice: PracticeChange[];
  schedules: ScheduleChange[];
  sections: SectionChange[];
}

/** Compares a manual, as it is now, with its last release. */
export function compareWithRelease(released: Released, after: Rulebook, manual: Writing): Comparison {
  const { rulebook: before, text } = released;
  const impact = impactOf(before, after);
  return {
    before,
    after,
    impact,
    practice: practiceChanges(before, after, impact),
    schedules: scheduleChanges(before, after),
    sections: compareTexts(text, textOf(manual)),
  };
}

/** Whether nothing at all differs: no word of a page, no answer, no schedule. */
export function isSame({ practice, schedules, sections }: Comparison): boolean {
  return practice.length === 0 && schedules.length === 0 && sections.every(({ fate }) => fate === 'same');
}

/** The texts of a manual, frozen. */
export function textOf(manual: Writing): FrozenText {
  return freezeText(manual.meta.version, textsOf(manual));
}

function textsOf({ tree, sections }: Writing): ReadonlyMap<string, SectionText> {
  return sectionTexts({ tree, sections });
}
