import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import type { Page } from 'playwright-core';

const script = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const rules = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

/**
 * What axe finds against WCAG 2.2 A and AA and its best practices: `target-size: All touch targets … <a href=…>`.
 *
 * The page's own security policy lets no other script in; the browser puts axe in beside it.
 */
export async function findBarriers(page: Page): Promise<string[]> {
  await page.evaluate(script);
  const { violations } = await page.evaluate<AxeResults>(
    `axe.run(document, { runOnly: ${JSON.stringify(rules)}, resultTypes: ['violations'] })`,
  );
  return violations.flatMap(({ id, help, nodes }) => nodes.map(({ html }) => `${id}: ${help} ${html.slice(0, 200)}`));
}
