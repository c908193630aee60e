import { familyOf, TICKS_PER } from "../../length/measures.ts";
import { ceil, floor } from "../../length/rational.ts";
import type { LengthUnit, Ruler } from "../../length/types.ts";
import type { WrittenFile } from "../schema/cut-list-schema.ts";
import type { Assumed, Assumption, CutListSpec } from "../types.ts";

/** What holds for the whole file, filled in. */
export type FileSettings = Omit<CutListSpec, "kind" | "fabrics">;

/** The measure of the ruler, which need not be that of bare numbers: nobody's ruler is marked in yards. */
function rulerUnit(unit: LengthUnit): Ruler["unit"] {
  if (unit === "yd") return "in";
  return unit === "m" ? "cm" : unit;
}

/** Fills in the head of a file: ruler, style and the rest, each default told in `assumptions`. */
export function fillFile(
  written: WrittenFile,
  unit: LengthUnit,
  unitWritten: boolean,
  fallbackName: string,
  writing: Pick<Ruler, "decimal" | "language">,
): FileSettings {
  const inches = familyOf(unit) === "imperial";
  const assumptions: Assumption[] = [];
  const assume = (of: Assumed) => assumptions.push({ fabric: "", of });
  const mark = written.ruler
    ? Math.max(1, Number(floor(written.ruler.value)))
    : inches
      ? TICKS_PER.in / 8
      : TICKS_PER.cm / 4;
  const ruler: Ruler = {
    unit: rulerUnit(written.ruler?.unit ?? unit),
    mark,
    ...writing,
  };
  const defaultLength = inches ? 24 * TICKS_PER.in : 60 * TICKS_PER.cm;
  const defaultKeep = inches ? 2 * TICKS_PER.in : 5 * TICKS_PER.cm;
  const rulerLength = written["ruler-length"] ? Number(floor(written["ruler-length"].value)) : defaultLength;
  // The usual sizes of ruler and mat are common practice, no source.
  const defaultMat = inches ? 36 * TICKS_PER.in : 90 * TICKS_PER.cm;
  const matLength = written["mat-length"] ? Number(floor(written["mat-length"].value)) : defaultMat;
  const keepFrom = written["keep-from"] ? Number(ceil(written["keep-from"].value)) : defaultKeep;
  // A join every foot is work that nobody does by choice. Common practice, no source.
  const defaultJoin = inches ? 16 * TICKS_PER.in : 40 * TICKS_PER.cm;
  const joinFrom = written["join-from"] ? Number(ceil(written["join-from"].value)) : defaultJoin;
  if (!unitWritten) assume({ is: "bare-numbers", inches });
  if (!written.ruler) assume({ is: "ruler-marks", mark });
  if (!written["ruler-length"]) assume({ is: "ruler-length", length: rulerLength });
  // Only what is cut once more along must lie on the mat as it is.
  if (!written["mat-length"] && written.style === "strips-3") assume({ is: "mat-length", length: matLength });
  if (written.folded === undefined) assume({ is: "fold" });
  if (!written.style) assume({ is: "cutting" });
  if (!written["keep-from"]) assume({ is: "leftovers-kept", length: keepFrom });
  if (!written["join-from"]) assume({ is: "joined-from", length: joinFrom });
  return {
    name: written.name ?? fallbackName,
    ruler,
    defaultUnit: unit,
    style: written.style ?? "strips-2",
    ...(written.style === undefined ? { styleOpen: true as const } : {}),
    prefer: written.prefer ?? "simple",
    rulerLength,
    matLength,
    folded: written.folded ?? true,
    keepFrom,
    joinFrom,
    assumptions,
  };
}

/** Tells once what was assumed alike of every fabric, or of every one that does not say. */
export function gatherAssumptions(
  fabrics: readonly { name: string }[],
  all: readonly Assumption[],
): Assumption[] {
  const same = (a: Assumption, b: Assumption) => JSON.stringify(a.of) === JSON.stringify(b.of);
  return all.flatMap((assumption) => {
    if (assumption.fabric === "" || fabrics.length < 2) return [assumption];
    const alike = all.filter((other) => other.fabric !== "" && same(other, assumption));
    if (alike.length === 1) return [assumption];
    if (alike[0] !== assumption) return [];
    if (alike.length === fabrics.length) return [{ ...assumption, fabric: "" }];
    return [{ ...assumption, fabric: "", elsewhere: true as const }];
  });
}
