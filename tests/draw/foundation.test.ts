import { readFileSync } from "node:fs";
import { JSDOM } from "jsdom";
import { describe, expect, test } from "vitest";
import { drawFoundation, foundationScene } from "../../src/draw/foundation/draw-foundation.ts";
import { toSvg } from "../../src/draw/scene/canvas.ts";
import type { LineNode, Scene } from "../../src/draw/scene/scene.ts";
import { EIGHTH_INCH_RULER } from "../../src/length/index.ts";
import { english } from "../../src/words/index.ts";
import { make } from "../making/fixture.ts";
import { faultsOf } from "../support/sound-scene.ts";
import { invalidIn } from "../support/valid-svg.ts";

const { window } = new JSDOM("");

const FIXTURE = readFileSync(new URL("../../fixtures/quilts/wild-geese-round.yaml", import.meta.url), "utf8");

function sceneOf(words: string | null): Scene {
  const text =
    words === null
      ? FIXTURE
      : FIXTURE.replace(/^foundation: .*$/m, `foundation: { fabric: gridded web, ${words} }`);
  const { making, top, spec } = make(text);
  const scene =
    making.foundation === null
      ? null
      : foundationScene(
          0,
          making.foundation,
          { top, fabrics: spec.fabrics, ruler: EIGHTH_INCH_RULER },
          english,
        );
  if (scene === null) throw new Error("nothing drawn");
  return scene;
}

/** Lines drawn on the sheets of foundation; arrows have lines of their own. */
const linesOf = ({ nodes }: Pick<Scene, "nodes">): LineNode[] =>
  nodes.flatMap((node) => {
    if (node.kind === "line") return [node];
    return node.kind === "group" && /grid|lines/.test(node.id ?? "") ? linesOf(node) : [];
  });
const close = (a: number, b: number) => Math.abs(a - b) < 0.01;

describe.each([
  ["pieced by motifs", null],
  ["pieced by units", "grid: 1 in, per: unit"],
  ["a block folded", "grid: 1/4 in, way: folded"],
  ["a row folded", "grid: 1/4 in, way: folded, per: row"],
])("%s", (_name, words) => {
  test("its words lie apart and on the page, and it is valid SVG", () => {
    const scene = sceneOf(words);
    expect(faultsOf(scene)).toEqual([]);
    const document = new window.DOMParser().parseFromString(toSvg(scene), "image/svg+xml");
    expect(invalidIn(document)).toEqual([]);
    const ids = Array.from(document.querySelectorAll("[id]"), ({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
  });
});

test("every line to sew ends where printed lines cross", () => {
  const lines = linesOf(sceneOf(null));
  // Printed lines are thin, seams heavy.
  const printed = lines.filter(({ paint }) => (paint.strokeWidth ?? 0) <= 0.6);
  const seams = lines.filter(({ paint }) => paint.strokeWidth === 2);
  expect(seams).toHaveLength(3);
  const upright = printed.filter(({ x1, x2 }) => close(x1, x2));
  const level = printed.filter(({ y1, y2 }) => close(y1, y2));
  // Two sheets of six by six squares.
  expect([upright.length, level.length]).toEqual([14, 14]);
  for (const { x1, y1, x2, y2 } of seams) {
    for (const [x, y] of [
      [x1, y1],
      [x2, y2],
    ] as const) {
      expect(upright.some((line) => close(line.x1, x))).toBe(true);
      expect(level.some((line) => close(line.y1, y))).toBe(true);
    }
  }
});

test("folds and seams of a folded block lie on printed lines, the seam one square from the fold", () => {
  const lines = linesOf(sceneOf("grid: 1/4 in, way: folded"));
  const printed = lines.filter(({ paint }) => (paint.strokeWidth ?? 0) <= 0.6);
  const xs = printed.filter(({ x1, x2 }) => close(x1, x2)).map(({ x1 }) => x1);
  const square = (Math.max(...xs) - Math.min(...xs)) / 36;
  const folds = lines.filter(({ paint }) => paint.strokeWidth === 1.8);
  const sewn = lines.filter(({ paint }) => paint.dash !== undefined);
  expect([folds.length, sewn.length]).toEqual([2, 4]);
  const fold = folds.find(({ x1, x2 }) => close(x1, x2));
  const beside = sewn.filter(({ x1, x2 }) => close(x1, x2)).map(({ x1 }) => x1 - (fold?.x1 ?? 0));
  expect(beside.map((distance) => Math.round((distance / square) * 100) / 100)).toEqual([-1, 1]);
  for (const { x1 } of [fold, ...sewn].filter(
    (line) => line !== undefined && close(line.x1, line.x2),
  ) as LineNode[])
    expect(xs.some((x) => close(x, x1))).toBe(true);
});

test("squares, numbers and turns are said", () => {
  const { making, top, spec } = make(FIXTURE);
  if (making.foundation === null) throw new Error("no foundation");
  const [svg = ""] = drawFoundation(making.foundation, top, spec.fabrics, EIGHTH_INCH_RULER, english);
  expect(svg).toContain("6 × 6 squares: 6 x 6 in");
  expect(svg).toContain("4 × 4 squares");
  // The motif lies in the block four times.
  expect(svg.match(/>A<\/text>/g)).toHaveLength(4);
});
