import { expect, test } from "vitest";
import { toSvg } from "../../src/draw/scene/canvas.ts";
import { moveNodes } from "../../src/draw/scene/move.ts";
import { circle, line, type Outline, type Scene, type SceneNode } from "../../src/draw/scene/scene.ts";
import { textureLines } from "../../src/draw/scene/texture-lines.ts";
import { bookOf } from "../../src/print/index.ts";
import { english } from "../../src/words/index.ts";
import { quiltPlan } from "../print/book/book-plans.ts";

const SQUARE: Outline = [
  [10, 10],
  [40, 10],
  [40, 40],
  [10, 40],
];

/** The lines a tile of 8 leaves in a square, drawn at half the size of the page. */
function linesOf(nodes: readonly SceneNode[], outlines: readonly Outline[] = [SQUARE]) {
  const [group, more] = textureLines({ size: 8, nodes }, outlines, 0.5);
  expect(more).toBeUndefined();
  if (group?.kind !== "group") throw new Error("nothing was drawn");
  expect(group.clip).toEqual(outlines);
  return group.nodes.map((node) => {
    if (node.kind !== "region") throw new Error(node.kind);
    expect(node.open).toBe(true);
    return { runs: node.outlines, paint: node.paint };
  });
}

test("lines lie where a tile would repeat them", () => {
  const ink = { stroke: "#111111", strokeWidth: 0.5 };
  // Derived geometry: a tile is 16 units wide, so that a line at 4 in it lies at 8, 24, 40.
  const [across] = linesOf([line(0, 4, 8, 4, ink)]);
  expect(across?.runs).toEqual(
    [8, 24, 40].map((y) => [
      [10, y],
      [40, y],
    ]),
  );
  expect(across?.paint).toEqual({ fill: "none", stroke: "#111111", strokeWidth: 1 });
  // A dot of 1 about (2, 2): from 2 to 6 across, its line at 4, 20 and 36 down, drawn 4 of 16.
  const [dots] = linesOf([circle(2, 2, 1, { fill: "#111111" })]);
  expect(dots?.runs).toEqual(
    [4, 20, 36].map((y) => [
      [2, y],
      [40, y],
    ]),
  );
  expect(dots?.paint).toMatchObject({ strokeWidth: 4, dash: "4 12" });
  // Slanting up: x + y = 8 in the tile, 16 in the drawing, and 16 on. Its ends carried over are the same line.
  const rising = [line(-1, 9, 9, -1, ink), line(-1, 1, 1, -1, ink)];
  const slant = linesOf(rising);
  expect(slant.length).toBe(1);
  expect(slant[0]?.runs).toEqual([
    [
      [10, 22],
      [22, 10],
    ],
    [
      [10, 38],
      [38, 10],
    ],
    [
      [24, 40],
      [40, 24],
    ],
  ]);
});

test("a short slanting line is a dash that begins where the tile has it", () => {
  // From (2, 2) to (5, 5): 4 to 10 of every 16 units across, so 6 and 10 of them by the root of two along the line.
  const [short] = linesOf([line(2, 2, 5, 5, { stroke: "#111111", strokeWidth: 0.5 })]);
  expect(short?.paint.dash).toBe("8.485 14.142");
  for (const [[x, y] = [0, 0]] of short?.runs ?? []) {
    expect((x - 4) % 16).toBe(0);
    expect(Math.abs((y - x) % 16)).toBe(0);
  }
});

test("shapes far apart have lines of their own; one without corners has none", () => {
  const far = SQUARE.map(([x, y]): [number, number] => [x + 1000, y]);
  const [across] = linesOf([line(0, 4, 8, 4, { stroke: "#111111" })], [SQUARE, far]);
  expect(across?.runs.every(([[x1] = [0], [x2] = [0]]) => x2 - x1 === 30)).toBe(true);
  expect(across?.runs.length).toBe(6);
  expect(textureLines({ size: 8, nodes: [line(0, 4, 8, 4)] }, [[]], 1)).toEqual([]);
});

test("no drawing of a book holds a tile, and every clip in it is its own", async () => {
  const { cover, sections } = bookOf(await quiltPlan(), english);
  const scenes = sections.flatMap(({ blocks }) =>
    blocks.flatMap((block): Scene[] => {
      if ("scene" in block) return [block.scene];
      return block.kind === "cards"
        ? block.cards.flatMap((card) => card.pictures.map(({ scene }) => scene))
        : [];
    }),
  );
  let clipped = 0;
  const all: string[] = [];
  for (const scene of [cover.scene, ...scenes]) {
    const svg = toSvg(scene);
    expect(svg).not.toMatch(/<pattern|fill="url|NaN/);
    const clips = [...svg.matchAll(/<clipPath id="([^"]+)"/g)].map(([, id]) => id ?? "");
    const used = [...svg.matchAll(/clip-path="url\(#([^)"]+)\)"/g)].map(([, id]) => id ?? "");
    expect([...used].sort()).toEqual([...clips].sort());
    all.push(...clips);
    clipped += clips.length;
  }
  expect(new Set(all).size).toBe(all.length);
  expect(clipped).toBeGreaterThan(20);
});

test("outlines that a texture is seen in move with its lines, and stay as they are inside a group that moves", () => {
  const lines = textureLines(
    { size: 8, nodes: [line(0, 4, 8, 4, { stroke: "#111111", strokeWidth: 0.5 })] },
    [SQUARE],
    0.5,
  );
  const [moved] = moveNodes(lines, 5, 7);
  const [own] = lines;
  if (moved?.kind !== "group" || own?.kind !== "group") throw new Error("nothing was drawn");
  expect(moved.clip).toEqual([SQUARE.map(([x, y]) => [x + 5, y + 7])]);
  const [framed] = moveNodes([{ ...own, move: { x: 1, y: 2, scale: 2 } }], 5, 7);
  expect(framed).toMatchObject({ clip: [SQUARE], move: { x: 6, y: 9, scale: 2 } });
});
