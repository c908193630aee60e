export { exactToNumber } from "./exact.ts";
export { type LaidQuilt, layOutQuilt } from "./lay-out-quilt.ts";
export { type Restated, restate, type SizeChange } from "./restate.ts";
export type * from "./types.ts";
export { type SizesAsked, type UnitSizes, unitSizes } from "./unit-sizes.ts";
export { findUnitKind, UNIT_KINDS } from "./units/registry.ts";
export { countSets } from "./units/strip-sets.ts";
export { waysToCut } from "./units/ways.ts";
export type { QuiltWork, UnitDemand } from "./work-types.ts";
