import { printDocx } from './print-docx.js';
import { printHtml } from './print-html.js';
import { printMarkdown } from './print-markdown.js';
import { printPdf } from './print-pdf.js';
import type { Printer } from './printer.js';

/** All printers. */
export const printers: readonly Printer[] = [
  { format: 'Markdown', extension: 'md', print: printMarkdown },
  { format: 'HTML', extension: 'html', print: printHtml },
  { format: 'Word', extension: 'docx', print: printDocx },
  { format: 'PDF', extension: 'pdf', print: printPdf },
];
