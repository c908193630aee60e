import { Dice } from "../engine/exact/random-problems.ts";

const PRINTS = ["none", "none", "two-way along", "two-way across", "one-way along", "one-way across"];
const FOLLOW = ["upright", "with block", "with unit"];
const TURNS = ["", ">", "v", "<"];

/** A unit of one square cell: its name, how many parts it has, its methods, and what it needs besides. */
const UNITS: readonly [kind: string, parts: number, methods: readonly string[], more?: string][] = [
  ["square", 1, ["single pieces"]],
  [
    "half-square triangle",
    2,
    ["two at a time", "four at a time", "eight at a time", "single triangles", "templates"],
  ],
  ["quarter-square triangle", 2, ["two at a time", "single triangles", "templates"]],
  ["three-patch square", 3, ["single triangles", "templates"]],
  ["four-triangle square", 4, ["single triangles"]],
  ["square-in-a-square", 2, ["corner triangles", "stitch-and-flip"]],
  ["snowball", 2, ["stitch-and-flip", "templates"], "corner: 1"],
  ["snowball", 2, ["stitch-and-flip"], "corner: 3/4, corners: [top-left, bottom-right, top-right]"],
  ["four-patch", 2, ["strip sets", "two strip sets", "single pieces"]],
  ["nine-patch", 3, ["strip sets", "single pieces"]],
  ["rails", 2, ["strip sets", "single pieces"]],
  ["log cabin", 3, ["cut logs"], "count: 1"],
  ["courthouse steps", 3, ["cut logs"], "count: 1"],
];

/**
 * The random quilt file of a seed: prints of every kind, blocks of many units turned every way, straight, sashed, on
 * point or pieced on foundation, with borders now and then.
 */
export function randomQuilt(seed: number): string {
  const dice = new Dice(Math.imul(seed, 2654435761));
  const pick = <T>(list: readonly T[]): T => list[dice.between(0, list.length - 1)] as T;
  const inches = dice.chance(3, 4);
  const foundation = inches && dice.chance(1, 10);
  const cell = foundation ? 4 : inches ? pick([2, 2.5, 3, 3, 4, 3.125]) : pick([6, 7.5, 9]);
  const names = ["ash", "bay", "elm", "fig", "oak"];
  const fabric = (): string => pick(names);
  const lines = [
    `name: Random quilt ${seed}`,
    `units: ${inches ? "in" : "cm"}`,
    ...(dice.chance(1, 3) ? [`seam: ${inches ? pick(["3/8", "1/8"]) : pick(["0.6", "1"])}`] : []),
    ...(inches && dice.chance(1, 3) ? ["rounding: trade"] : []),
    `prints: ${pick(FOLLOW)}`,
    "fabrics:",
    ...names.map((name) => `  - { name: ${name}, print: ${pick(PRINTS)} }`),
  ];
  if (foundation)
    lines.push(
      "  - { name: web, width: 44 in, selvage: 0 }",
      `foundation: { fabric: web, grid: 1 in, per: unit, ease: 1/4 }`,
    );
  const onPoint = dice.chance(1, 4) && !foundation;
  const columns = foundation ? 2 : dice.between(1, 3);
  const cells: string[] = [];
  const codes = ["a", "b", "c", "d"].slice(0, dice.between(1, 4));
  for (const code of codes) {
    const [kind, parts, methods, more] = foundation
      ? pick(
          UNITS.filter(
            ([name]) =>
              name === "square" || name === "half-square triangle" || name === "quarter-square triangle",
          ),
        )
      : pick(UNITS);
    const fabrics = Array.from({ length: parts }, fabric).join(", ");
    const method = foundation ? "" : `, method: ${pick(methods)}`;
    const needs = more === undefined ? "" : `, ${more}`;
    cells.push(`      ${code}: { ${kind}: ${parts === 1 ? fabrics : `[${fabrics}]`}${method}${needs} }`);
  }
  cells.push(
    `      g: { flying geese: [${fabric()}, ${fabric()}]${foundation ? "" : `, method: ${pick(["four at a time", "stitch-and-flip", "single triangles", "templates"])}`} }`,
  );
  const row = (): string => Array.from({ length: columns }, () => `${pick(codes)}${pick(TURNS)}`).join(" ");
  lines.push("blocks:");
  const blocks = dice.chance(1, 2) ? ["p", "q"] : ["p"];
  for (const block of blocks) {
    const geese = columns === 2 && !foundation && dice.chance(1, 2);
    const grid = geese ? [row(), row()] : Array.from({ length: columns }, row);
    if (geese) {
      // Cells half as large: a goose takes two of them.
      const turned = dice.chance(1, 2);
      const goose = turned ? ["g> g>", "|  |"] : [`g${pick(["", "v"])} -`, `g${pick(["", "v"])} -`];
      const square = (): string[] => [`${pick(codes)}${pick(TURNS)} -`, "|  |"];
      const [one, other] = [square(), square()];
      const rows = [
        `${goose[0]} ${one[0]}`,
        `${goose[1]} ${one[1]}`,
        `${other[0]} ${goose[0]}`,
        `${other[1]} ${goose[1]}`,
      ];
      lines.push(
        `  ${block}:`,
        `    size: ${columns * cell}`,
        `    grid: [${rows.map((each) => `"${each}"`).join(", ")}]`,
        "    cells:",
        ...cells,
      );
    } else
      lines.push(
        `  ${block}:`,
        `    size: ${columns * cell}`,
        `    grid: [${grid.map((each) => `"${each}"`).join(", ")}]`,
        "    cells:",
        ...cells.slice(0, -1),
      );
  }
  const placed = (): string => `${pick(blocks)}${pick(TURNS)}`;
  lines.push("setting:");
  if (onPoint)
    lines.push(
      "  layout: on point",
      "  rows: |",
      `    ${placed()} ${placed()}`,
      `       ${placed()}`,
      `    ${placed()} ${placed()}`,
      `  triangles: ${fabric()}`,
    );
  else {
    lines.push(
      `  rows: ["${placed()} ${placed()}", "${placed()} ${placed()}"]`,
      `  fill: ${dice.between(2, 4)} x ${dice.between(2, 4)}`,
    );
    if (dice.chance(1, 4) && !foundation)
      lines.push(
        `  sashing: { width: ${inches ? 1 : 3}, fabric: ${fabric()}${dice.chance(1, 2) ? `, cornerstones: ${fabric()}` : ""} }`,
      );
  }
  const borders = dice.between(0, 2);
  if (borders > 0) lines.push("borders:");
  for (let border = 0; border < borders; border += 1) {
    const corners = pick(["", ", corners: tops first", ", corners: mitred", `, cornerstones: ${fabric()}`]);
    lines.push(
      `  - { fabric: ${fabric()}, width: ${inches ? dice.between(1, 4) : dice.between(3, 9)}${corners} }`,
    );
  }
  if (dice.chance(1, 2)) lines.push(`binding: ${fabric()}`);
  if (dice.chance(1, 3)) lines.push(`backing: ${fabric()}`);
  return `${lines.join("\n")}\n`;
}
