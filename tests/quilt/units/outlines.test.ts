import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { fromInteger } from "../../../src/length/rational.ts";
import {
  areaOf,
  bounds,
  edgeLengths,
  type RootOutline,
  withSeams,
  withSeamsBlunted,
} from "../../../src/quilt/units/outlines/outlines.ts";
import * as r from "../../../src/quilt/units/outlines/roots.ts";

const outline = (points: readonly (readonly [number, number])[]): RootOutline =>
  points.map(([x, y]) => ({ x: r.whole(fromInteger(x)), y: r.whole(fromInteger(y)) }));
const number = r.rootsToNumber;
const seam = fromInteger(10);

describe("seam allowances added to outlines", () => {
  test("a rectangle grows by two seams both ways", () => {
    const box = bounds(
      withSeams(
        outline([
          [0, 0],
          [70, 0],
          [70, 30],
          [0, 30],
        ]),
        seam,
      ),
    );
    expect([number(box.across), number(box.along)]).toEqual([90, 50]);
  });

  test("an inner corner moves inwards", () => {
    // an L: its notch corner at (40, 40) goes to (50, 50), its outer corners out by one seam
    const l = withSeams(
      outline([
        [0, 0],
        [40, 0],
        [40, 40],
        [90, 40],
        [90, 90],
        [0, 90],
      ]),
      seam,
    );
    expect(l.map((p) => [number(p.x), number(p.y)])).toEqual([
      [-10, -10],
      [50, -10],
      [50, 30],
      [100, 30],
      [100, 100],
      [-10, 100],
    ]);
  });

  test("a 3-4-5 triangle is enlarged about its inner circle", () => {
    // derived geometry: inner circle (30 + 40 - 50) / 2 = 10, so one seam of 10 doubles every side
    const raw = withSeams(
      outline([
        [0, 0],
        [40, 0],
        [0, 30],
      ]),
      seam,
    );
    expect(edgeLengths(raw).map(number)).toEqual([80, 100, 60]);
    expect(number(areaOf(raw))).toBe(4 * 600);
  });

  test("sharp points are cut off, and no edge loses any of its allowance", () => {
    fc.assert(
      fc.property(fc.integer({ min: 20, max: 900 }), fc.integer({ min: 20, max: 900 }), (across, along) => {
        const finished: [number, number][] = [
          [0, 0],
          [across, 0],
          [0, along],
        ];
        const full = withSeams(outline(finished), seam);
        const blunt = withSeamsBlunted(outline(finished), seam);
        const angles = [Math.atan2(along, across), Math.atan2(across, along)];
        const sharp = angles.filter((angle) => Math.sin(angle / 2) < 1 / 3).length;
        expect(blunt).toHaveLength(3 + sharp);
        expect(r.compareRoots(areaOf(blunt), areaOf(full))).toBe(sharp === 0 ? 0 : -1);
        const corners = blunt.map((p) => [number(p.x), number(p.y)] as const);
        const inside = (x: number, y: number): boolean =>
          corners.every(([ax, ay], i) => {
            const [bx, by] = corners[(i + 1) % corners.length] ?? [ax, ay];
            return (bx - ax) * (y - ay) - (by - ay) * (x - ax) >= -1e-6 * Math.hypot(bx - ax, by - ay);
          });
        finished.forEach(([ax, ay], i) => {
          const [bx, by] = finished[(i + 1) % 3] ?? [ax, ay];
          const length = Math.hypot(bx - ax, by - ay);
          const [nx, ny] = [((by - ay) / length) * 10, (-(bx - ax) / length) * 10];
          expect(inside(ax + nx, ay + ny) && inside(bx + nx, by + ny)).toBe(true);
        });
        // No point reaches more than three seams and a little beyond the finished patch.
        const box = bounds(blunt);
        expect(number(box.across)).toBeLessThanOrEqual(across + 60);
        expect(number(box.along)).toBeLessThanOrEqual(along + 60);
      }),
      { seed: 1880, numRuns: 200 },
    );
  });

  test("an edge whose slope is no fraction and no 30 or 60 degrees is our own fault", () => {
    const odd = [
      { x: [], y: [] },
      { x: r.rootOf(fromInteger(5)), y: r.whole(fromInteger(1)) },
      { x: [], y: r.whole(fromInteger(3)) },
    ];
    expect(() => withSeams(odd, seam)).not.toThrow();
    const worse = [
      { x: [], y: [] },
      { x: r.plus(r.rootOf(fromInteger(5)), r.whole(fromInteger(1))), y: r.whole(fromInteger(1)) },
      { x: [], y: r.whole(fromInteger(3)) },
    ];
    expect(() => withSeams(worse, seam)).toThrow(RangeError);
  });
});
