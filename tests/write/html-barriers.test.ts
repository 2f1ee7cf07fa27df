import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { loadAssets } from '../../src/cli/load-assets.js';
import { manualOf } from '../../src/cli/load-manual.js';
import { printHtml } from '../../src/write/print/print-html.js';
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
  return { page, asked, refused };
}

describe('the manual of a clinic in a browser', () => {
  let html = '';
  beforeAll(async () => {
    html = await printHtml(manualOf(sampleRulebook('harrow-mills')), loadAssets());
  }, 60_000);

  it('holds no barrier on a desk, and asks for nothing', async () => {
    const { page, asked, refused } = await open(html, 1280);
    expect(await findBarriers(page)).toEqual([]);
    expect(asked.filter((url) => !url.startsWith('data:font/woff2'))).toEqual([]);
    expect(refused).toEqual([]);
    expect(await page.evaluate("[...document.fonts].filter(({ status }) => status === 'error').length")).toBe(0);
    expect(await page.evaluate('document.fonts.check(\'16px "Rulebook Sans"\')')).toBe(true);
  });

  it('holds no barrier on a telephone, is no wider than it, and lets the keyboard scroll wide tables', async () => {
    const { page } = await open(html, 390);
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBe(390);
    await page.locator('.tablebox[tabindex="0"]').first().waitFor();
    expect(await findBarriers(page)).toEqual([]);
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
