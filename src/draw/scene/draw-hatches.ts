import type { Plan } from "../../plan/types.ts";
import type { Words } from "../../words/index.ts";
import { causesOf } from "../cutting/legend.ts";
import { PAGE_WIDTH } from "./frame.ts";
import { hatchLines } from "./hatch.ts";
import { INK, PAPER } from "./palette.ts";
import { cornersOf, rect, type Scene, type SceneNode } from "./scene.ts";
import { textIn } from "./text.ts";

const HIGH = 22;
const SWATCH = 26;

/** What each way of hatching means in the cutting diagrams of a plan, in one row; null where no cloth is hatched. */
export function hatchesScene(plan: Plan, words: Words): Scene | null {
  const causes = [...new Set(plan.fabrics.flatMap((fabric) => causesOf({ fabric })))];
  if (causes.length === 0) return null;
  const idPrefix = "hatches-";
  const width = PAGE_WIDTH / causes.length;
  const nodes = causes.flatMap((cause, i): SceneNode[] => {
    const box = { x: i * width + 1, y: 4, width: SWATCH, height: 14 };
    return [
      rect(box, { fill: PAPER }),
      ...hatchLines(cause, [cornersOf(box)], 1),
      rect(box, { fill: "none", stroke: INK, strokeWidth: 0.7 }),
      textIn(
        words.drawings.cutting.waste[cause],
        { x: box.x + SWATCH + 6, y: 4, width: width - SWATCH - 8, height: 14 },
        { size: 9 },
      ),
    ];
  });
  return {
    width: PAGE_WIDTH,
    height: HIGH,
    idPrefix,
    title: words.drawings.cutting.headings.waste,
    description: causes.map((cause) => words.drawings.cutting.waste[cause]).join(", "),
    nodes,
  };
}
