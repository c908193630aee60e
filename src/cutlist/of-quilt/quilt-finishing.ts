import { waddingOverPackages, waddingSize } from "../../diagnostics/quilts/quilt-plan.ts";
import type { Diagnostic } from "../../diagnostics/types.ts";
import { formatSize } from "../../length/format.ts";
import { fromInteger, rational } from "../../length/rational.ts";
import {
  compareSurd,
  divSurd,
  floorSurd,
  roundSurdUpToMark,
  scaleSurd,
  surd,
  timesRoot2,
} from "../../length/surd.ts";
import type { Ticks } from "../../length/types.ts";
import type { QuiltWork } from "../../quilt/index.ts";
import type { BackingSpec, BindingSpec, QuiltSpec } from "../../spec/quilt-types.ts";
import type { FabricSpec } from "../../spec/types.ts";
import { usableWidth } from "../../stock/usable-width.ts";
import { fromWholeStrips, leastEnd, lossPerJoin, stripsToJoin } from "../joins.ts";
import type { CutPiece, PieceNote } from "../types.ts";
import { PACKETS, packagedFor } from "../wadding-sizes.ts";
import { PLAIN_PIECE } from "./quilt-strips.ts";

/** Length of binding to make: once round the raw edge, and what corners and closing take. */
export function bindingLength(top: QuiltWork["top"], binding: BindingSpec): Ticks {
  return 2 * (top.across + top.down) + binding.extra;
}

/** Binding: strips across the fabric joined end to end, or squares for continuous bias. */
export function bindingPiece(
  binding: BindingSpec,
  fabric: FabricSpec,
  work: QuiltWork,
  spec: QuiltSpec,
): CutPiece | null {
  const length = bindingLength(work.top, binding);
  const usable = usableWidth(fabric);
  if (binding.cut === "bias") return biasPiece(binding, length, usable, spec);
  return fromWholeStrips({
    ...PLAIN_PIECE,
    across: usable,
    along: binding.width,
    fullWidth: true,
    count: 1,
    uses: [{ purpose: { for: "binding", bias: false, length, fold: binding.fold }, count: 1 }],
    joined: {
      length,
      loss: lossPerJoin(binding.join, binding.width, spec.ruler),
      join: binding.join,
      leastEnd: leastEnd(spec, usable, length),
      lengths: [],
      whole: binding.fold,
      notes: [],
    },
  });
}

/**
 * Continuous bias from squares: a square of side D gives whole strips n = floor((D - 2 seams) / (w root 2)), and
 * n x (D - 2 seams) x root 2 of binding. Derived geometry. The least D on the marks that gives enough; several
 * equal squares when one would be wider than the fabric.
 */
function biasPiece(binding: BindingSpec, length: Ticks, usable: Ticks, spec: QuiltSpec): CutPiece | null {
  for (let squares = 1; squares <= 40; squares += 1) {
    const side = biasSquare(Math.ceil(length / squares), binding.width, spec);
    if (side > usable) continue;
    return {
      ...PLAIN_PIECE,
      across: side,
      along: side,
      count: squares,
      uses: [{ purpose: { for: "binding", bias: true, length, fold: binding.fold }, count: squares }],
      roundedUp: true,
      notes: [{ is: "bias", width: binding.width }],
    };
  }
  return null;
}

/** Side of the square, on the marks, that gives at least the length in whole strips. */
export function biasSquare(length: Ticks, width: Ticks, spec: QuiltSpec): Ticks {
  const { mark } = spec.ruler;
  const seams = 2 * spec.seam;
  const pitch = timesRoot2(fromInteger(width));
  const wanted = surd(fromInteger(length));
  // One strip fewer than area would give is a safe place to start from.
  let side = roundSurdUpToMark(surd(fromInteger(width + seams)), mark);
  for (;;) {
    const inner = surd(fromInteger(side - seams));
    const strips = floorSurd(divSurd(inner, pitch));
    const gives = scaleSurd(timesRoot2(fromInteger(side - seams)), rational(strips));
    if (compareSurd(gives, wanted) >= 0) return side;
    side += mark;
  }
}

/** How a backing is pieced. */
export interface Panels {
  count: number;
  /** Length of each along the selvage. */
  along: Ticks;
  seams: "vertical" | "horizontal";
  /** The print has a direction and lies on its side in the quilt. */
  sideways: boolean;
}

/** Panels for a backing so wide: as many widths as fill one way, each as long as the other way. */
function panels(
  across: Ticks,
  down: Ticks,
  usable: Ticks,
  seam: Ticks,
  seams: Panels["seams"],
): Omit<Panels, "sideways"> | null {
  const [fill, along] = seams === "vertical" ? [across, down] : [down, across];
  const count = stripsToJoin(fill, usable, 2 * seam);
  return count === null ? null : { count, along, seams };
}

/**
 * The panels of a backing. One piece has no seams, so that a print alone says how it lies. Of several the seams run as
 * the file says; where it does not, as a print with a direction stands upright, else whichever way takes less length.
 */
export function backingPanels(
  backing: BackingSpec,
  fabric: FabricSpec,
  work: QuiltWork,
  spec: QuiltSpec,
): Panels | null {
  const usable = usableWidth(fabric);
  const [across, down] = [work.top.across + 2 * backing.overhang, work.top.down + 2 * backing.overhang];
  const { kind, axis } = fabric.print;
  const upright = axis === "along" ? "vertical" : "horizontal";
  const way = (seams: Panels["seams"]): Panels[] => {
    const found = panels(across, down, usable, spec.seam, seams);
    return found === null ? [] : [{ ...found, sideways: kind !== "none" && seams !== upright }];
  };
  const free = kind === "none" ? (["vertical", "horizontal"] as const) : ([upright] as const);
  const whole = free.flatMap(way).filter(({ count }) => count === 1);
  const asked = backing.seams === "either" ? free : ([backing.seams] as const);
  const ways = whole.length > 0 ? whole : asked.flatMap(way);
  return ways.sort((a, b) => a.count * a.along - b.count * b.along)[0] ?? null;
}

/**
 * Backing: full widths of the fabric sewn side by side, seams down or across the quilt, whichever takes less
 * length; a print with a direction settles it.
 */
export function backingPiece(
  backing: BackingSpec,
  fabric: FabricSpec,
  work: QuiltWork,
  spec: QuiltSpec,
): CutPiece | null {
  const usable = usableWidth(fabric);
  const [across, down] = [work.top.across + 2 * backing.overhang, work.top.down + 2 * backing.overhang];
  const best = backingPanels(backing, fabric, work, spec);
  if (best === null) return null;
  const { count: panels, seams } = best;
  const notes: PieceNote[] = [{ is: "backing", across, down, panels, seams }];
  if (best.count === 1) {
    const [a, b] = best.seams === "vertical" ? [across, down] : [down, across];
    const turnable = fabric.print.kind === "none" && a !== b;
    return {
      ...PLAIN_PIECE,
      across: a,
      along: b,
      count: 1,
      turnable,
      uses: [{ purpose: { for: "backing" }, count: 1 }],
      notes,
    };
  }
  const sewn = best.count * usable - 2 * spec.seam * (best.count - 1);
  const over = sewn - (best.seams === "vertical" ? across : down);
  return {
    ...PLAIN_PIECE,
    across: usable,
    along: best.along,
    fullWidth: true,
    count: best.count,
    // Trimmed alike on both sides, as the places of the seams are told.
    ...(over > 1 ? { rests: [{ cause: "panel-side", count: 2, across: Math.floor(over / 2) }] } : {}),
    uses: [{ purpose: { for: "backing-panels" }, count: best.count }],
    notes,
  };
}

/** Wadding: its size is told; as a fabric of the file it is cut like a backing, its widths butted without seams. */
export function waddingPiece(
  fabric: FabricSpec | null,
  work: QuiltWork,
  spec: QuiltSpec,
  diagnostics: Diagnostic[],
): CutPiece | null {
  const { wadding } = spec;
  if (wadding === null) return null;
  const [across, down] = [work.top.across + 2 * wadding.overhang, work.top.down + 2 * wadding.overhang];
  const size = formatSize(across, down, spec.ruler);
  const largest = PACKETS.at(-1);
  diagnostics.push(
    fabric === null && largest !== undefined && packagedFor(across, down) === null
      ? waddingOverPackages(wadding, size, formatSize(largest.across, largest.along, spec.ruler))
      : waddingSize(wadding, size),
  );
  if (fabric === null) return null;
  const free = { ...fabric, print: { ...fabric.print, kind: "none" as const } };
  const as = {
    ...wadding,
    fabric: wadding.fabric ?? { word: "", path: "", at: null },
    seams: "either" as const,
  };
  const piece = backingPiece(as, free, work, { ...spec, seam: 0 });
  return piece === null
    ? null
    : {
        ...piece,
        uses: [{ purpose: { for: "wadding" }, count: piece.count }],
        notes: piece.notes.map((note) => (note.is === "backing" ? { ...note, is: "wadding" } : note)),
      };
}
