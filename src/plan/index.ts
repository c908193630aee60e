export { assembleFabric } from "./assemble-fabric.ts";
export { gatherFixed } from "./fixed-pieces.ts";
export { LENGTH_IN_HAND, type LengthInHand } from "./length-in-hand.ts";
export { listTemplates } from "./list-templates.ts";
export type { SharedEffort } from "./pack-shared.ts";
export { planCutLists } from "./plan-cut-lists.ts";
export { type FixedPiece, posePackingProblem } from "./pose-problem.ts";
export type { Bolt, PlanRequest, PlanSettings, Solve } from "./request.ts";
export * from "./types.ts";
