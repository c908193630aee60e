export { joinFromStrips, lossPerJoin, stripsToJoin } from "./joins.ts";
export { letterAt, letterPieces } from "./letters.ts";
export { listCuts } from "./list-cuts.ts";
export { mergePieces } from "./merge.ts";
export { backingPanels, bindingLength, bindingPiece } from "./quilt-finishing.ts";
export { listQuiltCuts } from "./quilt-list.ts";
export { matchOnCloth } from "./shapes.ts";
export type * from "./types.ts";
export { waysOfJoining } from "./ways-of-joining.ts";
