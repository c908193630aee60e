export { buyList } from "./buy.ts";
export { type Instruction, instructionsFor } from "./instructions.ts";
export { cuttingSteps } from "./steps.ts";
export { wasteTable } from "./waste.ts";
export { words } from "./words.ts";
