// Functions only: who loads this file late gets it as one value, and types are no part of that.
export { drawBlock, drawBlocks } from "./draw-block.ts";
export { drawFabric } from "./draw-fabric.ts";
export { drawFoundation } from "./draw-foundation.ts";
export { drawHatches } from "./draw-hatches.ts";
export { drawColouring, drawCover } from "./draw-picture.ts";
export { drawTemplate, drawTemplateSheets, onPaper } from "./draw-template.ts";
export { drawTop } from "./draw-top.ts";
export { drawUnits } from "./draw-units.ts";
export { drawMitre } from "./finish/draw-mitre.ts";
export { drawFoundationBeside } from "./foundation-beside.ts";
export { drawBlockPicture } from "./making-block-picture.ts";
export { drawBeside, drawSewing } from "./making-drawings.ts";
export { drawSettingPictures, drawStepKey, drawUnitPictures } from "./steps/draw-step-pictures.ts";
export { drawUnitSteps } from "./steps/draw-unit-steps.ts";
