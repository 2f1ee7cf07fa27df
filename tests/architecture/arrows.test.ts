import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const src = fileURLToPath(new URL('../../src/', import.meta.url));

/** The boxes of the drawing in DEVELOPERS.md, top to bottom: a folder may import those above it. */
const boxes = ['measure', 'read', 'link', 'decide', 'analyse', 'check', 'emit', 'write', 'change', 'cli'];
const mayTouchTheWorld = ['cli'];

const files = readdirSync(src, { recursive: true, encoding: 'utf8' }).filter((file) => file.endsWith('.ts'));

describe('the folders of src', () => {
  it('are the boxes of the drawing', () => {
    expect(readdirSync(src).sort()).toEqual([...boxes].sort());
    expect(files.length).toBeGreaterThan(40);
  });

  it.each(files)('%s imports only what stands above it', (file) => {
    const box = file.split('/')[0] ?? '';
    for (const [, path = ''] of readFileSync(src + file, 'utf8').matchAll(/from '(\.[^']+)'/g)) {
      const target = new URL(path, `file:///${file}`).pathname.slice(1).split('/')[0] ?? '';
      expect(boxes.indexOf(target), `${file} imports ${path}`).toBeLessThanOrEqual(boxes.indexOf(box));
    }
  });

  it.each(files.filter((file) => !mayTouchTheWorld.includes(file.split('/')[0] ?? '')))(
    '%s touches neither disk nor clock nor network nor process',
    (file) => {
      const text = readFileSync(src + file, 'utf8');
      for (const forbidden of [
        /from 'node:(fs|child_process|http|https|net|os|process)/,
        /\bDate\.now\(/,
        /\bnew Date\(\)/,
        /\bprocess\./,
        /\bMath\.random\(/,
        /\bfetch\(/,
      ])
        expect(text).not.toMatch(forbidden);
    },
  );
});
