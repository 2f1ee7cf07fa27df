import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import type { Assets } from '../write/print/assets.js';
import { home } from './load-rulebook.js';

/** Reads the fonts and the template of PDF files; once in a process. */
export function loadAssets(): Assets {
  loaded ??= read();
  return loaded;
}

let loaded: Assets | undefined;

function read(): Assets {
  const { resolve } = createRequire(import.meta.url);
  const font = (path: string): Uint8Array => readFileSync(resolve(path));
  const sans = (face: string) => font(`source-sans/TTF/SourceSans3-${face}.ttf`);
  return {
    fonts: {
      regular: sans('Regular'),
      italic: sans('It'),
      bold: sans('Bold'),
      boldItalic: sans('BoldIt'),
      symbols: font('dejavu-fonts-ttf/ttf/DejaVuSans.ttf'),
    },
    typst: readFileSync(join(home, 'templates/print/writing.typ'), 'utf8'),
    script: readFileSync(join(home, 'templates/print/search.js'), 'utf8'),
  };
}
