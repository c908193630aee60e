import {
  foundationAllowance,
  foundationChoice,
  foundationGrid,
  foundationSeam,
  foundationUnknown,
  gridSquares,
} from "../../diagnostics/quilts/foundation.ts";
import type { Diagnostic } from "../../diagnostics/types.ts";
import { formatLength } from "../../length/format.ts";
import { familyOf, TICKS_PER } from "../../length/measures.ts";
import { ceil, toTicksExact } from "../../length/rational.ts";
import type { Ticks } from "../../length/types.ts";
import type { FoundationSpec } from "../foundation-types.ts";
import { LEFT_IN, TORN_AWAY } from "../key-words.ts";
import { type Path, pathText, type SourceDocument } from "../read/document.ts";
import type { WrittenQuilt } from "../schema/quilt-schema.ts";
import type { Assumed, Assumption, FabricSpec, FixedClothSpec } from "../types.ts";
import type { FileSettings } from "./fill-file.ts";

/** What filling in needs to know of the file around. */
interface Around {
  document: SourceDocument;
  diagnostics: Diagnostic[];
  settings: FileSettings;
  assumptions: Assumption[];
  seam: Ticks;
  blockKeys: readonly string[];
  fabrics: readonly FabricSpec[];
}

const PATH: Path = ["foundation"];
const PER = { pieced: ["unit", "motif", "block"], folded: ["block", "row"] } as const;

/**
 * Fills in the foundation. Defaults, each told: pieced, one piece of foundation for a motif (folded: a block), as
 * many squares beyond the seam line as hold the seam allowance, patches 1/4 in or 0.5 cm larger than exact, fusible
 * and left in. Common practice, no source: published ways differ, so each is a field of the file.
 * @returns null when there is none, or when what is written of it cannot be
 */
export function fillFoundation(written: WrittenQuilt["foundation"], around: Around): FoundationSpec | null {
  if (written === undefined) return null;
  const { document, settings, seam } = around;
  const where: Where = (key) => {
    const path = key === "" ? PATH : [...PATH, key];
    return { path: pathText(path), at: document.valueAt(path) ?? document.keyAt(PATH) };
  };
  const assume = (of: Assumed) => around.assumptions.push({ fabric: "", of });
  const way = written.way ?? "pieced";
  const per = written.per ?? (way === "pieced" ? "motif" : "block");
  const halves = written["half-lines"] ?? false;
  const grid = toTicksExact(written.grid.value);
  if (grid === null || (halves && grid % 2 === 1)) {
    around.diagnostics.push(foundationGrid(where("grid"), written.grid.text));
    return null;
  }
  const hold = written.hold ?? (written.after === TORN_AWAY ? "sew-in" : "fusible");
  const after = written.after ?? LEFT_IN;
  const needed = Math.ceil(seam / grid);
  const allowance = written.allowance ?? needed;
  const faults = [
    ...foundationFaults({ way, per, hold, after, grid, allowance }, around, where),
    ...unknownWords(written, around, where),
  ];
  around.diagnostics.push(...faults);
  if (faults.length > 0) return null;
  const inches = familyOf(settings.defaultUnit) === "imperial";
  const usualEase = inches ? TICKS_PER.in / 4 : TICKS_PER.cm / 2;
  const ease = written.ease === undefined ? usualEase : Number(ceil(written.ease.value));
  if (written.way === undefined) assume({ is: "foundation-way" });
  if (written.per === undefined) assume({ is: "foundation-per", per });
  if (way === "pieced" && written.allowance === undefined)
    assume({ is: "foundation-allowance", squares: allowance });
  if (way === "pieced" && written.ease === undefined)
    assume({ is: "foundation-ease", length: ease, moves: true });
  if (written.hold === undefined || written.after === undefined)
    assume({ is: "foundation-kept", hold, after });
  return {
    fabric: { word: written.fabric, path: "foundation.fabric", at: where("fabric").at },
    grid,
    halves,
    way,
    per,
    allowance: way === "folded" ? needed : allowance,
    ease: way === "folded" ? 0 : ease,
    hold,
    after,
    blocks:
      written.blocks?.map((word, i) => ({
        word,
        path: `foundation.blocks[${i}]`,
        at: document.valueAt([...PATH, "blocks", i]),
      })) ?? null,
    path: pathText(PATH),
    at: document.keyAt(PATH),
  };
}

/** Where a key of the foundation stands in the file. */
type Where = (key: string) => { path: string; at: ReturnType<SourceDocument["valueAt"]> };

/** Choices that do not go together, and printed squares that do not hold the seam allowance. */
function foundationFaults(
  {
    way,
    per,
    hold,
    after,
    grid,
    allowance,
  }: Pick<FoundationSpec, "way" | "per" | "hold" | "after" | "grid" | "allowance">,
  { settings, seam }: Around,
  where: Where,
): Diagnostic[] {
  const faults: Diagnostic[] = [];
  const say = (length: Ticks) => formatLength(length, settings.ruler);
  const allowed: readonly string[] = PER[way];
  if (!allowed.includes(per)) faults.push(foundationChoice(where("per"), { is: "per", way, per, allowed }));
  if (hold === "fusible" && after === TORN_AWAY)
    faults.push(foundationChoice(where("after"), { is: "fusible-torn" }));
  const needed = Math.ceil(seam / grid);
  if (way === "pieced" && allowance * grid < seam) {
    const reaches = { squares: allowance, side: say(grid) };
    faults.push(foundationAllowance(where("allowance"), reaches, say(seam), needed));
  }
  if (way === "folded" && seam % grid !== 0) {
    const squares = gridSquares({ n: BigInt(seam), d: 1n }, grid);
    const fits = seam % 2 === 0 ? [say(seam), say(seam / 2)] : [say(seam)];
    faults.push(foundationSeam(where("grid"), say(seam), squares, fits));
  } else if (way === "folded" && allowance !== needed) {
    faults.push(foundationChoice(where("allowance"), { is: "folded-allowance" }));
  }
  return faults;
}

function unknownWords(
  written: NonNullable<WrittenQuilt["foundation"]>,
  { fabrics, blockKeys, document }: Around,
  where: Where,
): Diagnostic[] {
  const names = fabrics.map(({ name }) => name);
  const found: Diagnostic[] = [];
  // A fabric with faults of its own is not in the list: then there is nothing to compare with.
  if (names.length > 0 && !names.includes(written.fabric))
    found.push(foundationUnknown(where("fabric"), "fabric", written.fabric, names));
  for (const [i, word] of (written.blocks ?? []).entries()) {
    if (blockKeys.includes(word)) continue;
    const at = document.valueAt([...PATH, "blocks", i]);
    found.push(foundationUnknown({ path: `foundation.blocks[${i}]`, at }, "block", word, blockKeys));
  }
  return found;
}

/**
 * The foundation is straightened by cutting along a printed line, so what that takes is rounded up to whole squares
 * and every later cut lies on a line too.
 */
export function straightenedOnLines(
  fabrics: readonly FabricSpec[],
  assumptions: readonly Assumption[],
  foundation: FoundationSpec | null,
): { fabrics: FabricSpec[]; assumptions: Assumption[] } {
  if (foundation === null) return { fabrics: [...fabrics], assumptions: [...assumptions] };
  const { grid } = foundation;
  const name = foundation.fabric.word;
  const straighten = fabrics.find((fabric) => fabric.name === name)?.straighten ?? 0;
  const isAssumed = (one: Assumption) => one.fabric === name && one.of.is === "straightening";
  const lost = (straighten: Ticks): Ticks => Math.ceil(straighten / grid) * grid;
  return {
    fabrics: fabrics.map((fabric) =>
      fabric.name === name
        ? {
            ...fabric,
            straighten: lost(fabric.straighten),
            squareUp: 0,
            have: fabric.have.map(asPrinted),
            readyCut: fabric.readyCut.map(asPrinted),
            onPrintedLines: true as const,
          }
        : fabric,
    ),
    assumptions: assumptions.map((one) =>
      isAssumed(one)
        ? { fabric: name, of: { is: "straightening-to-line", length: lost(straighten), moves: true } }
        : one,
    ),
  };
}

/** Printed lines are square to one another: a piece of foundation is not squared, only cut on its lines. */
function asPrinted({ squareUp: _, ...cloth }: FixedClothSpec): FixedClothSpec {
  return cloth;
}
