export type { SharedEffort } from "./pack-shared.ts";
export { planCutLists } from "./plan-cut-lists.ts";
export { type FixedPiece, posePackingProblem } from "./pose-problem.ts";
export type { Bolt, PlanRequest, PlanSettings, Solve } from "./request.ts";
export * from "./types.ts";
export { withinWork } from "./work-limit.ts";
