/** The part of `subset-font` that is used; the package has no types of its own. */
declare module 'subset-font' {
  interface Options {
    targetFormat?: 'sfnt' | 'woff' | 'woff2';
    /** OpenType features to keep; all, where left out. */
    keepFeatures?: readonly string[];
    noHinting?: boolean;
  }
  /** A font of only the letters of a text. */
  export default function subsetFont(font: Buffer, text: string, options?: Options): Promise<Buffer>;
}
