import {
  foundationAllowance,
  foundationChoice,
  foundationGrid,
  foundationSeam,
  foundationUnknown,
  sayGridSquares,
} from "../diagnostics/foundation.ts";
import type { Diagnostic } from "../diagnostics/types.ts";
import { formatLength } from "../length/format.ts";
import { familyOf, TICKS_PER } from "../length/measures.ts";
import { ceil, toTicksExact } from "../length/rational.ts";
import type { Ruler, Ticks } from "../length/types.ts";
import { assumed } from "./assumed.ts";
import { type Path, pathText, type SourceDocument } from "./document.ts";
import type { FileSettings } from "./fill-file.ts";
import type { FoundationSpec } from "./foundation-types.ts";
import type { WrittenQuilt } from "./quilt-schema.ts";
import type { Assumption, FabricSpec, FixedClothSpec } from "./types.ts";

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
const MEANT = {
  pieced: "Pieced patch by patch, a piece of foundation carries a unit, a motif or a block",
  folded: "Folded, a piece of foundation carries a block or a row of blocks",
} as const;

/**
 * Fills in the foundation. Defaults, each told: pieced, one piece of foundation for a motif (folded: a block), as
 * many squares beyond the seam line as hold the seam allowance, patches 1/4 in or 0.5 cm larger than exact, fusible
 * and left in. Common practice, no source: published ways differ, so each is a field of the file.
 * @returns null when there is none, or when what is written of it cannot be
 */
export function fillFoundation(written: WrittenQuilt["foundation"], around: Around): FoundationSpec | null {
  if (written === undefined) return null;
  const { document, settings, seam } = around;
  const where = (key: string) => {
    const path = key === "" ? PATH : [...PATH, key];
    return { path: pathText(path), at: document.valueAt(path) ?? document.keyAt(PATH) };
  };
  const faults: Diagnostic[] = [];
  const say = (length: Ticks) => formatLength(length, settings.ruler);
  const assume = (subject: string, value: string) => around.assumptions.push({ fabric: "", subject, value });
  const way = written.way ?? "pieced";
  const per = written.per ?? (way === "pieced" ? "motif" : "block");
  const halves = written["half-lines"] ?? false;
  const grid = toTicksExact(written.grid.value);
  if (grid === null || (halves && grid % 2 === 1)) {
    around.diagnostics.push(
      foundationGrid(where("grid"), written.grid.text, "no ruler has a mark for their lines"),
    );
    return null;
  }
  const allowed: readonly string[] = PER[way];
  if (!allowed.includes(per)) {
    const hint = `Write \`per: ${PER[way].join("`, `per: ")}\`, or \`way: ${way === "pieced" ? "folded" : "pieced"}\`.`;
    faults.push(foundationChoice(where("per"), `${MEANT[way]}, not a ${per}.`, hint));
  }
  const hold = written.hold ?? (written.after === "torn away" ? "sew-in" : "fusible");
  const after = written.after ?? "left in";
  if (hold === "fusible" && after === "torn away") {
    const message = "A fusible foundation is stuck to the patches and cannot be torn away.";
    faults.push(foundationChoice(where("after"), message, "Write `after: left in`, or `hold: sew-in`."));
  }
  const needed = Math.ceil(seam / grid);
  const allowance = written.allowance ?? needed;
  if (way === "pieced" && allowance * grid < seam) {
    const reaches = `${allowance === 1 ? "1 square" : `${allowance} squares`} of ${say(grid)}`;
    faults.push(foundationAllowance(where("allowance"), reaches, say(seam), needed));
  }
  if (way === "folded" && seam % grid !== 0) {
    const squares = sayGridSquares({ n: BigInt(seam), d: 1n }, grid);
    const fits = seam % 2 === 0 ? [say(seam), say(seam / 2)] : [say(seam)];
    faults.push(foundationSeam(where("grid"), say(seam), squares, fits));
  } else if (way === "folded" && allowance !== needed) {
    const message =
      "Folded, parts are laid edge to edge up to the edge of the foundation: nothing lies beyond.";
    faults.push(foundationChoice(where("allowance"), message, "Leave `allowance` out."));
  }
  faults.push(...unknownWords(written, around, where));
  around.diagnostics.push(...faults);
  if (faults.length > 0) return null;
  const inches = familyOf(settings.defaultUnit) === "imperial";
  const usualEase = inches ? TICKS_PER.in / 4 : TICKS_PER.cm / 2;
  const ease = written.ease === undefined ? usualEase : Number(ceil(written.ease.value));
  const squares = `${allowance} ${allowance === 1 ? "square" : "squares"}`;
  if (written.way === undefined) assume("foundation", "pieced patch by patch");
  if (written.per === undefined) assume("one piece of foundation for each", per);
  if (way === "pieced" && written.allowance === undefined)
    assume("foundation beyond the outermost seam line", squares);
  if (way === "pieced" && written.ease === undefined)
    around.assumptions.push(
      assumed("", "patches for the foundation larger by", [{ ticks: ease, moves: true }], settings.ruler),
    );
  if (written.hold === undefined || written.after === undefined) assume("foundation", `${hold}, ${after}`);
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

function unknownWords(
  written: NonNullable<WrittenQuilt["foundation"]>,
  { fabrics, blockKeys, document }: Around,
  where: (key: string) => { path: string; at: ReturnType<SourceDocument["valueAt"]> },
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
  ruler: Ruler,
): { fabrics: FabricSpec[]; assumptions: Assumption[] } {
  if (foundation === null) return { fabrics: [...fabrics], assumptions: [...assumptions] };
  const { grid } = foundation;
  const name = foundation.fabric.word;
  const straighten = fabrics.find((fabric) => fabric.name === name)?.straighten ?? 0;
  const isAssumed = (one: Assumption) => one.fabric === name && one.subject === "straightening";
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
            note: withNote(fabric.note),
          }
        : fabric,
    ),
    assumptions: assumptions.map((one) =>
      isAssumed(one)
        ? assumed(name, one.subject, [{ ticks: lost(straighten), moves: true }, ", to a printed line"], ruler)
        : one,
    ),
  };
}

/** Printed lines are square to one another: a piece of foundation is not squared, only cut on its lines. */
function asPrinted({ squareUp: _, ...cloth }: FixedClothSpec): FixedClothSpec {
  return cloth;
}

function withNote(note: string): string {
  const own = "cut it on its printed lines only";
  return note === "" ? own : `${note}; ${own}`;
}
