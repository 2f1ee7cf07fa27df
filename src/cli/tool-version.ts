import { readFileSync } from 'node:fs';

/** The version of the tool. */
export const toolVersion = (
  JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8')) as { version: string }
).version;
