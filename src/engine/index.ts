/** The cutting engine's front door. */
export { atMost } from "./clock.ts";
export { type EngineJob, runJob } from "./jobs.ts";
export { lessenWork } from "./lessen-work.ts";
export { pack } from "./pack.ts";
export { ruleOfThumb } from "./rule-of-thumb.ts";
export type * from "./types.ts";
export { hasPlan } from "./types.ts";
export { verify } from "./verify.ts";
