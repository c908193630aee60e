export { alikeLays, boughtWords, layTitle, weighedLines } from "./bought.ts";
export { alsoNeeded, assumptionsOf, buyList, priceOf, proofOf, totalPrice } from "./buy.ts";
export { FROM_BAGS, type Instruction, instructionsFor, ranges } from "./instructions.ts";
export { makingSteps } from "./making.ts";
export { cuttingSteps, handLines, leftoverSizes, pieceFacts } from "./steps.ts";
export { wasteTable } from "./waste.ts";
