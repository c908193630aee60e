export { addCloth, emptyStash, printStash, removeCloth } from "./change-stash.ts";
export { readCloth } from "./read-cloth.ts";
export { readPlan } from "./read-plan.ts";
export { readStash } from "./read-stash.ts";
export { takePlan } from "./take-plan.ts";
export { clothToHand } from "./to-hand.ts";
export type { Stash, StashCloth } from "./types.ts";
