import { AlignmentType, type ILevelsOptions, LevelFormat, LevelSuffix } from 'docx';
import type { Section } from '../../tree/nodes.js';
import { mm } from './page.js';

type Format = NonNullable<ILevelsOptions['format']>;

/** Names of the lists that paragraphs count in. */
export const lists = { chapters: 'chapters', annexes: 'annexes', steps: 'steps', bullets: 'bullets' } as const;

/** Where the words of a numbered heading begin, in twips. */
export const headingHang = mm(16);

/** Where the words of a list item begin at each depth, in twips. */
export const listHang = mm(8);

/** Deepest level of a list. */
export const deepestLevel = 3;

/** The lists that Word counts by itself: chapters `1`, `1.1`, annexes `A`, `A.1`, steps and bullets. */
export function numberingOf(): { reference: string; levels: ILevelsOptions[] }[] {
  return [
    { reference: lists.chapters, levels: headingLevels(LevelFormat.DECIMAL, ['Heading1', 'Heading2']) },
    { reference: lists.annexes, levels: headingLevels(LevelFormat.UPPER_LETTER, ['Annex1', 'Annex2']) },
    {
      reference: lists.steps,
      levels: eachDepth((level) => ({ format: LevelFormat.DECIMAL, text: `%${level + 1}`, bold: true })),
    },
    { reference: lists.bullets, levels: eachDepth(() => ({ format: LevelFormat.BULLET, text: '•', bold: false })) },
  ];
}

function headingLevels(first: Format, styles: readonly [string, string]): ILevelsOptions[] {
  return styles.map((style, level) => ({
    level,
    format: level === 0 ? first : LevelFormat.DECIMAL,
    text: level === 0 ? '%1' : '%1.%2',
    alignment: AlignmentType.START,
    suffix: LevelSuffix.TAB,
    style: { style, paragraph: { indent: { left: headingHang, hanging: headingHang } } },
  }));
}

function eachDepth(look: (level: number) => { format: Format; text: string; bold: boolean }): ILevelsOptions[] {
  return Array.from({ length: deepestLevel + 1 }, (_, level) => {
    const { bold, ...shape } = look(level);
    const indent = { left: listHang * (level + 1), hanging: listHang };
    return { level, ...shape, alignment: AlignmentType.START, style: { run: { bold }, paragraph: { indent } } };
  });
}

/**
 * Whether counting headings in order gives the numbers they have. Then Word counts by itself, and a chapter that is added
 * renumbers those after it; otherwise the numbers are printed as words.
 */
export function countsByItself(sections: readonly Pick<Section, 'number' | 'depth'>[]): boolean {
  let [chapter, part, annexes] = [0, 0, false];
  return sections.every(({ number, depth }) => {
    if (depth === 1) [chapter, part] = [isAnnex(number) && !annexes ? 1 : chapter + 1, 0];
    else part += 1;
    annexes ||= isAnnex(number);
    const head = annexes ? String.fromCharCode(64 + chapter) : String(chapter);
    return number === (depth === 1 ? head : `${head}.${part}`);
  });
}

/** Whether a heading with this number belongs to the annexes. */
export function isAnnex(number: string): boolean {
  return /^[A-Z]/.test(number);
}
