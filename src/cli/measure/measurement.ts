import type { Options } from './read-options.js';
import type { Report } from './report.js';

/** One thing to measure from quantities: how it is called, and what it answers. */
export interface Measurement {
  about: string;
  /** Positional arguments, as commander writes them. */
  args: string[];
  options: [flags: string, description: string][];
  example: string;
  run: (args: readonly string[], options: Options) => Report;
}
