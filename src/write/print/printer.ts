import type { Writing } from '../writing.js';
import type { Assets } from './assets.js';

/** Prints a writing in one format. The same writing always gives the same bytes. */
export interface Printer {
  format: string;
  /** Of the file, without a dot. */
  extension: string;
  print(writing: Writing, assets: Assets): Printed | Promise<Printed>;
}

/** The content of a file: text, or bytes. */
export type Printed = string | Uint8Array;
