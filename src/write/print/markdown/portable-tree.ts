import type {
  BlockContent,
  Heading,
  List,
  ListItem,
  Paragraph,
  PhrasingContent,
  Root,
  RootContent,
  Table,
  TableRow,
} from 'mdast';
import type { ContainerDirective } from 'mdast-util-directive';
import { wordOf } from '../../text/word-of.js';
import type { Section } from '../../tree/nodes.js';
import type { Writing } from '../../writing.js';
import { slugsOf } from './slugs-of.js';

/** The tree in plain Markdown alone: directives, marks and references turned into what any reader shows. */
export function portableTree({ tree, meta, sections }: Writing): Root {
  const slugs = slugsOf(sections);
  return { type: 'root', children: tree.children.flatMap(portableBlock) };

  function portableBlock(node: RootContent): RootContent[] {
    switch (node.type) {
      case 'heading':
        return [portableHeading(node)];
      case 'paragraph':
        return [portableParagraph(node)];
      case 'list':
        return [portableList(node)];
      case 'table':
        return [portableTable(node)];
      case 'containerDirective':
        return portableContainer(node);
      case 'leafDirective':
        return node.name === 'contents' ? [heading(2, [text(wordOf(meta, 'print.contents'))]), contentsList(sections)] : [];
      case 'figure':
        return [
          { type: 'paragraph', children: [{ type: 'strong', children: [text(node.caption)] }] },
          { type: 'paragraph', children: [text(node.alt)] },
        ];
      default:
        return [node];
    }
  }

  function portableHeading({ depth, data, children }: Heading): Heading {
    const number = data?.number === undefined ? [] : [text(`${data.number} `)];
    return heading(depth + 1, [...number, ...portablePhrase(trimmed(children))]);
  }

  function portableParagraph({ data, children }: Paragraph): Heading | Paragraph {
    const words = portablePhrase(children);
    switch (data?.is) {
      case 'title':
        return heading(1, [text(meta.title)]);
      case 'question':
      case 'caption':
        return { type: 'paragraph', children: [{ type: 'strong', children: words }] };
      case 'why':
        return { type: 'paragraph', children: [{ type: 'emphasis', children: words }] };
      default:
        return { type: 'paragraph', children: words };
    }
  }

  function portableList({ ordered, children }: List): List {
    return { type: 'list', ordered: ordered ?? false, spread: ordered ?? false, children: children.map(portableItem) };
  }

  function portableItem({ children }: ListItem): ListItem {
    return { type: 'listItem', spread: false, children: blocksOf(children) };
  }

  function portableTable({ align, children }: Table): Table {
    return {
      type: 'table',
      ...(align && { align }),
      children: children.map(
        ({ children: cells }): TableRow => ({
          type: 'tableRow',
          children: cells.map((cell) => ({ type: 'tableCell', children: portablePhrase(cell.children).map(inOneLine) })),
        }),
      ),
    };
  }

  function portableContainer({ name, children }: ContainerDirective): RootContent[] {
    switch (name) {
      case 'caution':
        return [
          {
            type: 'blockquote',
            children: [
              { type: 'paragraph', children: [{ type: 'strong', children: [text(wordOf(meta, 'print.caution'))] }] },
              ...blocksOf(children),
            ],
          },
        ];
      case 'note':
        return [{ type: 'blockquote', children: blocksOf(children) }];
      case 'sheet':
        return children.flatMap(portableBlock).map(withOneEmptyRow);
      default:
        return children.flatMap(portableBlock);
    }
  }

  function blocksOf(nodes: readonly RootContent[]): BlockContent[] {
    return nodes.flatMap(portableBlock).filter(isBlock);
  }

  function portablePhrase(nodes: readonly PhrasingContent[]): PhrasingContent[] {
    return nodes.flatMap((node): PhrasingContent[] => {
      switch (node.type) {
        case 'said':
          return portablePhrase(node.children);
        case 'reference': {
          const slug = sections.find(({ anchor }) => anchor === node.anchor);
          const words = portablePhrase(node.children);
          return slug === undefined ? words : [{ type: 'link', url: `#${slugs.get(slug) ?? ''}`, children: words }];
        }
        case 'strong':
          return [{ type: 'strong', children: portablePhrase(node.children) }];
        case 'emphasis':
          return [{ type: 'emphasis', children: portablePhrase(node.children) }];
        case 'inserted':
          return [{ type: 'strong', children: portablePhrase(node.children) }];
        case 'deleted':
          return [{ type: 'delete', children: portablePhrase(node.children) }];
        default:
          return [node];
      }
    });
  }

  function contentsList(all: readonly Section[]): List {
    const entry = (section: Section): Paragraph => ({
      type: 'paragraph',
      children: [{ type: 'link', url: `#${slugs.get(section) ?? ''}`, children: [text(`${section.number} ${section.title}`)] }],
    });
    const chapters = all.filter(({ depth }) => depth === 1);
    return list(
      chapters.map((chapter) => {
        const parts = all.filter((each) => each.depth === 2 && each.number.startsWith(`${chapter.number}.`));
        return [entry(chapter), ...(parts.length === 0 ? [] : [list(parts.map((part) => [entry(part)]))])];
      }),
    );
  }
}

function list(items: BlockContent[][]): List {
  return {
    type: 'list',
    ordered: false,
    spread: false,
    children: items.map((children) => ({ type: 'listItem', spread: false, children })),
  };
}

function heading(depth: number, children: PhrasingContent[]): Heading {
  return { type: 'heading', depth: depth === 1 ? 1 : depth === 2 ? 2 : depth === 3 ? 3 : 4, children };
}

function text(value: string): PhrasingContent {
  return { type: 'text', value };
}

/** The space that stood before a mark at the end of a heading goes with the mark. */
function trimmed(nodes: readonly PhrasingContent[]): PhrasingContent[] {
  const last = nodes.at(-1);
  return last?.type === 'text' ? [...nodes.slice(0, -1), text(last.value.trimEnd())] : [...nodes];
}

function inOneLine(node: PhrasingContent): PhrasingContent {
  return node.type === 'break' ? text(' · ') : node;
}

function withOneEmptyRow(node: RootContent): RootContent {
  return node.type === 'table' ? { ...node, children: node.children.slice(0, 2) } : node;
}

function isBlock(node: RootContent): node is BlockContent {
  return ['paragraph', 'heading', 'list', 'table', 'blockquote', 'thematicBreak'].includes(node.type);
}
