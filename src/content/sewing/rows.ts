import { formatLength, type Ticks } from "../../length/index.ts";
import type { DiagonalRow, Making, PressedSeam, RowPressing } from "../../making/types.ts";
import type { Plan } from "../../plan/types.ts";
import type { Presses } from "../../words/en/sewing/blocks.ts";
import type { Words } from "../../words/index.ts";
import { aboutSize } from "../lengths.ts";
import { blockNamed, partNames, patchOfKind, unturned } from "./block-names.ts";
import { joinedTold } from "./blocks.ts";
import { joiningLines, lineOf, type ToldJoin } from "./joinings.ts";
import { indented, measured, measuredSize, partsTold } from "./making-lines.ts";
import { pinLines } from "./making-pressing.ts";

import { pressesOf } from "./pressed.ts";

/** Told of the top: its rows with their pressing, and how they are joined. */

function softOf(row: number, rows: readonly RowPressing[]): RowPressing["press"] {
  return rows.find((each) => each.row === row)?.press ?? null;
}

/** Whether a part of a joining is told as turned. */
function anyTurned(join: Parameters<typeof partNames>[0], making: Making, plan: Plan, words: Words): boolean {
  const bare = partNames(join, [], making, plan, unturned(words));
  return partNames(join, [], making, plan, words).some((name, i) => name !== bare[i]);
}

/** A top of a single block, which has no rows: told where borders go round it. */
function singleLines(making: Making, plan: Plan, words: Words): string[] {
  const index = plan.top?.blocks.findIndex(({ place }) => place === "block") ?? -1;
  const before = making.borders[0]?.before;
  const name = index < 0 ? null : blockNamed(index, making, plan, words);
  if (name === null || before === undefined) return [];
  const size = measuredSize(before.across, before.down, plan);
  return [words.blocks.rowsTitle, ...indented([`[ ] ${words.blocks.begins(name, size)}`]), ""];
}

/** Rows of the top; rows sewn alike are told once. */
export function topLines(making: Making, plan: Plan, words: Words): string[] {
  if (making.diagonal.length > 0) return diagonalLines(making, plan, words);
  const joins = making.joins.filter(({ stage }) => stage === "top");
  if (joins.length === 0) return singleLines(making, plan, words);
  const { pressing, scale } = making;
  const told = joins.map((join): ToldJoin => {
    const lined = lineOf(join.makes);
    const across = join.way === "across";
    const names = partNames(join, [], making, plan, words);
    const presses: Presses = pressing === null ? [] : pressesOf(join, pressing.seams, making);
    const soft = lined.number === "" ? null : softOf(Number(lined.number), pressing?.rows ?? []);
    const parts = joinedTold(names, join, words);
    const size = aboutSize(join.size.across / scale, join.size.down / scale, plan, words);
    return {
      ...lined,
      makes: join.makes.is === "centre" ? words.blocks.centre : words.blocks.made(join.makes),
      names,
      parts: lined.number === "" ? words.blocks.withWay(parts, across) : parts,
      press: words.blocks.pressed(presses, soft, across ? "rows" : "columns"),
      size,
    };
  });
  const turned = joins.some((join) => anyTurned(join, making, plan, words));
  const pins = pressing === null ? [] : pinLines(pressing, words);
  const lines = joiningLines(told, words);
  return [
    words.blocks.rowsTitle,
    ...indented([
      ...(turned ? [words.blocks.turnedMeans] : []),
      ...lines,
      // They are pinned when the rows are joined.
      ...pins,
    ]),
    "",
  ];
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
  const middle = row.v / scale + high / 2;
  const own = pressing.seams.map(turned).filter(({ a, b }) => {
    const [low, top] = [Math.min(a.v, b.v), Math.max(a.v, b.v)];
    return Math.abs(a.u - b.u) < 4 && low < middle && top > middle && top - low <= high + 4;
  });
  return own.sort((p, q) => p.a.u - q.a.u).map(({ press }) => press);
}

/** The block in this place is a single patch. */
function isPatch(block: number, making: Making): boolean {
  const kind = making.kinds[making.kindOf[block] ?? -1];
  return kind !== undefined && patchOfKind(kind, making) !== null;
}

/** Letters of the bags of single patches, by the name with the fabric where it does not matter how a patch lies. */
function lettersOfBags({ units }: Making, plan: Plan, words: Words): Map<string, string> {
  const single = units.filter(({ steps }) => steps.length === 0);
  const patches = single.flatMap(({ heaps }) => heaps.flatMap((heap) => heap.patches));
  const designs = new Set((plan.top?.designs ?? []).map(({ name }) => name));
  return new Map(
    patches.flatMap(({ letters, fabric }): [string, string][] => {
      const letter = letters.join("/");
      return designs.has(letter) ? [] : [[words.blocks.bag(letter, fabric, ""), letter]];
    }),
  );
}

/** Rows on point with their sizes, how they are joined, and the corners. */
function diagonalLines(making: Making, plan: Plan, words: Words): string[] {
  const { diagonal, square, seam, pressing } = making;
  const say = (length: Ticks): string => measured(length, plan);
  const end = (what: "side" | "corner"): string =>
    what === "side" ? words.making.sideTriangle : words.making.corner;
  const plain = diagonal.some(({ takes }) =>
    takes.some((part) => part.of === "cloth" || (part.of === "block" && isPatch(part.block, making))),
  );
  const letters = lettersOfBags(making, plan, words);
  const told = new Set<string>();
  const rows = diagonal.map((row) => {
    const names = partNames(row, [], making, plan, words).map((name) => {
      // Long rows are read along the drawing: a fabric is named with its letter once.
      const letter = told.has(name) ? letters.get(name) : undefined;
      told.add(name);
      return letter ?? name;
    });
    const parts = partsTold([end(row.ends[0]), ...names, end(row.ends[1])]);
    const soft = softOf(row.row, pressing?.rows ?? []);
    const press =
      soft === "plain-blocks"
        ? words.making.towardTriangles(plain)
        : words.blocks.pressed(diagonalPresses(row, making, plan), soft, "rows").sentence;
    const makes = words.blocks.lines([row.row], "row");
    return `[ ] ${words.blocks.diagonalRow(makes, parts, press, say(row.upper), say(row.lower))}`;
  });
  const { across, down } = making.borders[0]?.before ?? square;
  const size = measuredSize(across, down, plan);
  return [
    words.making.diagonalTitle,
    ...indented([
      words.making.diagonalAbout(say(diagonal[0]?.high ?? 0)),
      ...(diagonal.some((row) => anyTurned(row, making, plan, words)) ? [words.blocks.turnedMeans] : []),
      ...settingTriangles(plan, words),
      words.making.triangles,
      ...rows,
      `[ ] ${words.making.diagonalJoin(diagonal.length)}`,
      ...(pressing === null ? [] : pinLines(pressing, words)),
      `[ ] ${words.making.diagonalCorners}`,
      `[ ] ${words.making.diagonalSquare(size, formatLength(seam, plan.ruler))}`,
    ]),
    "",
  ];
}

/** The bags that setting triangles come from, and how a print is minded. */
function settingTriangles(plan: Plan, words: Words): string[] {
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
      return letters.length === 0 ? [] : [words.blocks.cloth(letters.join("/"), name)];
    });
    return words.blocks.list(found);
  };
  const [sides, corners] = [bags("side"), bags("corner")];
  if (sides === "" || corners === "") return [];
  const printed = [...new Set([...fabricsOf("side"), ...fabricsOf("corner")])].filter(
    (name) => (plan.fabrics.find((fabric) => fabric.name === name)?.print.kind ?? "none") !== "none",
  );
  return [words.blocks.setTriangles(sides, corners), ...printed.map((name) => words.blocks.triangleUp(name))];
}
