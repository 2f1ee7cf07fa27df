import { PageOrientation } from 'docx';
import type { ManualMeta } from '../../model/model-title.js';

export type Layout = 'portrait' | 'landscape';

/** A page as Word measures it. Lengths are twips, 1440 to the inch. */
export interface Page {
  size: { width: number; height: number; orientation: (typeof PageOrientation)[keyof typeof PageOrientation] };
  margin: { top: number; right: number; bottom: number; left: number; header: number; footer: number };
  /** Between the margins. */
  text: { width: number; height: number };
}

/** Millimeters as twips. */
export function mm(length: number): number {
  return Math.round((length * 1440) / 25.4);
}

const sizes = { a4: { width: 11906, height: 16838 }, letter: { width: 12240, height: 15840 } } as const;

/** Millimeters. The wide margin is on the side of the binder: left, and on a page that lies on its side the top. */
const margins = {
  portrait: { top: 19, right: 15, bottom: 17, left: 22, header: 10, footer: 8 },
  landscape: { top: 20, right: 15, bottom: 14, left: 15, header: 11, footer: 7 },
} as const;

/** The page of a paper in a layout. */
export function pageOf({ paper }: Pick<ManualMeta, 'paper'>, layout: Layout): Page {
  const upright = sizes[paper];
  const lies = layout === 'landscape';
  const [width, height] = lies ? [upright.height, upright.width] : [upright.width, upright.height];
  const { top, right, bottom, left, header, footer } = margins[layout];
  return {
    // The library swaps the sides of a page that lies on its side by itself.
    size: { ...upright, orientation: lies ? PageOrientation.LANDSCAPE : PageOrientation.PORTRAIT },
    margin: { top: mm(top), right: mm(right), bottom: mm(bottom), left: mm(left), header: mm(header), footer: mm(footer) },
    text: { width: width - mm(left) - mm(right), height: height - mm(top) - mm(bottom) },
  };
}
