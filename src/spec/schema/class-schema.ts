import * as z from "zod";
import { kitsTooMany, kitUnreadable, swapDoesNothing } from "../../diagnostics/quilts/class.ts";
import { colourwayUnknown, fabricMissing } from "../../diagnostics/quilts/quilt.ts";
import type { ClassSpec, KitSpec, QuiltColourway } from "../class-types.ts";
import type { QuiltFrame } from "../fill/quilt-fill-blocks.ts";
import { type Path, pathText } from "../read/document.ts";
import { MOST_KITS, readKitLine } from "../written/kit-line.ts";
import { count, describes, leaf } from "../written/written.ts";
import { word } from "./finishing-schema.ts";

function kit() {
  const fields = {
    count: count("class.kit.count"),
    size: leaf({ about: "class.kit.size" }, (written) => written).optional(),
    colourway: word("class.kit.colourway").optional(),
  };
  const line = leaf({ about: "class.kit.line" }, (written) => written);
  return z.union([line, z.strictObject(fields)]).meta(describes("class.kit"));
}

/** The class that sews the quilt: kits that are alike on a line each, and colourways of the whole quilt. */
export function classSchema() {
  return z
    .strictObject({
      kits: z.array(kit()).min(1).meta(describes("class.kits")),
      colourways: z
        .record(z.string(), z.record(z.string(), word("class.fabric")).meta(describes("class.colourway")))
        .meta(describes("class.colourways"))
        .optional(),
    })
    .meta(describes("class"));
}

type WrittenClass = z.output<ReturnType<typeof classSchema>>;

/** The class of a file; without one no kits. Every fabric of a colourway must be one of the file's. */
export function fillClass(
  of: WrittenClass | undefined,
  fabrics: readonly string[],
  { document, diagnostics }: QuiltFrame,
): ClassSpec {
  const colourways = Object.entries(of?.colourways ?? {}).map(([name, written]): QuiltColourway => {
    const swaps = Object.entries(written).map(([from, to]) => {
      const path: Path = ["class", "colourways", name, from];
      const swap = {
        from: { word: from, path: pathText(path), at: document.keyAt(path) },
        to: { word: to, path: pathText(path), at: document.valueAt(path) },
      };
      for (const each of [swap.from, swap.to])
        if (!fabrics.includes(each.word)) diagnostics.push(fabricMissing(each, each.word, null, fabrics));
      if (from === to) diagnostics.push(swapDoesNothing(swap.to, from, name));
      return swap;
    });
    return { name, swaps };
  });
  const names = colourways.map(({ name }) => name);
  const kits = (of?.kits ?? []).flatMap((written, i): KitSpec[] => {
    const path: Path = ["class", "kits", i];
    const where = { path: pathText(path), at: document.valueAt(path) };
    if (typeof written === "string") {
      const read = readKitLine(written, names);
      if (read.ok) return [{ ...read.kit, ...where }];
      diagnostics.push(kitUnreadable(where, written, read.fault));
      return [];
    }
    const { count: many, size = "", colourway = "" } = written;
    if (colourway !== "" && !names.includes(colourway)) {
      const at = { path: pathText([...path, "colourway"]), at: document.valueAt([...path, "colourway"]) };
      diagnostics.push(colourwayUnknown(at, colourway, names));
      return [];
    }
    return [{ count: many, size, colourway, ...where }];
  });
  const all = kits.reduce((sum, { count: many }) => sum + many, 0);
  if (all > MOST_KITS) {
    const path: Path = ["class", "kits"];
    diagnostics.push(kitsTooMany({ path: pathText(path), at: document.keyAt(path) }, all, MOST_KITS));
  }
  return { colourways, kits };
}
