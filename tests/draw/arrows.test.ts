import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { patchNodes } from "../../src/draw/quilt/patches.ts";
import { freeStretches } from "../../src/draw/scene/free-stretch.ts";
import { INK } from "../../src/draw/scene/palette.ts";
import { type LineNode, type SceneNode, textsOf } from "../../src/draw/scene/scene.ts";
import { bordersScene } from "../../src/draw/sewing/making-borders.ts";
import { pressingScene } from "../../src/draw/sewing/making-pressing.ts";
import { EIGHTH_INCH_RULER } from "../../src/length/index.ts";
import { exactToNumber } from "../../src/quilt/exact.ts";
import { starters as STARTERS } from "../../src/words/en/starters.ts";
import { english } from "../../src/words/index.ts";
import { make } from "../making/fixture.ts";
import { workOut } from "../quilt/reading.ts";

const trial = (name: string): string =>
  readFileSync(new URL(`../../fixtures/trials/${name}.yaml`, import.meta.url), "utf8");

/** Shafts of the arrows: lines followed by a head, or two. */
function shaftsIn(nodes: readonly SceneNode[]): { shaft: LineNode; heads: number }[] {
  return nodes.flatMap((node, i) => {
    if (node.kind !== "line") return [];
    const heads = [nodes[i + 1], nodes[i + 2]].findIndex((next) => next?.kind !== "path");
    const count = heads < 0 ? 2 : heads;
    return count === 0 ? [] : [{ shaft: node, heads: count }];
  });
}

/** Lines in the scene that are seams: none has a head. */
function seamsIn(nodes: readonly SceneNode[]): LineNode[] {
  return nodes.filter((node, i): node is LineNode => node.kind === "line" && nodes[i + 1]?.kind !== "path");
}

describe("pressing arrows", () => {
  // The arrow of a seam between rows lay on the seam between two blocks: one long arrow down the middle.
  test.each(["arrows-on-seams", "prints-both-ways", "metric-stars"])("stand off other seams: %s", (name) => {
    const { top, making } = make(trial(name));
    const scene = pressingScene({ top, making, fabrics: [], ruler: EIGHTH_INCH_RULER }, english);
    const nodes = scene?.nodes ?? [];
    const shafts = shaftsIn(nodes)
      .map(({ shaft }) => shaft)
      .filter(({ paint }) => paint.stroke === INK);
    expect(shafts.length).toBeGreaterThan(5);
    for (const { x1, y1, x2, y2 } of shafts) {
      const level = Math.abs(y1 - y2) < 0.01;
      for (const seam of seamsIn(nodes)) {
        // A seam that runs the way of the arrow and lies under it.
        const along = level
          ? Math.abs(seam.y1 - seam.y2) < 0.01 && Math.abs(seam.y1 - y1) < 2
          : Math.abs(seam.x1 - seam.x2) < 0.01 && Math.abs(seam.x1 - x1) < 2;
        if (!along) continue;
        const [from, to] = level ? [seam.x1, seam.x2] : [seam.y1, seam.y2];
        const [a, b] = level ? [Math.min(x1, x2), Math.max(x1, x2)] : [Math.min(y1, y2), Math.max(y1, y2)];
        expect(Math.max(from, to) < a || Math.min(from, to) > b).toBe(true);
      }
    }
  });

  // Straight and on point, the top and every block: an arrow lies across its seam, and its head is where it is pressed.
  test.each(["arrows-on-seams", "nine-patches-on-point", "turned-cabins"])(
    "point to where it is pressed: %s",
    (name) => {
      const { top, making } = make(trial(name));
      const quilt = { top, making, fabrics: [], ruler: EIGHTH_INCH_RULER };
      const nodes = pressingScene(quilt, english)?.nodes ?? [];
      const shafts = shaftsIn(nodes)
        .map(({ shaft }) => shaft)
        .filter(({ paint }) => paint.stroke === INK);
      const turned = top.centre.onPoint ? Math.PI / 4 : 0;
      const told = (x1: number, y1: number, x2: number, y2: number, tilt: number): string => {
        const angle = Math.atan2(y2 - y1, x2 - x1) - tilt;
        const quarter = Math.round(angle / (Math.PI / 2));
        // It points straight across, to a hundredth of a turn.
        expect(Math.abs(angle - quarter * (Math.PI / 2))).toBeLessThan(0.06);
        return ["right", "down", "left", "up"][(quarter + 4) % 4] ?? "";
      };
      const onTop = making.pressing?.seams ?? [];
      const inBlocks = (making.pressing?.blocks ?? []).flatMap(({ seams }) => seams);
      expect(onTop.length).toBeGreaterThan(0);
      if (name !== "arrows-on-seams") expect(inBlocks.length).toBeGreaterThan(0);
      // The arrows of the top come first, seam by seam; those of the blocks follow.
      const [ofTop, ofBlocks] = [shafts.slice(0, onTop.length), shafts.slice(onTop.length)];
      expect(ofTop.map(({ x1, y1, x2, y2 }) => told(x1, y1, x2, y2, turned))).toEqual(
        onTop.map(({ press }) => press),
      );
      const counts = (words: readonly string[]) =>
        ["right", "down", "left", "up"].map((way) => words.filter((word) => word === way).length > 0);
      expect(counts(ofBlocks.map(({ x1, y1, x2, y2 }) => told(x1, y1, x2, y2, 0)))).toEqual(
        counts(inBlocks.map(({ press }) => press)),
      );
    },
  );

  test("take the free stretch nearest to the middle", () => {
    const free = freeStretches([
      [0, 0],
      [1000, 0],
      [1000, 500],
      [2000, 0],
      [700, 40],
    ]);
    expect(free({ x1: 0, y1: 0, x2: 2000, y2: 0 })).toEqual({ x: 500, y: 0, length: 1000 });
    // Nothing meets it: the middle.
    expect(free({ x1: 0, y1: 300, x2: 2000, y2: 300 })).toEqual({ x: 1000, y: 300, length: 2000 });
    // A short stretch in the middle is left for a long one.
    const short = freeStretches([
      [800, 0],
      [1200, 0],
    ]);
    expect(short({ x1: 0, y1: 0, x2: 2000, y2: 0 })).toEqual({ x: 400, y: 0, length: 800 });
    // A seam aslant.
    const slant = freeStretches([[500, 500]]);
    expect(slant({ x1: 0, y1: 0, x2: 1000, y2: 1000 }).x).toBeCloseTo(250, 6);
  });
});

describe("prints", () => {
  const { top, spec } = workOut(trial("prints-both-ways"));
  const at = { x: 0, y: 0, scale: 1 };

  test("one that reads both ways has two heads and no top", () => {
    for (const [fabric, heads] of [
      ["ticking", 2],
      ["trains", 1],
    ] as const) {
      const patches = top.patches.filter((patch) => patch.fabric === fabric);
      const shafts = shaftsIn(patchNodes(patches, spec.fabrics, at, { id: "p" }));
      expect(shafts.length).toBeGreaterThan(5);
      expect(new Set(shafts.map((each) => each.heads))).toEqual(new Set([heads]));
    }
  });
});

test("a mitre's seam allowance is drawn as it is, not as the ruler's marks", () => {
  const { top, making, spec } = make(trial("metric-stars"));
  expect(spec.ruler.mark).toBe(3200);
  const quilt = { top, making, fabrics: spec.fabrics, ruler: spec.ruler };
  const texts = textsOf(bordersScene(quilt, english)?.nodes ?? []).map(({ text }) => text);
  expect(texts.join(" ")).toContain("from 0.75 cm inside one corner");
});

// A dot for every place with more layers than wanted, however many there are.
test("every place that is too thick has its dot", () => {
  const text = trial("arrows-on-seams").replace("setting:", "most-layers: 2\nsetting:");
  const { top, making } = make(text);
  const { over, overCount } = making.pressing?.bulk ?? { over: [], overCount: -1 };
  expect(over.length).toBe(overCount);
  expect(over.length).toBeGreaterThan(0);
  const quilt = { top, making, fabrics: [], ruler: EIGHTH_INCH_RULER };
  const dots = (pressingScene(quilt, english)?.nodes ?? []).filter(
    (node) => node.kind === "circle" && node.paint.fill === INK,
  );
  expect(dots).toHaveLength(overCount);
});

// All four diagonals run through the middle, and each part is the one before turned by a quarter.
test("the whirl of a starter whirls", () => {
  const text = STARTERS.find((starter) => starter.text.includes("whirl:"))?.text ?? "";
  const { top } = workOut(text);
  const design = top.designs.find(({ name }) => name === "whirl");
  if (design === undefined) throw new Error("no whirl");
  const middle = exactToNumber(design.across) / 2;
  const dark = design.patches
    .filter(({ fabric }) => fabric === "petrol")
    .map(({ outline }) =>
      outline.map(({ x, y }) => [exactToNumber(x) - middle, exactToNumber(y) - middle] as const),
    );
  const told = (outline: readonly (readonly [number, number])[]): string =>
    outline
      .map(([x, y]) => `${Math.round(x) + 0},${Math.round(y) + 0}`)
      .sort()
      .join(" ");
  expect(dark).toHaveLength(4);
  const all = new Set(dark.map(told));
  for (const outline of dark) {
    // Its slanting edge ends in the middle of the block, and so does one of its sides: it is a vane.
    expect(told(outline)).toContain("0,0");
    expect(all.has(told(outline.map(([x, y]) => [-y, x] as const)))).toBe(true);
    // A vane is no mirror image of another: that would be a diamond.
    expect(all.has(told(outline.map(([x, y]) => [-x, y] as const)))).toBe(false);
  }
});
