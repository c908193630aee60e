export { exactToNumber } from "./exact.ts";
export type * from "./foundation/types.ts";
export { type LaidQuilt, layOutQuilt } from "./lay-out-quilt.ts";
export { fillRows } from "./layout/setting.ts";
export { restate } from "./sizes/restate.ts";
export { unitSizes } from "./sizes/unit-sizes.ts";
export { straightSplit } from "./straight-split.ts";
export {
  blockAlikeAfter,
  type MotifPlace,
  type Motifs,
  motifsOf,
  type TurnedBlock,
  turnMotifs,
} from "./turning/turn-motifs.ts";
export { unitTurns } from "./turning/unit-turns.ts";
export type * from "./types.ts";
export { unitList } from "./unit-list.ts";
export { plainDesign } from "./units/design.ts";
export { ON_FOUNDATION } from "./units/on-foundation.ts";
export { findUnitKind, UNIT_KINDS } from "./units/registry.ts";
export { sewnSizes } from "./units/sewn-sizes.ts";
export { countSets } from "./units/strip-sets.ts";
export type { Recipe } from "./units/types.ts";
export { waysToCut } from "./units/ways.ts";
export type { QuiltWork, UnitDemand } from "./work-types.ts";
