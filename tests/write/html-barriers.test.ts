import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { loadAssets } from '../../src/cli/load-assets.js';
import { loadTemplates, manualOf } from '../../src/cli/load-manual.js';
import { toolVersion } from '../../src/cli/tool-version.js';
import type { Rulebook } from '../../src/link/rulebook.js';
import { printHtml } from '../../src/write/print/print-html.js';
import { writeCards } from '../../src/write/write-cards.js';
import { writeForms } from '../../src/write/write-forms.js';
import type { Writing } from '../../src/write/writing.js';
import { findBarriers } from '../tools/axe.js';
import { findChromium, startChromium } from '../tools/chromium.js';
import { sampleRulebook } from '../tools/sample-rulebook.js';
import { changedWriting } from './changed-writing.js';

const browser = await startChromium();
afterAll(() => browser.close());

/** A page of this width, and what it asked for. */
async function open(html: string, width: number) {
  const page = await browser.newPage({ viewport: { width, height: 844 } });
  const asked: string[] = [];
  const refused: string[] = [];
  page.on('request', (request) => asked.push(request.url()));
  page.on('console', (message) => refused.push(message.text()));
  page.on('pageerror', (error) => refused.push(error.message));
  await page.setContent(html);
  await page.evaluate('new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))');
  return { page, asked, refused };
}

let rulebook: Rulebook;
let manual: Writing;
beforeAll(() => {
  rulebook = sampleRulebook('harrow-mills');
  manual = manualOf(rulebook);
}, 60_000);

describe('the manual of a clinic in a browser', () => {
  it('holds no barrier on a desk, and asks for nothing', async () => {
    const { page, asked, refused } = await open(await printHtml(manual, loadAssets()), 1280);
    expect(await findBarriers(page)).toEqual([]);
    expect(asked.filter((url) => !url.startsWith('data:font/woff2'))).toEqual([]);
    expect(refused).toEqual([]);
    expect(await page.evaluate("[...document.fonts].filter(({ status }) => status === 'error').length")).toBe(0);
    expect(await page.evaluate('document.fonts.check(\'16px "Rulebook Sans"\')')).toBe(true);
  });

  it('holds no barrier on a telephone, is no wider than it, and lets the keyboard scroll wide tables', async () => {
    const { page } = await open(await printHtml(manual, loadAssets()), 390);
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBe(390);
    await page.locator('.tablebox[tabindex="0"]').first().waitFor();
    expect(await findBarriers(page)).toEqual([]);
  });
});

describe('what else a clinic prints, in a browser', () => {
  it.each(['cards', 'forms'] as const)('holds no barrier: %s', async (kind) => {
    const input = { rulebook, templates: loadTemplates(), tool: toolVersion, manual };
    const html = await printHtml(kind === 'cards' ? writeCards(input) : writeForms(input), loadAssets());
    const { page, refused } = await open(html, 1280);
    expect(await page.locator('section.chapter').count()).toBeGreaterThan(1);
    expect(await findBarriers(page)).toEqual([]);
    expect(refused).toEqual([]);
    const astray = '[...document.links].filter(({ hash }) => !document.getElementById(hash.slice(1))).map(String)';
    expect(await page.evaluate(astray)).toEqual([]);
  });
});

describe('a redline in a browser', () => {
  it('holds no barrier', async () => {
    const { page } = await open(await printHtml(changedWriting(), loadAssets()), 1280);
    expect(await page.locator('.changed').count()).toBeGreaterThan(20);
    expect(await findBarriers(page)).toEqual([]);
  });
});

describe('without a browser', () => {
  it('says what to install', () => {
    expect(() => findChromium('/nowhere/chromium')).toThrow(/^no Chromium here: `apt-get install chromium`, or set CHROME_PATH/);
    expect(() => findChromium(undefined, [])).toThrow('CHROME_PATH');
  });
});
