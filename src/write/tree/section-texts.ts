import type { Nodes, Parents, Root } from 'mdast';
import type { Mark, Section } from './nodes.js';
import { printedText } from './printed-text.js';
import { walkSections } from './walk.js';

/** The text of one numbered section, without its heading and without the sections below it. */
export interface SectionText {
  /** `4` or `4.2` or `B.1`. */
  number: string;
  title: string;
  blocks: TextBlock[];
}

/** What one rule, step, task, row or paragraph prints. */
export interface TextBlock {
  /**
   * What the block is at home for or shows, such as `step:wash/look`; where nothing marks it, its kind and its running number
   * among those of this kind in the section, such as `caution-2`. Each stands once in a section.
   */
  key: string;
  /** As printed, references filled in. Parts of a block (a step and its caution, lines of a task) stand on lines of their own. */
  text: string;
  /** The same without numbers of sections, and with ids in the place of numbers of sources: equal where only numbers moved. */
  unnumbered: string;
}

/**
 * The printed text of every section, by section id such as `procedure:wash`, in the order of the pages. What stands before
 * the first section (title page, contents) is left out.
 */
export function sectionTexts({ tree, sections }: { tree: Root; sections: readonly Section[] }): Map<string, SectionText> {
  const texts = new Map(sections.map(({ id, number, title }): [string, SectionText] => [id, { number, title, blocks: [] }]));
  const keys = new KeyMaker();
  walkSections(tree, sections, (node, section, parents) => {
    if (node.type === 'heading') keys.enter(node);
    const text = section && texts.get(section.id);
    if (text === undefined || !isBlock(node, parents)) return;
    const printed = printedText(node);
    if (printed === '' || /^[| ]*$/.test(printed)) return;
    const unnumbered = printedText(node, 'unnumbered');
    const { key, goesOn } = keys.of(node, parents);
    const last = text.blocks.at(-1);
    if (goesOn && last?.key === key)
      text.blocks.splice(-1, 1, { key, text: `${last.text}\n${printed}`, unnumbered: `${last.unnumbered}\n${unnumbered}` });
    else text.blocks.push({ key, text: printed, unnumbered });
  });
  return texts;
}

/** The blocks that text stands in: paragraphs, rows, figures, and headings that carry no number. */
function isBlock(node: Nodes, parents: readonly Parents[]): boolean {
  if (parents.some(({ type }) => type === 'tableRow')) return false;
  if (node.type === 'figure') return true;
  return node.type === 'paragraph' || node.type === 'tableRow' || (node.type === 'heading' && node.data?.number === undefined);
}

/** Names blocks, one section at a time. */
class KeyMaker {
  private readonly counts = new Map<string, number>();
  private readonly taken = new Set<string>();
  private owner: string | undefined;
  private current: Nodes | undefined;
  private last: string | undefined;

  /** A numbered heading begins a section; a smaller one with a mark owns what follows it. */
  enter(heading: Nodes): void {
    this.owner = undefined;
    this.current = undefined;
    if (heading.data?.number !== undefined) {
      this.counts.clear();
      this.taken.clear();
    } else if (heading.data?.marks !== undefined) this.owner = this.unique(keyOf(heading.data.marks) ?? 'heading');
  }

  of(node: Nodes, parents: readonly Parents[]): { key: string; goesOn: boolean } {
    const holder = [...parents, node].findLast((each) => each.type !== 'heading' && keyOf(each.data?.marks) !== undefined);
    if (holder === undefined) {
      if (this.owner !== undefined) return { key: this.owner, goesOn: true };
      this.current = undefined;
      return { key: this.numbered(kindOf(node, parents)), goesOn: false };
    }
    if (holder === this.current && this.last !== undefined) return { key: this.last, goesOn: true };
    this.current = holder;
    this.last = this.unique(keyOf(holder.data?.marks) ?? holder.type);
    return { key: this.last, goesOn: false };
  }

  private numbered(kind: string): string {
    const number = (this.counts.get(kind) ?? 0) + 1;
    this.counts.set(kind, number);
    return this.unique(`${kind}-${number}`);
  }

  private unique(key: string): string {
    const free = this.taken.has(key) ? this.numbered(key) : key;
    this.taken.add(free);
    return free;
  }
}

function keyOf(marks: readonly Mark[] | undefined): string | undefined {
  const mark = marks?.find(({ home }) => home) ?? marks?.[0];
  return mark && `${mark.kind}:${mark.id}`;
}

/** `lead`, `question`, `caution`, `opening`, `row`, `paragraph`. */
function kindOf(node: Nodes, parents: readonly Parents[]): string {
  if (node.data?.is !== undefined) return node.data.is;
  const container = parents.findLast((each) => each.type === 'containerDirective');
  if (container !== undefined && container.name !== 'table' && container.name !== 'columns') return container.name;
  return node.type === 'tableRow' ? 'row' : node.type;
}
