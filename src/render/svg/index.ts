// Functions only: who loads this file late gets it as one value, and types are no part of that.
export { blockApart, drawBlock, drawBlocks } from "./draw-block.ts";
export { drawFabric, fabricScene, fabricScenes } from "./draw-fabric.ts";
export { drawFoundation } from "./draw-foundation.ts";
export { hatchesScene } from "./draw-hatches.ts";
export { colouringScene, coverScene } from "./draw-picture.ts";
export { drawTemplate, onPaper, templateSheets } from "./draw-template.ts";
export { drawTop } from "./draw-top.ts";
export { drawUnits } from "./draw-units.ts";
export { mitreScene } from "./finish/draw-mitre.ts";
export { foundationBesideScenes } from "./foundation-beside.ts";
export { blockPictureScene } from "./making-block-picture.ts";
export { besideScenes, drawSewing } from "./making-drawings.ts";
export { settingPictures, stepKeyScene, unitPictures } from "./steps/draw-step-pictures.ts";
export { drawUnitSteps } from "./steps/draw-unit-steps.ts";
