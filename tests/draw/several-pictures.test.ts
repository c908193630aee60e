import { expect, test } from "vitest";
import { fabricScene, fabricScenes } from "../../src/draw/index.ts";
import type { SceneNode } from "../../src/draw/scene/scene.ts";
import { planQuilt, solveHere, USUAL_OPTIONS } from "../../src/index.ts";
import { english } from "../../src/words/index.ts";

/** Squares of two sizes on three bolts: more panels than stand readably on a low page. */
const BOLTS = `name: Sails for a class
units: in
all-fabrics: { width: 43, selvage: 1/2 }
fabrics:
  - name: canvas
    bolt: 10 yd
    pieces:
      - main 40 x 30, 20
      - jib 38 x 25, 11
      - patch 2 1/2 square, 900
`;
const TALLEST = 400;

const panelsOf = (nodes: readonly SceneNode[]): string[] =>
  nodes.flatMap((node) => (node.kind === "group" && node.id?.startsWith("lay-") ? [node.id] : []));

test("a diagram higher than a page is drawn in several pictures, every panel once and at its size", async () => {
  const { value } = await planQuilt(BOLTS, "sails.yaml", { ...USUAL_OPTIONS, effort: 3 }, solveHere);
  if (value === null) throw new Error("no plan");
  const whole = fabricScene(value, 0, english, { bare: { room: 430 } });
  expect(whole.height).toBeGreaterThan(TALLEST);
  const pages = fabricScenes(value, 0, english, 430, TALLEST);
  expect(pages.length).toBeGreaterThan(1);
  for (const { height, width } of pages) {
    expect(height).toBeLessThanOrEqual(TALLEST + 40);
    expect(width).toBe(whole.width);
  }
  expect(pages.flatMap(({ nodes }) => panelsOf(nodes))).toEqual(panelsOf(whole.nodes));
  expect(new Set(pages.map(({ idPrefix }) => idPrefix)).size).toBe(pages.length);
  // Nothing is split where it need not be.
  expect(fabricScenes(value, 0, english, 430, whole.height)).toEqual([whole]);
});
