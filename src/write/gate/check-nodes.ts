import type { Nodes, Parents, Root } from 'mdast';
import type { Finding } from '../../read/finding.js';
import { saidInSourceLanguage } from '../text/markdown-safe.js';
import { walk } from '../tree/walk.js';
import type { PlaceOf } from './place-of.js';

/** The block directives that templates may use. */
const directiveNames = {
  containerDirective: [
    'titlepage',
    'caution',
    'opening',
    'lead',
    'table',
    'sheet',
    'columns',
    'answers',
    'task',
    'note',
    'example',
  ],
  leafDirective: ['contents', 'annexes'],
} as const;

/** Reports nodes that must not be in a manual. */
export function checkNodes(tree: Root, placeOf: PlaceOf): Finding[] {
  const findings: Finding[] = [];
  walk(tree, (node, parents) => {
    const problem = problemOf(node, parents);
    if (problem !== undefined) findings.push({ ...problem, place: placeOf(node, node.type === 'text' ? node.value : undefined) });
  });
  return findings;
}

type Problem = Omit<Finding, 'place'>;

function problemOf(node: Nodes, parents: readonly Parents[]): Problem | undefined {
  switch (node.type) {
    case 'html':
      return { code: 'E603', message: `raw HTML \`${shorten(node.value)}\` in the manual` };
    case 'image':
    case 'imageReference':
      return { code: 'E603', message: 'an image from outside in the manual' };
    case 'link':
      return /^(?:https|mailto):/.test(node.url)
        ? undefined
        : { code: 'E603', message: `a link to \`${shorten(node.url)}\` in the manual` };
    case 'containerDirective':
    case 'leafDirective':
      if (node.name === 'figure') return { code: 'E602', message: `unknown figure \`${node.attributes?.['id'] ?? ''}\`` };
      if (directiveNames[node.type].some((name) => name === node.name)) return undefined;
      return { code: 'E610', message: `unknown directive \`${node.name}\` in a template` };
    case 'textDirective':
      return { code: 'E610', message: `inline directive \`${node.name}\` in the manual` };
    case 'text':
      return parents.some(isFromElsewhere) ? undefined : problemOfText(node.value);
    default:
      return undefined;
  }
}

/** Words that come out of the clinic's folder or a value of the rulebook; a text that nobody has translated is a text. */
function isFromElsewhere(node: Parents): boolean {
  return node.type === 'reference' || (node.type === 'said' && node.by !== saidInSourceLanguage);
}

function problemOfText(text: string): Problem | undefined {
  if (/^:{3}/.test(text))
    return {
      code: 'E604',
      message: `stray \`${shorten(text)}\` in the manual`,
      help: 'close the block that it belongs to, with as many colons as it was opened with',
    };
  if (text.includes(']('))
    return {
      code: 'E604',
      message: `a reference that is none in \`${shorten(text)}\``,
      help: 'write `[](limit:id)` with a known kind and an id',
    };
  return undefined;
}

function shorten(text: string): string {
  return text.length > 40 ? `${text.slice(0, 40)}…` : text;
}
