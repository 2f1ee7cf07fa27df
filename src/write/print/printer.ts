import type { Manual } from '../write-manual.js';

/** Prints a manual in one format. The same manual always gives the same text. */
export interface Printer {
  format: string;
  /** Of the file, without a dot. */
  extension: string;
  print(manual: Manual): string | Promise<string>;
}
