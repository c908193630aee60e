import { INK, PAPER } from "../palette.ts";
import type { Corner } from "../patches.ts";
import { type Cell, section } from "../rows.ts";
import { circle, type SceneNode } from "../scene.ts";
import { textIn } from "../text.ts";
import { clothNodes, cutNodes, pressNodes, printNodes, ruledNodes, sewnNodes } from "./draw-figure.ts";
import { boxCorners } from "./geometry.ts";
import type { StepFabric } from "./step-fabric.ts";
import { STEP_WORDS } from "./words.ts";

/** What the signs of the pictures mean. */
export function keyNodes(
  view: { fabrics: readonly StepFabric[]; idPrefix: string },
  top: number,
): { nodes: SceneNode[]; bottom: number } {
  const fabric = view.fabrics[0]?.name ?? "";
  const swatch = (side: "right" | "wrong") => (x: number, y: number) => [
    clothNodes(
      { corners: [], fabric, letter: "", role: "", up: null, side },
      boxCorners({ x, y: y - 6.5, right: x + 28, bottom: y + 6.5 }),
      view,
    ),
  ];
  const over = (x: number, y: number): [Corner, Corner] => [
    [x, y],
    [x + 28, y],
  ];
  const { key } = STEP_WORDS;
  const kinds = new Set(view.fabrics.map(({ print }) => print.kind));
  const signs: [string, (x: number, y: number) => SceneNode[]][] = [
    [key.right, swatch("right")],
    [key.wrong, swatch("wrong")],
    [key.ruled, (x, y) => ruledNodes(over(x, y))],
    [key.sewn, (x, y) => sewnNodes(over(x, y))],
    [
      key.cut,
      (x, y) =>
        cutNodes([
          [x + 5, y],
          [x + 19, y],
        ]),
    ],
    [key.press, (x, y) => pressNodes([x + 12, y], [1, 0]).nodes],
    ...(kinds.has("one-way")
      ? [
          [
            key.print,
            (x: number, y: number) => [
              ...printNodes([x + 7, y], 0, 7, INK, "right", false),
              ...printNodes([x + 21, y], 0, 7, INK, "wrong", false),
            ],
          ] as [string, (x: number, y: number) => SceneNode[]],
        ]
      : []),
    ...(kinds.has("two-way")
      ? [
          [key.twoWay, (x: number, y: number) => printNodes([x + 14, y], 0, 7, INK, "right", true)] as [
            string,
            (x: number, y: number) => SceneNode[],
          ],
        ]
      : []),
    [key.stop, (x, y) => [circle(x + 14, y, 3, { fill: PAPER, stroke: INK, strokeWidth: 1.4 })]],
  ];
  const cells = signs.map(
    ([words, draw]): Cell =>
      (box) => [
        ...draw(box.x + 2, box.y + box.height / 2),
        textIn(words, { x: box.x + 40, y: box.y, width: box.width - 40, height: box.height }, { size: 9.5 }),
      ],
  );
  return section(key.heading, cells, { columns: 4, cellHeight: 20, top });
}
