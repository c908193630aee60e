/** A font to draw with: one painter reads its file, the other takes its bytes. */
export interface PictureFont {
  path: string;
  bytes: Uint8Array;
}

/**
 * Makes a PNG of an SVG drawing, `width` pixels wide and as high as that makes it; null when it is no SVG that can be
 * read. Of the fonts the first is the one the drawing was measured in, then come those for other letters.
 */
export type Painter = (svg: string, width: number, fonts: readonly PictureFont[]) => Uint8Array | null;

const USUAL = { loadSystemFonts: false, defaultFontFamily: "DejaVu Sans" } as const;
const GROUND = "#ffffff";

function orNull(draw: () => Uint8Array): Uint8Array | null {
  try {
    return draw();
  } catch {
    return null;
  }
}

/** The painter in the machine's own code; throws where there is none for this machine. */
export async function nativePainter(): Promise<Painter> {
  const { Resvg } = await import("@resvg/resvg-js");
  return (svg, width, fonts) =>
    orNull(() => {
      const font = { ...USUAL, fontFiles: fonts.map(({ path }) => path) };
      return new Resvg(svg, { font, fitTo: { mode: "width", value: width }, background: GROUND })
        .render()
        .asPng();
    });
}

let begun: Promise<unknown> | null = null;

/** The same painter as WebAssembly, some three times slower, for machines that nobody has built the other for. */
export async function portablePainter(program: () => Promise<Uint8Array>): Promise<Painter> {
  const { initWasm, Resvg } = await import("@resvg/resvg-wasm");
  // It may be begun once in a process only.
  begun ??= program().then((bytes) => initWasm(bytes as Uint8Array<ArrayBuffer>));
  await begun;
  return (svg, width, fonts) =>
    orNull(() => {
      const font = { ...USUAL, fontBuffers: fonts.map(({ bytes }) => bytes) };
      const drawn = new Resvg(svg, { font, fitTo: { mode: "width", value: width }, background: GROUND });
      const picture = drawn.render();
      const png = picture.asPng();
      picture.free();
      drawn.free();
      return png;
    });
}

/** The first painter that runs here; null where none does. */
export async function openPainter(painters: readonly (() => Promise<Painter>)[]): Promise<Painter | null> {
  for (const open of painters) {
    try {
      return await open();
    } catch {}
  }
  return null;
}
