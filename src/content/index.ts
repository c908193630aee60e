export { alikeLays, boughtWords, layTitle, weighedLines } from "./buying/bought.ts";
export { alsoNeeded, assumptionsOf, buyList, priceOf, proofOf, totalPrice } from "./buying/buy.ts";
export { FROM_BAGS, type Instruction, instructionsFor, ranges } from "./cutting/instructions.ts";
export { pieceFacts } from "./cutting/piece-facts.ts";
export { cuttingSteps, handLines, leftoverSizes } from "./cutting/steps.ts";
export { wasteTable } from "./cutting/waste.ts";
export { makingSteps } from "./sewing/making.ts";
