import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { loadAssets } from '../../../src/cli/load-assets.js';
import { printDocx } from '../../../src/write/print/print-docx.js';
import { writingOf } from '../writing-of.js';
import { problemsOf } from './check-docx.js';
import { openDocx } from './open-docx.js';
import { readXml } from './read-xml.js';

const bytes = await printDocx(
  writingOf('# One [](id:section:one)\n\nSee [](section:one).\n\n1. step\n\n| A | B |\n| - | - |\n| 1 | 2 |'),
  loadAssets(),
);

/** The file with one part changed. */
function broken(name: string, change: (text: string) => string) {
  const parts = unzipSync(bytes);
  const before = strFromU8(parts[name] ?? new Uint8Array());
  const after = change(before);
  expect(after).not.toBe(before);
  return openDocx(zipSync({ ...parts, [name]: strToU8(after) }));
}

const document = 'word/document.xml';

/** The checks of Word files notice what they are there for. */
describe('the checks of Word files', () => {
  it.each<[string, string, (text: string) => string, string]>([
    ['an unknown style', document, (text) => text.replace('"Heading1"', '"Heading7"'), 'names the style Heading7'],
    ['a link without a bookmark', document, (text) => text.replace(/w:anchor="[^_"]/, 'w:anchor="x'), 'which there is not'],
    ['a bookmark that does not end', document, (text) => text.replace(/<w:bookmarkEnd [^>]*>/, ''), 'do not begin or do not end'],
    ['a bookmark with a hyphen', document, (text) => text.replace('w:name="section_', 'w:name="section-'), 'is no name'],
    [
      'a list that is not there',
      document,
      (text) => text.replace(/<w:numId w:val="\d+"/, '<w:numId w:val="999"'),
      'the list 999',
    ],
    [
      'properties in another order',
      document,
      (text) => text.replace(/(<w:pStyle [^>]*>)(<w:(?:keepNext|pageBreakBefore|numPr)\b.*?)(<\/w:pPr>)/, '$2$1$3'),
      'too late in <w:pPr>',
    ],
    ['a row that is too short', document, (text) => text.replace(/<w:tc>.*?<\/w:tc>/, ''), 'does not fill its columns'],
    [
      'a relationship that is not there',
      document,
      (text) => text.replace(/r:id="rId\d+"/, 'r:id="rId999"'),
      'the relationship rId999',
    ],
    [
      'a part that is not there',
      'word/_rels/document.xml.rels',
      (text) => text.replace('"styles.xml"', '"style.xml"'),
      'word/style.xml, which is not there',
    ],
    [
      'a part without a type',
      '[Content_Types].xml',
      (text) => text.replace('/word/numbering.xml', '/word/other.xml').replace(/<Default [^>]*Extension="xml"[^>]*>/, ''),
      'word/numbering.xml has no content type',
    ],
  ])('notice %s', (_, name, change, problem) => {
    expect(problemsOf(broken(name, change)).join('\n')).toContain(problem);
  });

  it.each([
    ['<a><b></a></b>'],
    ['<a>'],
    ['<a/><b/>'],
    ['<a>&nbsp;</a>'],
    ['<a>x & y</a>'],
    ['<a b="1" b="2"/>'],
    ['<a b=1/>'],
    ['<a>\u0001</a>'],
    ['text'],
  ])('refuse %s', (text) => {
    expect(() => readXml(text)).toThrow(SyntaxError);
  });
});
