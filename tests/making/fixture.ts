import { type Making, type Pressing, planMaking } from "../../src/making/index.ts";
import { type WorkedOut, workOut } from "../quilt/reading.ts";

export type Turn = 0 | 1 | 2 | 3;

/** A block of equal squares, so many each way. */
export interface SquareBlock {
  name: string;
  squares: number;
}

export interface SetBlock {
  block: number;
  turn: Turn;
}

const MARKS = ["", ">", "v", "<"] as const;

/** A quilt of such blocks, 12 in each, set straight; `turn` in quarters clockwise. */
export function quiltOfSquares(
  blocks: readonly SquareBlock[],
  rows: readonly (readonly SetBlock[])[],
): string {
  const used = new Set(rows.flat().map(({ block }) => block));
  const drawn = blocks.flatMap(({ name, squares }, i) => {
    if (!used.has(i)) return [];
    const line = Array(squares).fill("a").join(" ");
    const grid = Array(squares).fill(`      ${line}`).join("\n");
    return [`  ${name}:\n    size: 12\n    grid: |\n${grid}\n    cells: { a: { square: red } }`];
  });
  const set = rows.map((row) => {
    const marks = row.map(({ block, turn }) => `${blocks[block]?.name}${MARKS[turn]}`);
    return `    ${marks.join(" ")}`;
  });
  return `name: Squares\nfabrics: [{ name: red, width: 44 in, selvage: 1 in }]\nblocks:\n${drawn.join(
    "\n",
  )}\nsetting:\n  rows: |\n${set.join("\n")}\n`;
}

export interface Made extends WorkedOut {
  making: Making;
}

export function make(text: string): Made {
  const worked = workOut(text);
  return { ...worked, making: planMaking(worked, worked.units, worked.spec) };
}

export function pressingOf(made: Made): Pressing {
  if (made.making.pressing === null) throw new Error("no pressing");
  return made.making.pressing;
}

/** Every kind of border about a straight top, one of them fitted to the next, and blocks with a whorl. */
export const EVERY_BORDER = `name: Every border
fabrics:
  - { name: red, colour: "#aa2233" }
  - { name: white, colour: "#f5f5f0" }
  - { name: stripe, colour: "#3366aa" }
  - { name: back, colour: "#888888", width: 44 in, print: one-way }
blocks:
  whirl:
    size: 6
    grid: |
      a  -  b
      c  m  |
      |  d  -
    cells: { a: { rectangle: red }, b: { rectangle: white }, c: { rectangle: white }, d: { rectangle: red }, m: { square: white } }
  fan: { size: 6, grid: ["h h", "h h"], cells: { h: { half-square triangle: [red, white] } } }
  bar: { size: 3 x 2, cell: { rectangle: red } }
setting:
  rows: |
    whirl fan whirl
    fan whirl fan
    whirl fan whirl
    fan whirl fan
borders:
  - { name: coping, fabric: white, width: fit }
  - { name: bars, block: bar, width: 2, cornerstones: white }
  - { name: tops, fabric: red, width: 2, corners: tops first, over-long: 2 }
  - { name: outer, fabric: stripe, width: 4, corners: mitred }
binding: { fabric: red, cut: bias }
backing: { fabric: back }
wadding: { overhang: 4 }
quilting: { by: hand, lines: crossed, spacing: 1 1/2 }
`;

/** The same about blocks on point: so many to a full row, and so many full rows. */
export function onPoint(across: number, down: number, borders = ""): string {
  const rows = Array.from(
    { length: 2 * down - 1 },
    (_, i) => `    patch*${i % 2 === 0 ? across : across - 1}`,
  );
  return `name: On point
fabrics: [{ name: red }, { name: white }]
blocks:
  patch: { size: 4, cell: { four-patch: [red, white] } }
  bar: { size: 3 x 2, cell: { rectangle: red } }
setting:
  layout: on point
  triangles: white
  rows: |
${rows.filter((row) => !row.endsWith("*0")).join("\n")}
${borders}`;
}
