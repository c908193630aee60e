import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Node, patchByPatch } from "../../src/quilt/foundation/sequence.ts";

/** Twice the area of a polygon (shoelace sum). */
function area(corners: readonly Node[]): number {
  const sum = corners.reduce((all, [x, y], i) => {
    const [u, v] = corners[(i + 1) % corners.length] ?? [x, y];
    return all + x * v - u * y;
  }, 0);
  return Math.abs(sum);
}

/** Twice the area of the smallest convex outline round some points (Andrew's monotone chain). */
function hullArea(points: readonly Node[]): number {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const half = (all: readonly Node[]): Node[] => {
    const chain: Node[] = [];
    for (const p of all) {
      for (;;) {
        const [a, b] = [chain.at(-2), chain.at(-1)];
        if (a === undefined || b === undefined) break;
        if ((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]) > 0) break;
        chain.pop();
      }
      chain.push(p);
    }
    return chain.slice(0, -1);
  };
  return area([...half(sorted), ...half([...sorted].reverse())]);
}

/**
 * Patches can be sewn in this order exactly when what is there after every step is convex: then a straight line
 * parts the last patch from it. No code of the program is used.
 */
function goes(order: readonly (readonly Node[])[]): boolean {
  return order.every((_, i) => {
    const there = order.slice(0, i + 1);
    return hullArea(there.flat()) === there.reduce((sum, patch) => sum + area(patch), 0);
  });
}

function permutations<T>(items: readonly T[]): T[][] {
  if (items.length < 2) return [[...items]];
  return items.flatMap((item, i) =>
    permutations([...items.slice(0, i), ...items.slice(i + 1)]).map((rest) => [item, ...rest]),
  );
}

const box = (x: number, y: number, wide: number, high: number): Node[] => [
  [x, y],
  [x + wide, y],
  [x + wide, y + high],
  [x, y + high],
];

const GOOSE: Node[][] = [
  [
    [2, 0],
    [4, 2],
    [0, 2],
  ],
  [
    [0, 0],
    [2, 0],
    [0, 2],
  ],
  [
    [2, 0],
    [4, 0],
    [4, 2],
  ],
];

describe("the order of adding", () => {
  // Flying geese on a foundation: the goose first, then one sky, then the other: common practice, no source.
  test("a goose, then its two skies", () => {
    const found = patchByPatch(GOOSE);
    expect(found?.order).toEqual([0, 1, 2]);
    expect(found?.seams).toEqual([
      { from: [0, 2], to: [2, 0], toward: [-1, -1] },
      { from: [2, 0], to: [4, 2], toward: [1, -1] },
    ]);
  });

  test("a goose flies on from the wide end only: its tip gives no line to sew the next one to", () => {
    const behind = GOOSE.map((patch) => patch.map(([x, y]): Node => [x, y + 2]));
    const order = patchByPatch([...GOOSE, ...behind])?.order;
    // Sewn from the last goose to the first: each base lies on the line that the geese behind it end at.
    expect(order?.slice(0, 3).sort()).toEqual([3, 4, 5]);
  });

  test("four squares round a point cannot be added one by one", () => {
    const four = [box(0, 0, 1, 1), box(1, 0, 1, 1), box(0, 1, 1, 1), box(1, 1, 1, 1)];
    expect(patchByPatch(four)).toBe(null);
    expect(permutations(four).some(goes)).toBe(false);
  });

  test("logs go round their centre", () => {
    const logs = [box(1, 1, 1, 1), box(0, 1, 1, 1), box(0, 0, 2, 1), box(2, 0, 1, 2), box(0, 2, 3, 1)];
    expect(patchByPatch(logs)?.order).toEqual([0, 1, 2, 3, 4]);
  });

  /** A square cut at random: rectangles upright, level or from corner to corner. */
  const cut = fc.array(fc.record({ part: fc.nat(5), way: fc.nat(3), at: fc.constantFrom(1, 1, 2, 3) }), {
    minLength: 3,
    maxLength: 5,
  });
  const drawn = (cuts: readonly { part: number; way: number; at: number }[]): Node[][] => {
    let parts: Node[][] = [box(0, 0, 4096, 4096)];
    for (const { part, way, at } of cuts) {
      const own = parts[part % parts.length] ?? [];
      const [a, b, c, d] = own;
      if (a === undefined || b === undefined || c === undefined || d === undefined) continue;
      const [wide, high] = [b[0] - a[0], c[1] - b[1]];
      const halves = [
        [
          box(a[0], a[1], (wide * at) / 4, high),
          box(a[0] + (wide * at) / 4, a[1], (wide * (4 - at)) / 4, high),
        ],
        [
          box(a[0], a[1], wide, (high * at) / 4),
          box(a[0], a[1] + (high * at) / 4, wide, (high * (4 - at)) / 4),
        ],
        [
          [a, b, c],
          [a, c, d],
        ],
        [
          [a, b, d],
          [b, c, d],
        ],
      ][way];
      parts = [...parts.filter((each) => each !== own), ...(halves ?? [])];
    }
    return parts;
  };

  test("is found exactly when some order goes, and goes", () => {
    let [some, none] = [0, 0];
    fc.assert(
      fc.property(cut, (cuts) => {
        const patches = drawn(cuts);
        const found = patchByPatch(patches);
        if (found === null) {
          none += 1;
          expect(permutations(patches).some(goes)).toBe(false);
          return;
        }
        some += 1;
        expect(goes(found.order.map((i) => patches[i] ?? []))).toBe(true);
        expect(found.seams).toHaveLength(patches.length - 1);
        // Each seam lies on the edge of what it adds and of something that is there already.
        for (const [i, { from, to }] of found.seams.entries()) {
          const there = found.order.slice(0, i + 1).flatMap((patch) => patches[patch] ?? []);
          const added = patches[found.order[i + 1] ?? -1] ?? [];
          const on = ([x, y]: Node) =>
            (to[0] - from[0]) * (y - from[1]) - (to[1] - from[1]) * (x - from[0]) === 0;
          expect(added.filter(on).length).toBeGreaterThanOrEqual(2);
          expect(there.filter(on).length).toBeGreaterThanOrEqual(2);
        }
      }),
      { numRuns: 400, seed: 31 },
    );
    expect(some).toBeGreaterThan(20);
    expect(none).toBeGreaterThan(3);
  });
});
