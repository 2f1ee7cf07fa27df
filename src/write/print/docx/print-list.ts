import type { FileChild, IParagraphOptions } from 'docx';
import type { List, ListItem } from 'mdast';
import { deepestLevel, listHang, lists } from './numbering.js';
import type { Place, Press } from './press.js';
import { printBlock } from './print-block.js';
import { printParagraph } from './print-paragraph.js';

/** A list, numbered from one again whenever it is a new one. */
export function printList({ ordered, children }: List, press: Press, place: Place, depth = 0): FileChild[] {
  const level = Math.min(depth, deepestLevel);
  const numbering = {
    reference: ordered === true ? lists.steps : lists.bullets,
    level,
    instance: press.nextList(),
    custom: true,
  };
  const first = unnumbered(place) ?? { style: styleOf(place, ordered === true), numbering };
  return children.flatMap((item) => printItem(item, press, inside(place, item), depth, first));
}

/** In these blocks the lines of a list stand for themselves. */
function unnumbered({ inside }: Place): IParagraphOptions | undefined {
  const styles: Partial<Record<Place['inside'], string>> = { opening: 'Opening', answers: 'AnswerLine', columns: 'Entry' };
  const style = styles[inside];
  return style === undefined ? undefined : { style };
}

function styleOf({ inside }: Place, ordered: boolean): string {
  if (inside === 'task') return 'TaskNumber';
  return ordered ? 'ListNumber' : 'ListBullet';
}

function inside(place: Place, { data }: ListItem): Place {
  return data?.change === 'inserted' || data?.change === 'deleted' ? { ...place, change: data.change } : place;
}

/** The first paragraph of an item carries its number; what follows stands under its words. */
function printItem(item: ListItem, press: Press, place: Place, depth: number, first: IParagraphOptions): FileChild[] {
  const box = item.checked === undefined || item.checked === null ? '' : item.checked ? '☑ ' : '☐ ';
  return item.children.flatMap((block, index): FileChild[] => {
    if (block.type === 'list') return printList(block, press, place, depth + 1);
    if (block.type !== 'paragraph') return printBlock(block, press, place, index === 0 ? [item] : []);
    const words = index === 0 && box !== '' ? [{ type: 'text' as const, value: box }, ...block.children] : block.children;
    const holders = index === 0 ? [block, item] : [block];
    const look: IParagraphOptions = index === 0 ? first : { style: 'ListContinue', indent: { left: listHang * (depth + 1) } };
    const keeps = block.data?.is === 'caution' && { keepNext: true };
    return [
      printParagraph({ words, holders, change: place.change, bySide: place.inside === 'opening' }, press, { ...look, ...keeps }),
    ];
  });
}
