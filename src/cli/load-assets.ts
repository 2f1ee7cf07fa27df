import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { Resvg } from '@resvg/resvg-js';
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
  const sans = (face: string) => resolve(`source-sans/TTF/SourceSans3-${face}.ttf`);
  const files = {
    regular: sans('Regular'),
    italic: sans('It'),
    bold: sans('Bold'),
    boldItalic: sans('BoldIt'),
    symbols: resolve('dejavu-fonts-ttf/ttf/DejaVuSans.ttf'),
  };
  const font = { loadSystemFonts: false, fontFiles: Object.values(files), defaultFontFamily: 'Source Sans 3' };
  return {
    fonts: {
      regular: readFileSync(files.regular),
      italic: readFileSync(files.italic),
      bold: readFileSync(files.bold),
      boldItalic: readFileSync(files.boldItalic),
      symbols: readFileSync(files.symbols),
    },
    paint: (svg, width) => new Resvg(svg, { font, background: '#fff', fitTo: { mode: 'width', value: width } }).render().asPng(),
    typst: readFileSync(join(home, 'templates/print/writing.typ'), 'utf8'),
    script: readFileSync(join(home, 'templates/print/page.js'), 'utf8'),
  };
}
