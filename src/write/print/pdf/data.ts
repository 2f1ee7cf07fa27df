/** The data that the template `templates/print/writing.typ` lays out. All texts are plain: nothing in them is markup. */

/** Words: texts, and pieces with a meaning. */
export type Words = Piece[];

export type Piece =
  | string
  | { t: 'strong' | 'em' | 'inserted' | 'deleted'; c: Words }
  | { t: 'break' }
  /** An address outside of the writing. */
  | { t: 'url'; url: string; c: Words }
  /** A place of the writing; `page` is what stands before and behind the number of its page. */
  | { t: 'to'; to: string; titled: boolean; page?: [string, string]; c: Words }
  /** The place that an anchor names. */
  | { t: 'here'; anchor: string }
  | { t: 'footnote'; paragraphs: Words[] };

export type Change = 'inserted' | 'deleted' | 'moved';

export interface HeadingData {
  t: 'heading';
  level: number;
  number: string | null;
  anchor: string | null;
  c: Words;
}

/** A label and what stands beside it. */
export interface Row {
  anchor: string | null;
  change: Change | null;
  /** Whether it is short enough to stay on one page. */
  keep: boolean;
  /** Whether its list has many short lines: they stand in two columns below the label. */
  dense: boolean;
  name: Words;
  blocks: Block[];
}

export interface Item {
  anchor: string | null;
  change: Change | null;
  keep: boolean;
  /** Its words, where it is a single paragraph; else its blocks. */
  c: Words | null;
  blocks: Block[];
}

export interface TableData {
  t: 'table';
  look: string;
  /** Share of each column in the width. */
  widths: number[];
  align: (string | null)[];
  head: Words[];
  rows: TableRowData[];
}

export interface TableRowData {
  anchor: string | null;
  change: Change | null;
  keep: boolean;
  /** Whether it names the rows below it. */
  group: boolean;
  cells: Words[];
}

/** A blank sheet: its table is as high as the page has room for. */
export interface SheetData {
  heading: HeadingData | null;
  before: Block[];
  table: TableData;
  after: Block[];
}

export type Block = { change?: Change } & (
  | HeadingData
  | TableData
  /** `leads` is true where it belongs to what follows and stays with it; so in lists. */
  | { t: 'paragraph'; is: string | null; leads: boolean; c: Words }
  | { t: 'labelled'; keep: boolean; name: Words; c: Words }
  | { t: 'list'; ordered: boolean; start: number; leads: boolean; items: Item[] }
  | { t: 'here'; anchor: string }
  | { t: 'figure'; svg: string; alt: string; caption: string }
  | { t: 'caution' | 'quote' | 'titlepage'; blocks: Block[] }
  | { t: 'note'; keep: boolean; blocks: Block[] }
  | { t: 'rule' | 'contents' }
  | { t: 'opening'; rows: { name: Words; c: Words }[] }
  /** `narrow` is true where all labels are short. */
  | { t: 'rows'; look: 'answers' | 'terms' | 'trace'; narrow: boolean; rows: Row[] }
  | { t: 'task'; keep: boolean; heading: HeadingData; often: Block[]; blocks: Block[] }
  | { t: 'part'; landscape: boolean; heading: HeadingData; blocks: Block[] }
  | { t: 'sheets'; landscape: boolean; half: boolean; intro: Block[]; sheets: SheetData[] }
);

/** Chapters that share a run of pages. */
export interface Run {
  /** At the head of these pages, at the right. */
  head: string | null;
  /** At the foot of a card; empty where it says nothing of its own. */
  foot: Words;
  blocks: Block[];
}

/** What holds for all pages. */
export interface DocumentData {
  kind: string;
  paper: 'a4' | 'a5' | 'us-letter';
  title: string;
  author: string;
  /** Year, month and day. */
  date: [number, number, number];
  lang: string;
  region: string | null;
  /** Head of the page, at the left. */
  head: string;
  /** Number, version and day, at the foot of the page. */
  control: string;
  uncontrolled: string;
  words: {
    contents: string;
    caution: string;
    inserted: string;
    deleted: string;
    moved: string;
    /** What stands before the number of the page, between it and the number of pages, and behind that. */
    'page-of': [string, string, string];
  };
  /** Sizes of type for cards, in points, the largest first. */
  'type-sizes': number[];
  /** Number of runs. */
  runs: number;
}
