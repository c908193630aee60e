import type { CutPiece } from "../../cutlist/types.ts";
import type { FabricPlan } from "../../plan/types.ts";
import type { FabricPhoto } from "../scene/textures.ts";

/** What the pictures of the steps need to know of a fabric: its look, its direction and what is cut from it. */
export interface StepFabric extends Pick<FabricPlan, "name" | "colour" | "print"> {
  pieces: readonly CutPiece[];
  photo?: FabricPhoto;
}
