import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const src = fileURLToPath(new URL('../../src/', import.meta.url));

/** Every code that the sources can report, in order. */
export function codesReported(): string[] {
  const files = readdirSync(src, { recursive: true, encoding: 'utf8' }).filter((file) => file.endsWith('.ts'));
  const codes = files.flatMap((file) =>
    [...readFileSync(join(src, file), 'utf8').matchAll(/'([EW]\d{3})'/g)].map(([, code = '']) => code),
  );
  return [...new Set(codes)].sort();
}
