import { existsSync } from 'node:fs';
import { type Browser, chromium } from 'playwright-core';

const usual = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
];

/**
 * Where the browser is that pages are tried in: `CHROME_PATH`, or one of the usual places.
 *
 * @throws Error when there is none, with what to install.
 */
export function findChromium(asked = process.env['CHROME_PATH'], places: readonly string[] = usual): string {
  const found = (asked === undefined || asked === '' ? places : [asked]).find((path) => existsSync(path));
  if (found === undefined) throw new Error('no Chromium here: `apt-get install chromium`, or set CHROME_PATH to where one is');
  return found;
}

/** Starts a browser without a window. Whoever starts it closes it. */
export function startChromium(): Promise<Browser> {
  return chromium.launch({ executablePath: findChromium(), args: ['--no-sandbox'] });
}
