export { bySaving, difference, saves } from "./difference.ts";
export { ideasFor } from "./ideas.ts";
export { findSavings, type Saving, type Savings, tryIdeas } from "./try-ideas.ts";
export type { Bought, Change, Difference, Idea } from "./types.ts";
