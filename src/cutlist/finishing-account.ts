import type { Ticks } from "../length/types.ts";
import type { QuiltWork } from "../quilt/index.ts";
import type { BindingSpec } from "../spec/quilt-types.ts";
import type { CutPiece } from "./types.ts";

/*
 * What sewing makes of backing and binding, for the account of the cloth: what is seen in the finished quilt, what
 * lies hidden in seams and folds, what is cut off. Derived geometry, areas in square ticks.
 */

function areaOf({ across, along, count }: CutPiece): number {
  return across * along * count;
}

/**
 * Binding shows its outer layer beyond the seam, once round the quilt; its other layer and the allowances are hidden,
 * and what is longer than the run is cut off.
 * @param length of the run, corners and closing included
 */
export function withBindingAccount(
  piece: CutPiece,
  binding: Pick<BindingSpec, "fold" | "width" | "extra">,
  length: Ticks,
  seam: Ticks,
): CutPiece {
  const shown = binding.fold === "double" ? binding.width / 2 - seam : binding.width - 2 * seam;
  const used = Math.min(areaOf(piece), length * binding.width);
  const seen = Math.max(0, Math.round(shown * (length - binding.extra)));
  return { ...piece, seams: Math.max(0, used - seen), corners: areaOf(piece) - used };
}

/**
 * Backing shows as much as the top does; its edge lies under the binding, its panels' seams are hidden, and what
 * reaches beyond the quilt is cut off, the allowances of its seams there too.
 */
export function withBackingAccount(
  piece: CutPiece,
  { top }: Pick<QuiltWork, "top">,
  seam: Ticks,
  seams: "vertical" | "horizontal",
): CutPiece {
  const cut = areaOf(piece);
  const raw = Math.min(cut, top.across * top.down);
  const seen = Math.max(0, top.across - 2 * seam) * Math.max(0, top.down - 2 * seam);
  const inSeams = (piece.count - 1) * 2 * seam * (seams === "vertical" ? top.down : top.across);
  const hidden = Math.min(cut - seen, raw - seen + inSeams);
  return { ...piece, seams: hidden, corners: cut - seen - hidden };
}
