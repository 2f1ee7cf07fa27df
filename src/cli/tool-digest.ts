import { digestOf } from '../change/lock.js';
import { loadAssets } from './load-assets.js';
import { loadTemplates } from './load-manual.js';

/** The digest of all templates and fonts that manuals are printed with. */
export function toolDigest(): string {
  const { fonts, typst, script } = loadAssets();
  const parts = [
    ...[...loadTemplates()].map(([name, text]) => `${digestOf(text)}  ${name}`),
    ...Object.entries(fonts).map(([name, bytes]) => `${digestOf(bytes)}  ${name}`),
    `${digestOf(typst)}  typst`,
    `${digestOf(script)}  script`,
  ];
  return digestOf(parts.join('\n'));
}
