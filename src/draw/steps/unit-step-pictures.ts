import type { Ruler } from "../../length/types.ts";
import type { Making } from "../../making/types.ts";
import type { QuiltTop } from "../../quilt/types.ts";
import type { Words } from "../../words/index.ts";
import { toSvg } from "../scene/canvas.ts";
import { PAPER } from "../scene/palette.ts";
import { rect, type Scene, type SceneNode } from "../scene/scene.ts";
import { layPanel } from "./draw-panel.ts";
import { signsOf, toldOf } from "./draw-unit-steps.ts";
import { keyNodes } from "./key.ts";
import type { StepFabric } from "./step-fabric.ts";

/** One picture of a step, to be looked at alone. */
export interface StepPicture {
  /** Number of the step, with a letter where it has several pictures; empty for what it is now. */
  number: string;
  says: string;
  /** Which of several batches or heaps it is of; empty where there is one. */
  heading: string;
  svg: string;
}

const EDGE = 4;

function asSvg(
  nodes: readonly SceneNode[],
  size: { width: number; height: number },
  says: { title: string; of: string },
  idPrefix: string,
): string {
  const [width, height] = [size.width + 2 * EDGE, Math.ceil(size.height + 2 * EDGE)];
  const scene: Scene = {
    idPrefix,
    title: says.title,
    description: says.of,
    width,
    height,
    nodes: [rect({ x: 0, y: 0, width, height }, { fill: PAPER }), ...nodes],
  };
  return toSvg(scene);
}

/**
 * The pictures of the printed sheets one by one: for every group of units that are sewn alike, in the order in which the text
 * tells them, with the first unit of each by its index into `making.units`; then for the triangles of a setting, which are none. The last is what the signs in them mean.
 */
export function unitStepPictures(
  top: QuiltTop,
  making: Making,
  fabrics: readonly StepFabric[],
  ruler: Ruler,
  words: Words,
): {
  units: { unit: number | null; title: string; under: string[]; pictures: StepPicture[] }[];
  key: string;
} {
  const told = toldOf(top, making, fabrics, ruler, words);
  const units = told.map(({ unit, title, under, groups, most }, u) => ({
    unit,
    title,
    under,
    pictures: groups.flatMap(({ heading, panels }, g) =>
      panels.map((panel, p): StepPicture => {
        const idPrefix = `step-${u + 1}-${g + 1}-${p + 1}-`;
        // What it says is told beside the picture, in the letters of the page.
        const laid = layPanel({ ...panel, number: "", says: "" }, most, fabrics);
        const nodes = laid.draw(EDGE, EDGE, laid.height);
        const { number, says } = panel;
        return { number, says, heading, svg: asSvg(nodes, laid, { title: says, of: heading }, idPrefix) };
      }),
    ),
  }));
  const key = keyNodes(fabrics, signsOf(told, fabrics), EDGE, words);
  const size = { width: 700, height: key.bottom };
  return { units, key: asSvg(key.nodes, size, { title: "", of: "" }, "step-key-") };
}
