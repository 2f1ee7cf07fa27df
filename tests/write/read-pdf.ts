import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** What a PDF file says of itself. */
export interface ReadPdf {
  pages: ReadPage[];
  title: string | undefined;
  /** Metadata as XML. */
  metadata: string;
  language: string | undefined;
  tagged: boolean;
  bookmarks: Bookmark[];
  /** Names of its fonts, and whether each is inside the file. */
  fonts: Map<string, boolean>;
}

export interface ReadPage {
  /** In points. */
  width: number;
  height: number;
  /** Its text in reading order, lines joined with spaces. */
  text: string;
  tags: Tag[];
  /** Number of lines that are drawn. */
  lines: number;
  /** Whether some text runs off the page. */
  overflows: boolean;
}

/** A structure element of a tagged page. */
export interface Tag {
  role: string;
  alt?: string | undefined;
}

export interface Bookmark {
  title: string;
  items: Bookmark[];
}

interface Structure {
  role?: string;
  alt?: string;
  children?: Structure[];
}

/** Reads a PDF file with another library than the one that wrote it. */
export async function readPdf(bytes: Uint8Array): Promise<ReadPdf> {
  const document = await getDocument({ data: Uint8Array.from(bytes), verbosity: 0 }).promise;
  const { info, metadata } = await document.getMetadata();
  const [pages, fonts]: [ReadPage[], Map<string, boolean>] = [[], new Map()];
  for (let number = 1; number <= document.numPages; number += 1) {
    const page = await document.getPage(number);
    const [, , width = 0, height = 0] = page.view;
    const { items } = await page.getTextContent();
    const text = items.map((item) => ('str' in item ? item.str + (item.hasEOL ? ' ' : '') : '')).join('');
    const overflows = items.some((item) => 'str' in item && Number(item.transform[4]) + item.width > width);
    const { fnArray, argsArray } = await page.getOperatorList();
    const lines = fnArray.filter((each, index) => each === OPS.constructPath && argsArray[index]?.[0] === OPS.stroke).length;
    const tags = tagsOf((await page.getStructTree()) as Structure | null);
    pages.push({ width, height, text: text.replace(/\s+/g, ' '), tags, lines, overflows });
    for (const item of items) {
      if (!('str' in item) || !page.commonObjs.has(item.fontName)) continue;
      const font = page.commonObjs.get(item.fontName) as { name: string; missingFile?: boolean };
      fonts.set(font.name.replace(/^[A-Z]{6}\+/, ''), font.missingFile !== true);
    }
  }
  const catalog = (info as { Title?: string; Language?: string }) ?? {};
  const read: ReadPdf = {
    pages,
    title: catalog.Title,
    metadata: metadata?.getRaw() ?? '',
    language: catalog.Language,
    tagged: (await document.getMarkInfo())?.Marked === true,
    bookmarks: bookmarksOf((await document.getOutline()) ?? []),
    fonts,
  };
  await document.destroy();
  return read;
}

function bookmarksOf(outline: readonly { title: string; items: unknown[] }[]): Bookmark[] {
  return outline.map(({ title, items }) => ({ title, items: bookmarksOf(items as { title: string; items: unknown[] }[]) }));
}

function tagsOf(structure: Structure | null): Tag[] {
  if (structure === null) return [];
  const own = structure.role === undefined ? [] : [{ role: structure.role, alt: structure.alt }];
  return [...own, ...(structure.children ?? []).flatMap(tagsOf)];
}
