export { type BlockOptions, drawBlock, drawBlocks } from "./draw-block.ts";
export { type DrawOptions, drawFabric } from "./draw-fabric.ts";
export { drawFoundation } from "./draw-foundation.ts";
export { type DrawnSheet, drawTemplate, drawTemplateSheets, onPaper } from "./draw-template.ts";
export { drawTop, type TopOptions } from "./draw-top.ts";
export { drawUnits } from "./draw-units.ts";
export { drawSewing, type SewingDrawing } from "./making-drawings.ts";
export { drawUnitSteps } from "./steps/draw-unit-steps.ts";
export type { DrawnFabric } from "./textures.ts";
