import { Resvg } from "@resvg/resvg-js";

/**
 * A drawing as a PNG, `width` pixels wide and as high as that makes it; null when it is no SVG that can be read.
 * @param fontFiles paths of the fonts: first the one the drawing was measured in, then those for other letters.
 */
export function pngOf(svg: string, width: number, fontFiles: readonly string[]): Uint8Array | null {
  const font = { loadSystemFonts: false, fontFiles: [...fontFiles], defaultFontFamily: "DejaVu Sans" };
  try {
    const fitTo = { mode: "width", value: width } as const;
    return new Resvg(svg, { font, fitTo, background: "#ffffff" }).render().asPng();
  } catch {
    return null;
  }
}
