import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { straightSplit } from "../../src/quilt/straight-split.ts";

type Box = readonly [x: number, y: number, across: number, down: number];
const outline = ([x, y, across, down]: Box) => [
  { x, y },
  { x: x + across, y },
  { x: x + across, y: y + down },
  { x, y: y + down },
];
const WHORL: Box[] = [
  [0, 0, 20, 10],
  [20, 0, 10, 20],
  [10, 20, 20, 10],
  [0, 10, 10, 20],
  [10, 10, 10, 10],
];

/** A rectangle cut again and again from edge to edge. */
const cutUp = fc.letrec<{ boxes: Box[] }>((tie) => ({
  boxes: fc.oneof(
    { maxDepth: 4, withCrossShrink: true },
    fc.constant<Box[]>([[0, 0, 1, 1]]),
    fc
      .tuple(tie("boxes"), tie("boxes"), fc.boolean(), fc.integer({ min: 1, max: 3 }))
      .map(([a, b, upright, part]) => {
        const at = part / 4;
        const into = (boxes: Box[], from: number, size: number): Box[] =>
          boxes.map(([x, y, w, h]) =>
            upright ? [from + x * size, y, w * size, h] : [x, from + y * size, w, h * size],
          );
        return [...into(a, 0, at), ...into(b, at, 1 - at)];
      }),
  ),
})).boxes;

describe("patches for straight seams", () => {
  test("what was cut edge to edge needs no cut more", () => {
    fc.assert(
      fc.property(cutUp, (boxes) => {
        const scaled = boxes.map(([x, y, w, h]): Box => [x * 65_536, y * 65_536, w * 65_536, h * 65_536]);
        expect(straightSplit(scaled.map(outline))).toEqual([]);
      }),
      { numRuns: 60, seed: 3 },
    );
  });

  // derived geometry: the upper rectangle cut at the middle's left edge lets a line run from top to bottom.
  test("a whorl of four round one needs one cut, whichever way it turns", () => {
    const mirrored = WHORL.map(([x, y, w, h]): Box => [30 - x - w, y, w, h]);
    for (const whorl of [WHORL, mirrored]) {
      const cuts = straightSplit(whorl.map(outline)) ?? [];
      expect(cuts).toHaveLength(1);
      // With the rectangle in two, no cut is needed.
      const [{ patch, from, to }] = cuts as [(typeof cuts)[number]];
      const [x, y, w, h] = whorl[patch] ?? [0, 0, 0, 0];
      const halves: Box[] =
        from.x === to.x
          ? [
              [x, y, from.x - x, h],
              [from.x, y, x + w - from.x, h],
            ]
          : [
              [x, y, w, from.y - y],
              [x, from.y, w, y + h - from.y],
            ];
      const rest = whorl.filter((_, i) => i !== patch);
      expect(straightSplit([...rest, ...halves].map(outline))).toEqual([]);
    }
  });

  test("a whorl within a whorl needs two", () => {
    const inner = WHORL.map(([x, y, w, h]): Box => [30 + x, 30 + y, w, h]);
    const outer: Box[] = [
      [0, 0, 60, 30],
      [60, 0, 30, 60],
      [30, 60, 60, 30],
      [0, 30, 30, 60],
    ];
    expect(straightSplit([...outer, ...inner].map(outline))).toHaveLength(2);
  });
});
