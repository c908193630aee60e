declare module "fontkit" {
  interface Font {
    postscriptName: string;
    hasGlyphForCodePoint(codePoint: number): boolean;
  }
  /** A font file of one face, or of several. Throws on anything else. */
  export function create(file: Uint8Array): Font | { fonts: readonly Font[] };
}
