import { createHash } from 'node:crypto';

/**
 * The security policy of the page: it may ask for nothing at all, and only the style and the script that were printed into it
 * count. Fonts are part of the style.
 */
export function contentPolicy(style: string, script: string): string {
  return [
    "default-src 'none'",
    `style-src ${hashOf(style)}`,
    `script-src ${hashOf(script)}`,
    'font-src data:',
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ');
}

function hashOf(text: string): string {
  return `'sha256-${createHash('sha256').update(text, 'utf8').digest('base64')}'`;
}
