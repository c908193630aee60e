export { alikeLays, boughtWords, layTitle, weighedLines } from "./bought.ts";
export { assumptionsOf, buyList, priceOf, proofOf, totalPrice } from "./buy.ts";
export { type Instruction, instructionsFor } from "./instructions.ts";
export { makingSteps } from "./making.ts";
export { cuttingSteps, leftoverSizes, type PieceFacts, pieceFacts, proofLines, ranges } from "./steps.ts";
export { type PrintedTable, wasteTable, wasteTables } from "./waste.ts";
export { words } from "./words.ts";
