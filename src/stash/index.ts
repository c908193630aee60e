export { addCloth, emptyStash, printStash, spokenIn } from "./change-stash.ts";
export { readCloth } from "./read-cloth.ts";
export { readPlan } from "./read-plan.ts";
export { readStash } from "./read-stash.ts";
export { type Taken, takePlan } from "./take-plan.ts";
export { type ClothToHand, clothToHand } from "./to-hand.ts";
export type { Stash, StashCloth, StashColumns, StashRow } from "./types.ts";
