/** The cutting engine's front door. */

export type { StockAims } from "./choose.ts";
export { lessenWork } from "./easing/lessen-work.ts";
export { type EngineJob, runJob } from "./jobs.ts";
export { nestLength } from "./nested/nest.ts";
export { pack } from "./pack.ts";
export { atMost } from "./problem/clock.ts";
export { ruleOfThumb } from "./problem/rule-of-thumb.ts";
export { verify } from "./problem/verify.ts";
export type * from "./types.ts";
export { hasPlan } from "./types.ts";
