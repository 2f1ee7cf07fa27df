/** What printers need beside a writing. The bytes of fonts are those of TrueType files. */
export interface Assets {
  fonts: {
    regular: Uint8Array;
    italic: Uint8Array;
    bold: Uint8Array;
    boldItalic: Uint8Array;
    /** Has the signs that the others lack. */
    symbols: Uint8Array;
  };
  /** Text of the one template that every PDF is set with. */
  typst: string;
  /** A PNG of an SVG, so many pixels wide, its words in the fonts above. */
  paint(svg: string, width: number): Uint8Array;
  /** The script of HTML pages. */
  script: string;
}
