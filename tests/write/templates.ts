import { readdirSync, readFileSync } from 'node:fs';
import type { Templates } from '../../src/write/text/fill-template.js';

const folder = new URL('../../templates/manual/', import.meta.url);

/** The templates of the tool. */
export const templates: Templates = new Map(
  readdirSync(folder)
    .filter((name) => name.endsWith('.hbs'))
    .map((name) => [`manual/${name.replace(/\.hbs$/, '')}`, readFileSync(new URL(name, folder), 'utf8')]),
);
