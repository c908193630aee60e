import type { Words } from "../../words/index.ts";
import type { Corner } from "../quilt/patches.ts";
import { INK, PAPER } from "../scene/palette.ts";
import { type Cell, section } from "../scene/rows.ts";
import { circle, type SceneNode } from "../scene/scene.ts";
import { textIn } from "../scene/text.ts";
import { clothNodes, cutNodes, pressNodes, printNodes, ruledNodes, sewnNodes } from "./draw-figure.ts";
import { boxCorners } from "./geometry.ts";
import type { StepFabric } from "./step-fabric.ts";

type Draw = (x: number, y: number) => SceneNode[];

/** Which signs stand in the pictures; only those are explained. */
export interface Signs {
  wrong: boolean;
  ruled: boolean;
  sewn: boolean;
  cut: boolean;
  pressed: boolean;
  oneWay: boolean;
  twoWay: boolean;
  stops: boolean;
}

/** What the signs of the pictures mean; without a heading where it stands among words. */
export function keyNodes(
  fabrics: readonly StepFabric[],
  shown: Signs,
  top: number,
  words: Words,
  headed = true,
): { nodes: SceneNode[]; bottom: number } {
  const cells = signsExplained(fabrics, shown, words).map(
    ([said, draw]): Cell =>
      (box) => [
        ...draw(box.x + 2, box.y + box.height / 2),
        textIn(said, { x: box.x + 40, y: box.y, width: box.width - 40, height: box.height }, { size: 9.5 }),
      ],
  );
  const heading = headed ? words.drawings.steps.key.heading : null;
  return section(heading, cells, { columns: 4, cellHeight: 20, top });
}

/** Each sign that is shown: what it means, and how it is drawn. */
function signsExplained(
  fabrics: readonly StepFabric[],
  shown: Signs,
  words: Words,
): [said: string, draw: Draw][] {
  const fabric = fabrics[0]?.name ?? "";
  const swatch =
    (side: "right" | "wrong"): Draw =>
    (x, y) => [
      clothNodes(
        { corners: [], fabric, letter: "", role: "", up: null, side },
        boxCorners({ x, y: y - 6.5, right: x + 28, bottom: y + 6.5 }),
        { fabrics },
      ),
    ];
  const over = (x: number, y: number): [Corner, Corner] => [
    [x, y],
    [x + 28, y],
  ];
  const print = (x: number, y: number, side: "right" | "wrong", twoWay: boolean): SceneNode[] =>
    printNodes([x, y], 7, INK, { up: 0, side, twoWay });
  const { key } = words.drawings.steps;
  const all: [boolean, string, Draw][] = [
    [shown.wrong, key.right, swatch("right")],
    [shown.wrong, key.wrong, swatch("wrong")],
    [shown.ruled, key.ruled, (x, y) => ruledNodes(over(x, y))],
    [shown.sewn, key.sewn, (x, y) => sewnNodes(over(x, y))],
    [
      shown.cut,
      key.cut,
      (x, y) =>
        cutNodes([
          [x + 5, y],
          [x + 19, y],
        ]),
    ],
    [shown.pressed, key.press, (x, y) => pressNodes([x + 12, y], [1, 0]).nodes],
    [
      shown.oneWay,
      shown.wrong ? key.printBoth : key.print,
      (x, y) => [
        ...print(x + 7, y, "right", false),
        ...(shown.wrong ? print(x + 21, y, "wrong", false) : []),
      ],
    ],
    [shown.twoWay, key.twoWay, (x, y) => print(x + 14, y, "right", true)],
    [shown.stops, key.stop, (x, y) => [circle(x + 14, y, 3, { fill: PAPER, stroke: INK, strokeWidth: 1.4 })]],
  ];
  return all.flatMap(([used, said, draw]): [string, Draw][] => (used ? [[said, draw]] : []));
}
