import { toString as textOf } from 'mdast-util-to-string';
import type { Finding } from '../../read/finding.js';
import type { Writing } from '../writing.js';
import type { Assets } from './assets.js';
import { CannotPrint } from './cannot-print.js';
import { drawAll } from './html/draw-all.js';
import { documentOf } from './pdf/document.js';
import { inkFor } from './pdf/ink.js';
import { findMissingSigns } from './pdf/missing-signs.js';
import { layOut } from './pdf/press.js';
import { runsOf } from './pdf/runs.js';

/**
 * Prints a writing as PDF after PDF/UA-1: tagged, with bookmarks, page numbers in contents and references, and its fonts
 * inside.
 *
 * @throws CannotPrint when the fonts lack a sign of it, or a card is longer than its page.
 */
export async function printPdf(writing: Writing, assets: Assets): Promise<Uint8Array> {
  const ink = inkFor(writing, await drawAll(writing.tree));
  const runs = runsOf(writing, ink);
  const pages = layOut(documentOf(writing, runs.length), runs, assets);
  if (pages.tooLong.length > 0) throw new CannotPrint(pages.tooLong.map((index) => tooLong(writing, index)));
  const made = pages.toPdf();
  if ('missing' in made) throw new CannotPrint(findMissingSigns(writing, made.missing));
  return made.bytes;
}

function tooLong({ tree }: Writing, index: number): Finding {
  const titles = tree.children.flatMap((node) => (node.type === 'heading' && node.depth === 1 ? [textOf(node).trim()] : []));
  return {
    code: 'E612',
    message: `the card \`${titles[index] ?? index + 1}\` does not fit its page`,
    place: { file: 'cards', line: 1, column: 1 },
    help: 'say it in fewer words, make two cards of it, or print it on larger paper',
  };
}
