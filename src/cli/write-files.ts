import { mkdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

/** Writes files so that each is either whole or as it was: beside its place first, then renamed. */
export function writeFiles(folder: string, files: ReadonlyMap<string, string | Uint8Array>): void {
  const waiting: { from: string; to: string }[] = [];
  try {
    for (const [name, text] of files) {
      const to = join(folder, name);
      const from = `${to}.part`;
      mkdirSync(dirname(to), { recursive: true });
      waiting.push({ from, to });
      writeFileSync(from, text);
    }
    for (const { from, to } of waiting) renameSync(from, to);
  } finally {
    for (const { from } of waiting) rmSync(from, { force: true });
  }
}
