import { type Finding, inOrder } from '../../../read/finding.js';
import { walkSections } from '../../tree/walk.js';
import type { Writing } from '../../writing.js';

/** How many signs of a text are shown around one that cannot be printed. */
const around = 24;

/** Where signs stand that no font has, with the words around each. A text that is printed in many places is named once. */
export function findMissingSigns({ tree, sections, meta }: Writing, missing: readonly string[]): Finding[] {
  const findings: Finding[] = [];
  const found = new Set<string>();
  const report = (text: string, file: string) => {
    const here = missing.filter((sign) => text.includes(sign));
    if (here.length === 0) return;
    for (const sign of here) found.add(sign);
    const finding = findingOf(here, excerpt(text, here[0] ?? ''), file);
    if (findings.every(({ message }) => message !== finding.message)) findings.push(finding);
  };
  walkSections(tree, sections, (node, section) => {
    const file = section === undefined ? 'manual' : `manual, section ${section.number}`;
    if (node.type === 'text' || node.type === 'inlineCode') report(node.value, file);
    if (node.type === 'figure') report([node.caption, JSON.stringify(node.drawing)].join(' '), file);
  });
  for (const text of [meta.title, meta.clinic, meta.number, meta.version, meta.effective]) report(text, 'manual');
  const elsewhere = missing.filter((sign) => !found.has(sign));
  if (elsewhere.length > 0) findings.push(findingOf(elsewhere, elsewhere.join(' '), 'manual'));
  return inOrder(findings);
}

function findingOf(signs: readonly string[], text: string, file: string): Finding {
  const named = signs.map((sign) => `\`${sign}\` (${codesOf(sign)})`).join(', ');
  return {
    code: 'E611',
    message: `the text \`${text}\` cannot be printed: the fonts have no ${named}`,
    place: { file, line: 1, column: 1 },
    help: 'write it in Latin, Greek or Cyrillic letters and plain signs',
  };
}

/** The sign with the words around it. */
function excerpt(text: string, sign: string): string {
  const at = text.indexOf(sign);
  const [start, end] = [Math.max(0, at - around), at + sign.length + around];
  const cut = [...text.slice(start, end)].filter((each) => !/\p{Cs}/u.test(each)).join('');
  return `${start > 0 ? '…' : ''}${cut}${end < text.length ? '…' : ''}`;
}

function codesOf(sign: string): string {
  return [...sign].map((each) => `U+${(each.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')}`).join(' ');
}
