import type { Fonts } from "./fonts.ts";
import type { Files } from "./write.ts";

/**
 * Every SVG drawing among `files` as a PNG, `width` pixels wide, under the same name. Null when one is no drawing
 * that can be read.
 */
export async function pictureFiles(files: Files, width: number, fonts: Fonts): Promise<Files | null> {
  const { loadFonts, loadPng } = await import("../index.ts");
  const [{ pngOf }, { withStandIns }] = await Promise.all([loadPng(), loadFonts()]);
  const { ours, others, undrawn } = fonts;
  const paths = [ours.plain, ours.plainBold, ...others].map(({ path }) => path);
  const pictures: Record<string, Uint8Array> = {};
  for (const [name, content] of Object.entries(files)) {
    if (!name.endsWith(".svg") || typeof content !== "string") continue;
    const picture = pngOf(withStandIns(content, undrawn), width, paths);
    if (picture === null) return null;
    pictures[name.replace(/\.svg$/, ".png")] = picture;
  }
  return pictures;
}
