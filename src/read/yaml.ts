import { createRequire } from 'node:module';

let loaded: typeof import('yaml') | undefined;

/** The parser of YAML. It is loaded when a file is first parsed: documents that were kept need none. */
export function yaml(): typeof import('yaml') {
  loaded ??= createRequire(import.meta.url)('yaml') as typeof import('yaml');
  return loaded;
}
