declare module "fontkit" {
  interface Font {
    postscriptName: string;
    unitsPerEm: number;
    hasGlyphForCodePoint(codePoint: number): boolean;
    glyphForCodePoint(codePoint: number): { advanceWidth: number };
  }
  /** A font file of one face, or of several. Throws on anything else. */
  export function create(file: Uint8Array): Font | { fonts: readonly Font[] };
}
