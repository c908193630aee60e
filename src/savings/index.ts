export { bySaving, difference, saves } from "./difference.ts";
export { ideasFor } from "./ideas.ts";
export { findSavings, tryIdeas } from "./try-ideas.ts";
export type { Change, Difference } from "./types.ts";
