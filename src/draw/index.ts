// Functions only: who loads this file late gets it as one value, and types are no part of that.

export { drawFabric, fabricScene, fabricScenes } from "./cutting/draw-fabric.ts";
export { mitreScene } from "./finish/draw-mitre.ts";
export { drawFoundation } from "./foundation/draw-foundation.ts";
export { foundationBesideScenes } from "./foundation/foundation-beside.ts";
export { lettersIn } from "./quilt/block-bags.ts";
export { blockApart, drawBlock, drawBlocks } from "./quilt/draw-block.ts";
export { colouringScene, coverScene } from "./quilt/draw-picture.ts";
export { drawTop } from "./quilt/draw-top.ts";
export { drawUnits } from "./quilt/draw-units.ts";
export { hatchesScene } from "./scene/draw-hatches.ts";
export { blockPictureScene } from "./sewing/making-block-picture.ts";
export { besideScenes, drawSewing } from "./sewing/making-drawings.ts";
export { settingPictures, stepKeyScene, unitPictures } from "./steps/draw-step-pictures.ts";
export { drawUnitSteps } from "./steps/draw-unit-steps.ts";
export { drawTemplate, onPaper, templateSheets } from "./templates/draw-template.ts";
