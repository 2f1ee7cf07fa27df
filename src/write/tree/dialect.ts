import type { Root } from 'mdast';
import { directiveFromMarkdown } from 'mdast-util-directive';
import { gfmFootnoteFromMarkdown } from 'mdast-util-gfm-footnote';
import { gfmTableFromMarkdown } from 'mdast-util-gfm-table';
import { gfmTaskListItemFromMarkdown } from 'mdast-util-gfm-task-list-item';
import { directive } from 'micromark-extension-directive';
import { gfmFootnote } from 'micromark-extension-gfm-footnote';
import { gfmTable } from 'micromark-extension-gfm-table';
import { gfmTaskListItem } from 'micromark-extension-gfm-task-list-item';
import remarkParse from 'remark-parse';
import { type Processor, unified } from 'unified';

/**
 * Reads the Markdown of manuals: CommonMark with tables, task lists, footnotes and block directives. There is no HTML, no
 * indented code, no automatic link and no inline directive, which would eat `10:30`.
 */
export function parseMarkdown(text: string): Root {
  return parser.parse(text);
}

const parser = unified().use(remarkParse).use(dialect).freeze();

function dialect(this: Processor): void {
  const data = this.data();
  const { flow } = directive();
  data.micromarkExtensions = [
    gfmTable(),
    gfmFootnote(),
    gfmTaskListItem(),
    { ...(flow && { flow }) },
    { disable: { null: ['htmlFlow', 'htmlText', 'autolink', 'codeIndented'] } },
  ];
  data.fromMarkdownExtensions = [
    gfmTableFromMarkdown(),
    gfmFootnoteFromMarkdown(),
    gfmTaskListItemFromMarkdown(),
    directiveFromMarkdown(),
  ];
}
