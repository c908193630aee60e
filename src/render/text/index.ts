export { buyList } from "./buy.ts";
export { cuttingSteps, stepSentences } from "./steps.ts";
export { wasteTable } from "./waste.ts";
export { words } from "./words.ts";
