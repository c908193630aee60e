import type { KitList } from "../cutlist/for-class.ts";
import type { CutList } from "../cutlist/types.ts";
import type { Diagnostic } from "../diagnostics/types.ts";
import type { EngineJob } from "../engine/index.ts";
import type { PackingResult, SearchLimits } from "../engine/types.ts";
import type { QuiltTop } from "../quilt/types.ts";
import type { CutListSpec } from "../spec/types.ts";
import type { LengthInHand } from "./length-in-hand.ts";
import type { SharedEffort } from "./pack-shared.ts";
import type { FixedPiece } from "./pose-problem.ts";

/** What a plan needs to know of the maker's file besides the cut lists. Both kinds of file have it. */
export type PlanSettings = Pick<
  CutListSpec,
  | "name"
  | "ruler"
  | "style"
  | "prefer"
  | "rulerLength"
  | "matLength"
  | "folded"
  | "keepFrom"
  | "joinFrom"
  | "assumptions"
>;

/** Does a batch of engine jobs, one after another or side by side, and answers in the same order. */
export type Solve = (jobs: readonly EngineJob[]) => Promise<PackingResult[]>;

/** How fabrics are searched, the same for all of a plan. */
export interface Search {
  settings: PlanSettings;
  limits: SearchLimits;
  /** How the first packing of all fabrics shares its work; null where each may take what `limits` allow. */
  effort: SharedEffort | null;
  solve: Solve;
}

/** Whether cloth may be bought. */
export type Bolt = "as-needed" | "none";

export interface PlanRequest {
  spec: PlanSettings;
  cutLists: readonly CutList[];
  /** Cloth to hand, per fabric in the order of `cutLists`. Default: none. */
  fixedStock?: readonly (readonly FixedPiece[])[];
  /**
   * Whether what the cloth to hand does not hold may be bought: for all fabrics, or for each in the order of
   * `cutLists`. Default `as-needed`.
   */
  bolt?: Bolt | readonly Bolt[];
  /** A length of the bolt that is there already, for each in the order of `cutLists`. Default: none. */
  inHand?: readonly (LengthInHand | null)[];
  /** For a class of several sorts of kits: what each takes of each fabric, in the order of `cutLists`. Default: none. */
  sorts?: readonly (readonly KitList[])[];
  /** How many times everything is cut, all together: kits for a class. Default 1. */
  kits?: number;
  /** The quilt top the cut lists came from, carried in the plan for drawing. Default null. */
  top?: QuiltTop | null;
  /** What reading and listing had to say; the plan repeats it. Default: nothing. */
  diagnostics?: readonly Diagnostic[];
  /** How long to search. Default: to the end. */
  limits?: SearchLimits;
  /** Look whether strips cut once more along their length would buy less, and say so. Default: no. */
  suggestStacks?: boolean;
  /** How the first packing of all fabrics shares its work. Default: each may take what `limits` allow. */
  effort?: SharedEffort | null;
  solve: Solve;
}
