import { formatLength, formatSize, type Ticks } from "../../length/index.ts";
import type { DiagonalRow, JoinStep, Making, PressedSeam, RowPressing } from "../../making/types.ts";
import type { Plan } from "../../plan/types.ts";
import { partNames } from "./block-names.ts";
import { blockWords, type Presses } from "./block-words.ts";
import { indented, measured, measuredSize, partsTold } from "./making-lines.ts";
import { makingWords } from "./making-words.ts";
import { pressesOf } from "./pressed.ts";

/** Told of the top: its rows with their pressing, and how they are joined. */

interface Line {
  numbers: string[];
  parts: string;
  text: (numbers: string) => string;
}

/** Lines sewn alike are told once, by their numbers. */
function gathered(
  lines: readonly { number: string; told: (numbers: string) => string }[],
  line: "row" | "column",
) {
  const alike = new Map<string, { numbers: string[]; told: (numbers: string) => string }>();
  for (const { number, told } of lines) {
    const key = told("");
    const group = alike.get(key) ?? { numbers: [], told };
    group.numbers.push(number);
    alike.set(key, group);
  }
  return [...alike.values()].map(({ numbers, told }) => told(blockWords.lines(numbers, line)));
}

function softOf(row: number, rows: readonly RowPressing[]): RowPressing["press"] {
  return rows.find((each) => each.row === row)?.press ?? null;
}

/** Rows of the top; rows sewn alike are told once. */
export function topLines(making: Making, plan: Plan): string[] {
  if (making.diagonal.length > 0) return diagonalLines(making, plan);
  const joins = making.joins.filter(({ stage }) => stage === "top");
  if (joins.length === 0) return [];
  const { pressing, scale } = making;
  const line = joins.at(-1)?.way === "across" ? ("column" as const) : ("row" as const);
  const told = joins.map((join) => {
    const number = /^(?:row|column) (\d+)$/.exec(join.makes)?.[1] ?? "";
    const names = partNames(join, [], making, plan);
    const presses: Presses = pressing === null ? [] : pressesOf(join, pressing.seams, making);
    const soft = number === "" ? null : softOf(Number(number), pressing?.rows ?? []);
    const press = blockWords.pressed(presses, soft, join.way === "across" ? "rows" : "columns");
    const size = formatSize(
      Math.round(join.size.across / scale),
      Math.round(join.size.down / scale),
      plan.ruler,
    );
    return { join, number, names, press, size };
  });
  const rows = gathered(
    told
      .filter(({ number }) => number !== "")
      .map(({ join, number, names, press, size }) => ({
        number,
        told: (makes) =>
          `[ ] ${blockWords.join(makes, partsTold(names), join.way === "across", press, size)}`,
      })),
    line,
  );
  const others = told
    .filter(({ number }) => number === "")
    .map(({ join, names, press, size }) => {
      const makes = join.makes === "centre" ? blockWords.centre : capital(join.makes);
      const parts = namesTold(names, line, join);
      return `[ ] ${blockWords.join(makes, parts, join.way === "across", press, size)}`;
    });
  const turned = told.some(({ names }) => names.some((name) => name.includes(" turned ")));
  return [
    blockWords.rowsTitle,
    ...indented([...(turned ? [blockWords.turnedMeans] : []), ...rows, ...others]),
    "",
  ];
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

function namesTold(names: readonly string[], line: "row" | "column", join: JoinStep): string {
  const made = join.takes.every(({ of }) => of === "made");
  return made && names.length > 2 && names.every((name, i) => name === `${line} ${i + 1}`)
    ? blockWords.rows(1, names.length, line)
    : partsTold(names);
}

/** Seams of one diagonal row, from its left end: they all lie on lines that go the other way. */
function diagonalPresses(row: DiagonalRow, making: Making, plan: Plan): Presses {
  const { pressing, scale } = making;
  const { top } = plan;
  if (pressing === null || top === null) return [];
  const number = (value: { n: number; r: number; d: number }): number =>
    (value.n + value.r * Math.SQRT2) / value.d;
  const [left, upper] = [number(top.centre.x), number(top.centre.y)];
  // Into the frame of the rows: u runs along them, v from row to row.
  const turned = ({ x1, y1, x2, y2, press }: PressedSeam) => {
    const [a, b] = [
      { u: (x1 - left + y1 - upper) / Math.SQRT2, v: (y1 - upper - (x1 - left)) / Math.SQRT2 },
      { u: (x2 - left + y2 - upper) / Math.SQRT2, v: (y2 - upper - (x2 - left)) / Math.SQRT2 },
    ];
    return { a, b, press };
  };
  const high = row.high - 2 * making.seam;
  const middle = rowMiddle(row, making) / scale;
  const own = pressing.seams.map(turned).filter(({ a, b }) => {
    const [low, top] = [Math.min(a.v, b.v), Math.max(a.v, b.v)];
    return Math.abs(a.u - b.u) < 4 && low < middle && top > middle && top - low <= high + 4;
  });
  return own.sort((p, q) => p.a.u - q.a.u).map(({ press }) => press);
}

/** Where the middle of a diagonal row lies, from row to row, in parts of a tick. */
function rowMiddle(row: DiagonalRow, making: Making): number {
  const high = (row.high - 2 * making.seam) * making.scale;
  const first = making.diagonal[0];
  const top = first === undefined ? 0 : firstRowAt(making);
  return top + (row.row - 1) * high + high / 2;
}

/** The upper edge of the first row: its upper edge runs from the quilt's top edge to its right edge. */
function firstRowAt(making: Making): number {
  const first = making.diagonal[0];
  // The quilt's top edge is u + v = 0: the upper left end of the first row's upper edge lies on it.
  return first === undefined ? 0 : -first.upperEdge[0];
}

/** Rows on point with their sizes, how they are joined, and the corners. */
function diagonalLines(making: Making, plan: Plan): string[] {
  const { diagonal, square, seam, pressing } = making;
  const say = (length: Ticks): string => measured(length, plan);
  const end = (what: "side" | "corner"): string =>
    what === "side" ? makingWords.sideTriangle : makingWords.corner;
  const rows = gathered(
    diagonal.map((row) => {
      const names = partNames(row, [], making, plan);
      const parts = partsTold([end(row.ends[0]), ...names, end(row.ends[1])]);
      const soft = softOf(row.row, pressing?.rows ?? []);
      const told = soft === "plain blocks" ? makingWords.towardPlain : "";
      const press = told === "" ? blockWords.pressed(diagonalPresses(row, making, plan), soft, "rows") : told;
      return {
        number: String(row.row),
        told: (makes: string) =>
          `[ ] ${blockWords.diagonalRow(makes, parts, press, say(row.upper), say(row.lower))}`,
      };
    }),
    "row",
  );
  const { across, down } = making.borders[0]?.before ?? square;
  const size = measuredSize(across, down, plan);
  const names = diagonal.flatMap((row) => partNames(row, [], making, plan));
  return [
    makingWords.diagonalTitle,
    ...indented([
      makingWords.diagonalAbout(say(diagonal[0]?.high ?? 0)),
      ...(names.some((name) => name.includes(" turned ")) ? [blockWords.turnedMeans] : []),
      ...settingTriangles(plan),
      makingWords.triangles,
      ...rows,
      `[ ] ${makingWords.diagonalJoin(diagonal.length)}`,
      `[ ] ${makingWords.diagonalCorners}`,
      `[ ] ${makingWords.diagonalSquare(size, formatLength(seam, plan.ruler))}`,
    ]),
    "",
  ];
}

/** The bags that setting triangles come from, and how a print is minded. */
function settingTriangles(plan: Plan): string[] {
  const fabricsOf = (part: string): string[] => [
    ...new Set(
      (plan.top?.patches ?? [])
        .filter(({ origin }) => origin.place === "setting-triangle" && origin.part === part)
        .map(({ fabric }) => fabric),
    ),
  ];
  const bags = (part: "side" | "corner"): string => {
    const subcut = part === "side" ? "twice-diagonal" : "once-diagonal";
    const found = fabricsOf(part).flatMap((name) => {
      const own = plan.fabrics.find((fabric) => fabric.name === name);
      const letters = (own?.pieces ?? [])
        .filter((piece) => piece.subcut === subcut && piece.trimTo === null)
        .map(({ letter }) => letter);
      return letters.length === 0 ? [] : [blockWords.cloth(letters.join("/"), name)];
    });
    return blockWords.list(found);
  };
  const [sides, corners] = [bags("side"), bags("corner")];
  if (sides === "" || corners === "") return [];
  const printed = [...new Set([...fabricsOf("side"), ...fabricsOf("corner")])].filter(
    (name) => (plan.fabrics.find((fabric) => fabric.name === name)?.print.kind ?? "none") !== "none",
  );
  return [blockWords.setTriangles(sides, corners), ...printed.map((name) => blockWords.triangleUp(name))];
}
