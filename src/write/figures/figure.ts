/** A figure as data. It becomes a picture when it is printed. */
export interface Figure {
  id: string;
  caption: string;
  /** What it shows, for who cannot see it: whole sentences. */
  alt: string;
  drawing: Drawing;
}

/** What is drawn. */
export type Drawing = GraphDrawing;

/** Boxes and arrows, laid out when they are drawn. */
export interface GraphDrawing {
  type: 'graph';
  nodes: { id: string; label: string }[];
  edges: { from: string; to: string }[];
}
