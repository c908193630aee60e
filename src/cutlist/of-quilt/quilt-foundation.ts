import type { QuiltWork } from "../../quilt/index.ts";
import type { FabricSpec } from "../../spec/types.ts";
import type { CutPiece } from "../types.ts";
import { PLAIN_PIECE } from "./quilt-strips.ts";

/** The pieces of foundation, in whole printed squares: one line for each size. */
export function foundationPieces(work: QuiltWork, fabric: FabricSpec): CutPiece[] {
  const { foundation } = work;
  if (foundation === null || foundation.fabric !== fabric.name) return [];
  return foundation.parts.map(({ letter, count, cut }): CutPiece => {
    const [across, along] = [cut.across * foundation.grid, cut.down * foundation.grid];
    return {
      ...PLAIN_PIECE,
      across: Math.min(across, along),
      along: Math.max(across, along),
      count,
      turnable: fabric.print.kind === "none" && across !== along,
      uses: [
        {
          purpose: { for: "foundation", per: foundation.per, letter, across: cut.across, down: cut.down },
          count,
        },
      ],
      notes: [{ is: "printed-lines" }],
      // The web lies under the patches: none of it is lost to seams or trimming.
      corners: 0,
      seams: 0,
    };
  });
}
