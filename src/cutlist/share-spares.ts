import type { FabricSpec } from "../spec/types.ts";
import type { Marked } from "./merge.ts";
import { loosePatches } from "./record/record-loose.ts";
import type { Listed } from "./record/record-units.ts";
import type { PatchPart } from "./record/unit-record.ts";
import type { CutPiece } from "./types.ts";

/*
 * Squares are halved and quartered for each kind of unit by itself, and what one kind leaves over another may need:
 * a half of a print whose right angle is at the lower right serves whichever unit wants one. Bags of one fabric and
 * size are therefore counted again for all units together.
 */

type Needs = Map<PatchPart, number>;

/** Triangles taken from every bag, by part; bags are known by their index among `bags`. */
function needsOf(
  bags: readonly Marked[],
  made: readonly Listed[],
  fabrics: ReadonlyMap<string, FabricSpec>,
): Map<string, Needs> {
  const bagOf = new Map(
    bags.flatMap(({ marks }, index) => marks.map((mark) => [mark, String(index)] as const)),
  );
  const needs = new Map<string, Needs>();
  for (const listed of made) {
    const loose = listed.cover.batches.filter((batch) => batch.kind === "loose");
    if (!loose.some(({ laid }) => bagOf.has(laid.mark))) continue;
    const of = { letterOf: (mark: number) => bagOf.get(mark) ?? "", fabrics, seam: 0 };
    for (const patches of loosePatches(loose, listed, of)) {
      for (const { letter, part, count } of [...patches.values()].flat()) {
        const own = needs.get(letter) ?? new Map<PatchPart, number>();
        own.set(part, (own.get(part) ?? 0) + count);
        needs.set(letter, own);
      }
    }
  }
  return needs;
}

/** Pieces laid for units out of a bag, so that what else is in it stays out of the count. */
function laidFrom(marks: readonly number[], made: readonly Listed[]): number {
  const own = new Set(marks);
  return made
    .flatMap(({ cover }) => cover.batches)
    .reduce((sum, batch) => sum + (batch.kind === "loose" && own.has(batch.laid.mark) ? batch.count : 0), 0);
}

/** The fewest squares that give so many triangles of each part. */
function squaresFor(needs: Needs, { subcut }: CutPiece, kind: FabricSpec["print"]["kind"]): number {
  const of = (...parts: PatchPart[]): number => parts.reduce((sum, part) => sum + (needs.get(part) ?? 0), 0);
  const all = [...needs.values()];
  const total = all.reduce((sum, count) => sum + count, 0);
  if (kind === "none") return Math.ceil(total / (subcut === "twice-diagonal" ? 4 : 2));
  if (kind === "one-way") return Math.max(0, ...all);
  // A print that reads alike from both ends does not tell a triangle from the one opposite.
  if (subcut === "once-diagonal") return Math.ceil(total / 2);
  return Math.max(Math.ceil(of("top", "bottom") / 2), Math.ceil(of("left", "right") / 2));
}

/** Takes squares off a bag, and what they would have left over off its account of waste. */
function fewer(piece: CutPiece, saved: number): CutPiece {
  let left = saved;
  const uses = [...piece.uses].reverse().map((use) => {
    const own = Math.min(left, use.count);
    left -= own;
    return { ...use, count: use.count - own };
  });
  const corners = Math.max(0, (piece.corners ?? 0) - saved * piece.across * piece.along);
  return {
    ...piece,
    count: piece.count - saved,
    uses: uses.reverse(),
    ...(piece.corners === undefined ? {} : { corners }),
  };
}

/** The bags of one fabric with spare halves and quarters shared between the units that can use them. */
export function shareSpares(
  bags: readonly Marked[],
  fabric: FabricSpec,
  made: readonly Listed[],
  fabrics: ReadonlyMap<string, FabricSpec>,
): Marked[] {
  const shared = ({ piece, marks }: Marked): boolean =>
    marks.length > 1 && (piece.subcut === "once-diagonal" || piece.subcut === "twice-diagonal");
  if (!bags.some(shared)) return [...bags];
  const needs = needsOf(bags, made, fabrics);
  return bags.map((bag, index) => {
    const own = needs.get(String(index));
    if (!shared(bag) || own === undefined) return bag;
    const saved = laidFrom(bag.marks, made) - squaresFor(own, bag.piece, fabric.print.kind);
    return saved > 0 ? { ...bag, piece: fewer(bag.piece, saved) } : bag;
  });
}
