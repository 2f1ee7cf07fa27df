import type { SectionText } from '../write/tree/section-texts.js';

/** The printed text of a manual, section by section in the order of its pages: what later versions are compared with. */
export interface FrozenText {
  format: 'clinic-rulebook/text/1';
  /** Version of the manual. */
  version: string;
  sections: (SectionText & { id: string })[];
}

/** Freezes the texts of a manual's sections. */
export function freezeText(version: string, sections: ReadonlyMap<string, SectionText>): FrozenText {
  return {
    format: 'clinic-rulebook/text/1',
    version,
    sections: [...sections].map(([id, section]) => ({ id, ...section })),
  };
}
