import { BorderStyle, type IParagraphStyleOptions, type IStylesOptions, LineRuleType } from 'docx';
import type { ManualMeta } from '../../model/model-title.js';
import { headingHang, listHang, lists } from './numbering.js';
import { mm } from './page.js';
import { tableStyles } from './table-styles.js';

/** Family of the embedded font. */
export const fontFamily = 'Source Sans 3';

/** Where the words stand beside the first bold word of a line that has it at its side, in twips. */
export const sideHang = mm(25);

type Style = Omit<IParagraphStyleOptions, 'name'> & { name: string };

/** Points as twips, for spacing. */
const pt = (points: number) => Math.round(points * 20);
/** Points as the half points in which sizes of letters are given. */
const size = (points: number) => Math.round(points * 2);
/** A line of so many points, with so many points of space. */
const line = (points: number, space = 1, color = '111111') => ({
  style: BorderStyle.SINGLE,
  size: Math.round(points * 8),
  space,
  color,
});

/** Space around a paragraph in points, and the height of its lines in parts of a normal one. */
const space = (before: number, after: number, height = 1.08) => ({
  spacing: { before: pt(before), after: pt(after), line: Math.round(240 * height), lineRule: LineRuleType.AUTO },
});

const gray = '777777';

/** All styles of the document, so that a clinic restyles it in one place. With `counted`, headings number themselves. */
export function stylesOf({ language }: Pick<ManualMeta, 'language'>, counted: boolean): IStylesOptions & { external: string } {
  return {
    external: tableStyles,
    default: {
      document: {
        run: { font: fontFamily, size: size(10.5), color: '111111', language: { value: language } },
        paragraph: { spacing: { after: pt(5), line: 259, lineRule: LineRuleType.AUTO } },
      },
      title: { run: { size: size(34), bold: true }, paragraph: { ...space(10, 6, 1) } },
      ...headings(counted),
      hyperlink: { run: { color: '111111' } },
      footnoteText: { run: { size: size(9) }, paragraph: { ...space(0, 2, 1) } },
      caption: { run: { size: size(9), italics: false, color: '333333' }, paragraph: { ...space(3, 8) } },
    },
    paragraphStyles: [...titlePage, ...contents, ...annexes(counted), ...text, ...cautions, ...inTables, ...inColumns, ...around],
    characterStyles: [
      { id: 'Code', name: 'Code', run: { font: 'Consolas' } },
      { id: 'MovedMark', name: 'Moved Mark', run: { italics: true, color: '444444' } },
    ],
  };
}

function headings(counted: boolean) {
  const numbered = (level: number) => ({
    indent: { left: headingHang, hanging: headingHang },
    ...(counted && { numbering: { reference: lists.chapters, level } }),
  });
  return {
    heading1: {
      quickFormat: true,
      run: { size: size(20), bold: true, color: '111111' },
      paragraph: {
        ...numbered(0),
        keepNext: true,
        keepLines: true,
        ...space(18, 8, 1),
        border: { top: line(2, 6) },
      },
    },
    heading2: {
      quickFormat: true,
      run: { size: size(14), bold: true, color: '111111' },
      paragraph: {
        ...numbered(1),
        keepNext: true,
        keepLines: true,
        ...space(16, 4, 1),
        border: { top: line(0.5, 4, gray) },
      },
    },
    heading3: {
      quickFormat: true,
      run: { size: size(11), bold: true, color: '111111' },
      paragraph: { keepNext: true, keepLines: true, ...space(10, 1, 1) },
    },
  };
}

/** Headings of annexes look like those of chapters and count in letters. */
function annexes(counted: boolean): Style[] {
  return [1, 2].map((depth) => ({
    id: `Annex${depth}`,
    name: `Annex ${depth}`,
    basedOn: `Heading${depth}`,
    next: 'Normal',
    quickFormat: true,
    paragraph: { outlineLevel: depth - 1, ...(counted && { numbering: { reference: lists.annexes, level: depth - 1 } }) },
  }));
}

const normal = { basedOn: 'Normal', quickFormat: true };

const titlePage: Style[] = [
  {
    ...normal,
    id: 'Clinic',
    name: 'Clinic',
    run: { size: size(14) },
    paragraph: { border: { top: line(4, 8) }, ...space(10, 4) },
  },
  { ...normal, id: 'Subtitle', name: 'Subtitle', run: { size: size(13), color: '333333' }, paragraph: { ...space(0, 40) } },
  {
    ...normal,
    id: 'CopyNote',
    name: 'Copy Note',
    run: { size: size(9.5) },
    paragraph: {
      border: { top: line(1, 6), bottom: line(1, 6), left: line(1, 8), right: line(1, 8) },
      indent: { left: mm(3.5), right: mm(3.5) },
      ...space(0, 0, 1.05),
      keepLines: true,
    },
  },
];

const contents: Style[] = [
  {
    id: 'TOCHeading',
    name: 'TOC Heading',
    basedOn: 'Normal',
    run: { size: size(16), bold: true },
    paragraph: { keepNext: true, ...space(0, 8) },
  },
  ...[1, 2].map(
    (level): Style => ({
      id: `TOC${level}`,
      name: `toc ${level}`,
      basedOn: 'Normal',
      next: 'Normal',
      uiPriority: 39,
      unhideWhenUsed: true,
      run: { bold: level === 1, size: size(9) },
      paragraph: {
        ...space(level === 1 ? 5 : 0, 0, 1),
        indent: { left: mm(14), hanging: mm(14) },
        keepNext: level === 1,
      },
    }),
  ),
];

const bySide = { indent: { left: sideHang, hanging: sideHang } };

const text: Style[] = [
  {
    ...normal,
    id: 'Lead',
    name: 'Lead',
    run: { size: size(11.5), color: '222222' },
    paragraph: { keepNext: true, keepLines: true },
  },
  { ...normal, id: 'Question', name: 'Question', run: { bold: true }, paragraph: { keepNext: true } },
  {
    ...normal,
    id: 'MinorHeading',
    name: 'Minor Heading',
    next: 'Normal',
    run: { bold: true },
    paragraph: { keepNext: true, ...space(9, 3) },
  },
  {
    ...normal,
    id: 'Opening',
    name: 'Opening',
    paragraph: {
      ...bySide,
      keepNext: true,
      keepLines: true,
      ...space(0, 0),
      border: { top: line(0.5, 3, gray), bottom: line(0.5, 3, gray) },
    },
  },
  { ...normal, id: 'Done', name: 'Done', paragraph: { ...bySide, keepLines: true, ...space(3, 3) } },
  { ...normal, id: 'ListBullet', name: 'List Bullet', paragraph: { keepLines: true, ...space(0, 3) } },
  { ...normal, id: 'ListNumber', name: 'List Number', paragraph: { keepLines: true, ...space(0, 3) } },
  { ...normal, id: 'ListContinue', name: 'List Continue', paragraph: { indent: { left: listHang }, ...space(0, 3) } },
  {
    ...normal,
    id: 'Answer',
    name: 'Answer',
    run: { bold: true },
    paragraph: { keepNext: true, keepLines: true, ...space(8, 3), border: { top: line(0.75, 3) } },
  },
  {
    ...normal,
    id: 'AnswerLine',
    name: 'Answer Line',
    run: { size: size(10) },
    paragraph: { keepLines: true, indent: { left: mm(5), hanging: mm(5) }, ...space(0, 3, 1.03) },
  },
  {
    ...normal,
    id: 'Note',
    name: 'Note',
    paragraph: { keepLines: true, indent: { left: mm(4) }, border: { left: line(0.5, 8, gray) } },
  },
  { ...normal, id: 'Why', name: 'Why', run: { italics: true, color: '444444' } },
  { ...normal, id: 'Figure', name: 'Figure', next: 'Caption', paragraph: { keepNext: true, ...space(6, 3, 1) } },
  {
    ...normal,
    id: 'TaskText',
    name: 'Task Text',
    run: { size: size(9.5) },
    paragraph: { keepLines: true, ...space(0, 2, 1.03) },
  },
  {
    ...normal,
    id: 'TaskNumber',
    name: 'Task Number',
    basedOn: 'TaskText',
    paragraph: { keepLines: true, ...space(0, 1) },
  },
];

/** The word and the body have different borders, so that one box ends where the next begins. */
const cautions: Style[] = [
  {
    ...normal,
    id: 'CautionWord',
    name: 'Caution Word',
    next: 'Caution',
    run: { bold: true, allCaps: true, size: size(9), characterSpacing: 10 },
    paragraph: {
      keepNext: true,
      keepLines: true,
      indent: { left: mm(4), right: mm(3) },
      ...space(8, 0),
      border: { top: line(0.75, 4), left: line(3, 8), right: line(0.75, 8) },
    },
  },
  {
    ...normal,
    id: 'Caution',
    name: 'Caution',
    paragraph: {
      keepLines: true,
      indent: { left: mm(4), right: mm(3) },
      ...space(0, 4),
      border: { left: line(3, 8), right: line(0.75, 8), bottom: line(0.75, 4) },
    },
  },
  {
    ...normal,
    id: 'CautionLine',
    name: 'Caution Line',
    paragraph: { keepNext: true, keepLines: true, ...space(0, 2), border: { left: line(3, 4) } },
  },
];

const cell = space(0, 0, 1);

const inTables: Style[] = [
  { ...normal, id: 'TableText', name: 'Table Text', run: { size: size(9.5) }, paragraph: cell },
  { ...normal, id: 'TableHead', name: 'Table Head', basedOn: 'TableText', run: { bold: true }, paragraph: { keepNext: true } },
  {
    ...normal,
    id: 'TableGroup',
    name: 'Table Group',
    basedOn: 'TableText',
    run: { bold: true, size: size(10) },
    paragraph: { keepNext: true, ...space(5, 0, 1) },
  },
  { ...normal, id: 'TableSmall', name: 'Table Small', basedOn: 'TableText', run: { size: size(8.5) } },
  { ...normal, id: 'SheetText', name: 'Sheet Text', run: { size: size(8.5) }, paragraph: space(3, 3, 1) },
  { ...normal, id: 'SheetHead', name: 'Sheet Head', basedOn: 'TableText', run: { bold: true, size: size(8.5) } },
];

/** Heads and feet, and the paragraphs that hold nothing. */
const around: Style[] = [
  {
    id: 'Header',
    name: 'header',
    basedOn: 'Normal',
    run: { size: size(8.5), color: '333333' },
    paragraph: { ...space(0, 0, 1), border: { bottom: line(0.25, 3, gray) } },
  },
  { id: 'Footer', name: 'footer', basedOn: 'Normal', run: { size: size(8.5), color: '333333' }, paragraph: space(0, 0, 1) },
  {
    id: 'Gap',
    name: 'Gap',
    basedOn: 'Normal',
    run: { size: size(4) },
    paragraph: { spacing: { before: 0, after: 0, line: pt(5), lineRule: LineRuleType.EXACT } },
  },
];

const inColumns: Style[] = [
  {
    ...normal,
    id: 'Entry',
    name: 'Entry',
    run: { size: size(8.5) },
    paragraph: { keepLines: true, indent: { left: mm(4), hanging: mm(4) }, ...space(0, 2, 1) },
  },
  {
    ...normal,
    id: 'EntryHeading',
    name: 'Entry Heading',
    basedOn: 'Entry',
    next: 'Entry',
    run: { bold: true },
    paragraph: { keepNext: true, indent: { left: 0, hanging: 0 }, ...space(6, 2) },
  },
];
