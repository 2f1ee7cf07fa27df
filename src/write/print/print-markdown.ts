import remarkGfm from 'remark-gfm';
import remarkStringify from 'remark-stringify';
import { unified } from 'unified';
import type { Writing } from '../writing.js';
import { portableTree } from './markdown/portable-tree.js';

/** Prints a manual as plain GitHub Flavored Markdown, readable as it is. */
export function printMarkdown(manual: Writing): string {
  return printer.stringify(portableTree(manual));
}

const printer = unified()
  .use(remarkGfm, { tablePipeAlign: false })
  .use(remarkStringify, { bullet: '-', emphasis: '*', strong: '*', rule: '-', resourceLink: true })
  .freeze();
