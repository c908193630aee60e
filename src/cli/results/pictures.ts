import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { setFlagsFromString } from "node:v8";
import { runInNewContext } from "node:vm";
import { noPainter } from "../../diagnostics/pictures.ts";
import type { Diagnostic } from "../../diagnostics/types.ts";
import type { Files } from "../files/write.ts";
import type { Fonts } from "./fonts.ts";

/** The WebAssembly of the painter that runs everywhere. */
async function portableProgram(): Promise<Uint8Array> {
  return readFile(createRequire(import.meta.url).resolve("@resvg/resvg-wasm/index_bg.wasm"));
}

/** Frees what nobody holds any more. A picture holds megabytes that the engine cannot see and does not hurry for. */
function collector(): () => void {
  setFlagsFromString("--expose-gc");
  return runInNewContext("gc") as () => void;
}

/** Lets go of what a picture was painted with before the next: the painter's memory is freed only between two turns. */
async function letGo(collect: () => void): Promise<void> {
  collect();
  await new Promise((resolve) => setImmediate(resolve));
}

/**
 * Every SVG drawing among `files` as a PNG, `width` pixels wide, under the same name. `files` is null when one is no
 * drawing that can be read; where nothing on this machine can draw pictures there are none, and that is told.
 */
export async function pictureFiles(
  files: Files,
  width: number,
  fonts: Fonts,
  severity: "warning" | "error",
): Promise<{ files: Files | null; diagnostics: Diagnostic[] }> {
  const { loadFonts, loadPng } = await import("../../index.ts");
  const [png, { withStandIns }] = await Promise.all([loadPng(), loadFonts()]);
  const paint = await png.openPainter([png.nativePainter, () => png.portablePainter(portableProgram)]);
  if (paint === null) return { files: {}, diagnostics: [noPainter(severity)] };
  const { ours, others, undrawn } = fonts;
  const tried = [ours.plain, ours.plainBold, ...others];
  const pictures: Record<string, Uint8Array> = {};
  const collect = collector();
  for (const [name, content] of Object.entries(files)) {
    if (!name.endsWith(".svg") || typeof content !== "string") continue;
    const picture = paint(withStandIns(content, undrawn), width, tried);
    if (picture === null) return { files: null, diagnostics: [] };
    pictures[name.replace(/\.svg$/, ".png")] = picture;
    await letGo(collect);
  }
  return { files: pictures, diagnostics: [] };
}
