import type { Page } from 'playwright-core';
import { afterAll, beforeEach, describe, expect, it } from 'vitest';
import { loadAssets } from '../../src/cli/load-assets.js';
import { printHtml } from '../../src/write/print/print-html.js';
import { startChromium } from '../tools/chromium.js';
import { writingOf } from './writing-of.js';

const markdown = `
:::::titlepage
[](is:title)Manual
:::::

::contents

# Cleaning [](id:section:cleaning)

## Load the washer [](id:procedure:load)

Débris stays off the rack.

1. Lock each cassette.

2. Turn the arm of the rack.

## Empty the washer [](id:procedure:empty)

Nothing about it.

# Words [](id:section:words)

| Word | Means |
| --- | --- |
| Rack | What holds the load of the washer. Größe: 10 mm |
`;
const html = await printHtml(writingOf(markdown), loadAssets());
const browser = await startChromium();
afterAll(() => browser.close());

let page: Page;
beforeEach(async () => {
  await page?.close();
  page = await browser.newPage({ viewport: { width: 1280, height: 700 } });
  await page.setContent(html);
});

/** Types into the field and waits for the count to be this. */
async function search(words: string, count: string) {
  await page.locator('#search').fill('');
  await page.locator('.found:empty').waitFor({ state: 'attached' });
  await page.locator('#search').fill(words);
  await page.getByText(count, { exact: true }).waitFor();
}

const hits = () => page.locator('.hits a .where').allTextContents();

describe('search within the page', () => {
  it('lists the sections that hold all words, headings first, and says how many', async () => {
    await search('rack', '2 sections found');
    expect(await hits()).toEqual(['1.1 Load the washer', '2 Words']);
    await search('washer load', '2 sections found');
    expect(await hits()).toEqual(['1.1 Load the washer', '2 Words']);
    await search('empty rack', 'Nothing found');
    expect(await hits()).toEqual([]);
    await search('Cassette', '1 section found');
    expect(await page.locator('.found').getAttribute('role')).toBe('status');
  });

  it('takes capitals, accents and letters of other alphabets for the plain ones', async () => {
    await search('DEBRIS', '1 section found');
    expect(await page.locator('.snippet mark').allTextContents()).toEqual(['Débris']);
    await search('grosse', '1 section found');
    expect(await page.locator('.snippet mark').allTextContents()).toEqual(['Größe']);
  });

  it('shows the contents of the hit, and marks every match there and in the text', async () => {
    await search('rack', '2 sections found');
    expect(await page.locator('.hits .snippet').allTextContents()).toEqual([
      'Débris stays off the rack.',
      'Rack · What holds the load of the washer. Größe: 10 mm',
    ]);
    expect(await page.evaluate("[...CSS.highlights.get('found')].map(String)")).toEqual(['rack', 'rack', 'Rack']);
    await search('zzz', 'Nothing found');
    expect(await page.evaluate("CSS.highlights.has('found')")).toBe(false);
  });

  it('stands in the place of the contents until it is cleared with Escape', async () => {
    const contents = page.locator('nav.contents');
    await search('rack', '2 sections found');
    expect(await contents.isVisible()).toBe(false);
    await page.keyboard.press('Escape');
    expect(await page.locator('#search').inputValue()).toBe('');
    expect(await page.locator('.found').textContent()).toBe('');
    expect(await hits()).toEqual([]);
    expect(await contents.isVisible()).toBe(true);
    expect(await page.evaluate('document.activeElement.id')).toBe('search');
  });

  it('is reached with a slash, and leads on with Enter', async () => {
    await page.keyboard.press('/');
    await page.keyboard.type('1/2 cassette');
    expect(await page.locator('#search').inputValue()).toBe('1/2 cassette');
    await search('arm', '1 section found');
    await page.keyboard.press('Enter');
    expect(await page.evaluate('[location.hash, document.activeElement.id]')).toEqual(['#procedure-load', 'procedure-load']);
  });

  it('leads to the heading of a hit with the match in view', async () => {
    await page.setViewportSize({ width: 390, height: 300 });
    await search('holds', '1 section found');
    await page.locator('.hits a').click();
    expect(await page.evaluate('document.activeElement.id')).toBe('section-words');
    expect(await page.locator('.hits').isVisible()).toBe(false);
    const box = await page.locator('td', { hasText: 'What holds' }).boundingBox();
    expect(box?.y).toBeGreaterThan(0);
    expect((box?.y ?? 0) + (box?.height ?? 0)).toBeLessThanOrEqual(300);
    await page.locator('#search').focus();
    expect(await page.locator('.hits').isVisible()).toBe(true);
  });

  it('is not there on paper, nor without a script', async () => {
    expect(await page.locator('.search').isVisible()).toBe(true);
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator('.search').isVisible()).toBe(false);
    const context = await browser.newContext({ javaScriptEnabled: false });
    const plain = await context.newPage();
    await plain.setContent(html);
    expect(await plain.locator('.search').isVisible()).toBe(false);
    expect(await plain.locator('nav.contents').isVisible()).toBe(true);
    await context.close();
  });

  it('shows in the contents where one is', async () => {
    await page.setViewportSize({ width: 1280, height: 200 });
    await page.locator('#procedure-empty').evaluate((heading) => heading.scrollIntoView());
    await page.locator('nav [aria-current="true"]', { hasText: 'Empty the washer' }).waitFor();
    expect(await page.locator('nav [aria-current]').count()).toBe(1);
  });
});
