import { expect, it } from 'vitest';
import { parseMarkdown } from '../../src/write/tree/dialect.js';
import { parseSections, splitSections } from '../../src/write/tree/parse-sections.js';
import { walk } from '../../src/write/tree/walk.js';

const bare = (text: string) => {
  const tree = parseMarkdown(text);
  walk(tree, (node) => {
    delete node.position;
  });
  return tree.children;
};

const manual = `:::::titlepage
[](is:title)Manual

::::table{widths="1 1"}
| A | B |
| --- | --- |
| 1 | 2 |
::::

:::::

::contents

# One [](id:section:one)

Text.

## First

1. Do it.

   Why.

:::caution
# Not a section

:::

Still the first.

## Second

- [](is:x)item
# Two
`;

it('reads sections one by one as it reads the whole', () => {
  expect(splitSections(manual)).toHaveLength(5);
  expect(parseSections(manual).children).toEqual(bare(manual));
});

it('gives a tree of its own each time', () => {
  const [first, second] = [parseSections(manual), parseSections(manual)];
  expect(second).toEqual(first);
  first.children.pop();
  for (const child of first.children) child.data = { is: 'changed' };
  expect(parseSections(manual)).toEqual(second);
});

it('reads the whole at once where a footnote reaches across sections', () => {
  const text = '# One\n\nSee.[^1]\n\n# Two\n\n[^1]: Note.\n';
  expect(parseSections(text).children).toEqual(bare(text));
});
