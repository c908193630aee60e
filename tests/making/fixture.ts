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
  return { ...worked, making: planMaking(worked, worked.spec) };
}

export function pressingOf(made: Made): Pressing {
  if (made.making.pressing === null) throw new Error("no pressing");
  return made.making.pressing;
}
