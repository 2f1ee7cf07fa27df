import type { Rulebook } from '../link/rulebook.js';

/** What every emitted file says about where it comes from. */
export interface Head {
  title: string;
  clinic: string;
  version: string;
  /** The day for which values were chosen. */
  on: string;
  digest: string;
}

export function headOf({ clinic, on, digest }: Rulebook): Head {
  return { title: clinic.document.title, clinic: clinic.name, version: clinic.document.version, on, digest };
}
