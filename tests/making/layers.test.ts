import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { leastBulk } from "../../src/making/bulk.ts";
import { type Choice, fewestDenied, type Wish } from "../../src/making/frustration.ts";
import { juncturesOf, layerCounter } from "../../src/making/junctures.ts";
import { type Around, layersAt } from "../../src/making/layers.ts";
import { readTop } from "../../src/making/read-top.ts";
import { allSeams, junctionsOf, type Seam } from "../../src/making/seams.ts";
import { make, pressingOf, quiltOfSquares, type SetBlock, type Turn } from "./fixture.ts";

const NONE: Around = { upright: false, last: true, before: null, after: null, slants: [] };

/*
 * derived geometry: cloth folded about a seam lies on its pressed side twice, its own and its allowance, and the
 * other part's allowance once.
 */
describe("layers where seams meet", () => {
  test("one seam: 3 on the side it is pressed to", () => expect(layersAt(NONE)).toBe(3));

  test("four patches: 7 where they nest, 9 where they do not", () => {
    expect(layersAt({ ...NONE, before: true, after: false })).toBe(7);
    expect(layersAt({ ...NONE, before: true, after: true })).toBe(9);
  });

  test("a seam on one side only: 7 pressed towards it, 5 away from it", () => {
    expect(layersAt({ ...NONE, last: true, after: true })).toBe(7);
    expect(layersAt({ ...NONE, last: false, after: true })).toBe(5);
  });

  test("pressed open, un-nested patches come to 6 instead of 9", () => {
    expect(layersAt({ ...NONE, before: true, after: true }, true)).toBe(6);
  });

  // Derived as above: three where the part's own seam is pressed, and again three of its allowance folded back.
  test("pressed open, the part that is joined itself is thick on its own side", () => {
    expect(layersAt({ ...NONE, last: true, before: true, after: null }, true)).toBe(6);
    expect(layersAt({ ...NONE, last: false, before: null, after: true }, true)).toBe(6);
  });

  // Away from the point, as makers press geese: both slanted seams would be folded back upon themselves.
  test("pressed away from a goose's point it is thinner", () => {
    const slants: Around["slants"] = [
      { unit: "after", far: false, angle: 135 },
      { unit: "after", far: true, angle: 45 },
    ];
    expect(layersAt({ ...NONE, last: false, slants })).toBeLessThan(
      layersAt({ ...NONE, last: true, slants }),
    );
  });

  /** Cloth as points that every fold moves: another way of counting what lies where. */
  function byFolding({ upright, last, before, after }: Around): number {
    const after_ = (p: readonly [number, number], level: boolean) => (level ? p[1] > 0 : p[0] > 0);
    const fold = (p: readonly [number, number], level: boolean): [number, number] =>
      level ? [p[0], -p[1]] : [-p[0], p[1]];
    const counts = new Map<string, number>();
    const points = [1, 2].flatMap((a) =>
      [1, 2].flatMap((b) => [a, -a].flatMap((x) => [b, -b].map((y) => [x, y] as const))),
    );
    const parts = [
      { far: false, press: before },
      { far: true, press: after },
    ];
    for (const { far, press } of parts) {
      const patches = press === null ? [null] : [false, true];
      for (const patch of patches) {
        for (const point of points) {
          let at: readonly [number, number] = point;
          // A seam folds the patch on the side it is pressed to; the other's allowance stays flat.
          if (patch !== null && patch === press && after_(at, upright) !== patch) at = fold(at, upright);
          else if (
            patch !== null &&
            patch !== press &&
            after_(at, upright) !== patch &&
            after_(at, upright) !== press
          )
            continue;
          if (last === far && after_(at, !upright) !== far) at = fold(at, !upright);
          counts.set(at.join(), (counts.get(at.join()) ?? 0) + 1);
        }
      }
    }
    return Math.max(...counts.values());
  }

  test("the count is that of points carried through the folds", () => {
    for (const upright of [false, true]) {
      for (const last of [false, true]) {
        for (const before of [null, false, true]) {
          for (const after of [null, false, true]) {
            const around = { ...NONE, upright, last, before, after };
            expect([around, layersAt(around)]).toEqual([around, byFolding(around)]);
          }
        }
      }
    }
  });
});

const COST = 10_000;

/** Least bulk by trying every pressing that nests as well. */
function byTrying(
  things: number,
  wishes: readonly Wish[],
  denied: number,
  cost: (choice: readonly (0 | 1)[]) => number,
): number {
  let least = Number.POSITIVE_INFINITY;
  for (let bits = 0; bits < 2 ** things; bits += 1) {
    const chosen = Array.from({ length: things }, (_, i): 0 | 1 => (((bits >> i) & 1) === 1 ? 1 : 0));
    const open = wishes.filter(({ a, b, same }) => (chosen[a] === chosen[b]) !== same).length;
    if (open === denied) least = Math.min(least, cost(chosen));
  }
  return least;
}

test("of pressings that nest alike the thinnest is taken: every one was tried", () => {
  const set = fc.record({ block: fc.constantFrom(0, 1), turn: fc.constantFrom<Turn>(0, 1, 2, 3) });
  const rows = fc
    .tuple(fc.integer({ min: 1, max: 2 }), fc.integer({ min: 1, max: 3 }))
    .chain(([down, across]) =>
      fc.array(fc.array(set, { minLength: across, maxLength: across }), { minLength: down, maxLength: down }),
    );
  let proved = 0;
  fc.assert(
    fc.property(rows, fc.constantFrom(5, 7, 9), (drawn: SetBlock[][], limit) => {
      const blocks = [
        { name: "P", squares: 2 },
        { name: "Q", squares: 1 },
      ];
      const border = "borders: [{ fabric: red, width: 2, join: straight }]\n";
      const { top } = make(quiltOfSquares(blocks, drawn) + border);
      const read = readTop(top);
      if (read === null) throw new Error("no rows");
      const seams = allSeams(top, read, { byRow: true, towardPlain: true, variantOf: () => "" });
      // Thing 0 stands for what was pressed before.
      const names = ["", ...new Set(seams.map(({ joining }) => joining))];
      const numberOf = (seam: Seam): number => names.indexOf(seam.joining);
      const wishes = junctionsOf(seams).map(
        ({ a, b }): Wish => ({ a: numberOf(a), b: numberOf(b), same: a.flip !== b.flip }),
      );
      const junctures = juncturesOf(top.designs, read, seams);
      const layers = layerCounter();
      const cost = (chosen: readonly (0 | 1)[]): number =>
        junctures.reduce((sum, juncture) => {
          const count = layers(juncture, (seam) => (chosen[numberOf(seam)] === 1) !== seam.flip);
          return sum + count + COST * Math.max(0, count - limit);
        }, 0);
      const choice: Choice = fewestDenied(names.length, wishes);
      const found = leastBulk(junctures, choice, numberOf, wishes, limit);
      const open = wishes.filter(
        ({ a, b, same }) => (found.choice.chosen[a] === found.choice.chosen[b]) !== same,
      );
      expect(open).toHaveLength(choice.denied);
      expect(cost(found.choice.chosen)).toBeLessThanOrEqual(cost(choice.chosen));
      if (!found.proven || names.length > 13) return;
      proved += 1;
      expect(cost(found.choice.chosen)).toBe(byTrying(names.length, wishes, choice.denied, cost));
    }),
    { numRuns: 14, seed: 5 },
  );
  expect(proved).toBeGreaterThan(3);
});

test("what is thicker than wanted is listed with what opening the seam does", () => {
  const rows: SetBlock[][] = Array.from({ length: 2 }, () => [
    { block: 0, turn: 0 },
    { block: 0, turn: 0 },
  ]);
  const text = `${quiltOfSquares([{ name: "F", squares: 2 }], rows)}most-layers: 5\n`;
  const { bulk } = pressingOf(make(text));
  expect(bulk.limit).toBe(5);
  expect(bulk.most).toBe(7);
  expect(bulk.overCount).toBe(bulk.over.length);
  expect(bulk.over[0]).toMatchObject({ layers: 7, opened: 6 });
});

describe("pinning", () => {
  const seam = (across: number) => {
    const row: SetBlock[] = Array.from({ length: across }, () => ({ block: 0, turn: 0 }));
    return pressingOf(make(quiltOfSquares([{ name: "F", squares: 2 }], [row, row]))).pins;
  };

  test("the middle place first, then outwards; corners of blocks, not what meets inside them", () => {
    expect(seam(4).map(({ row, order }) => [row, order])).toEqual([[1, [[2], [1, 3]]]]);
    expect(seam(5)[0]?.order).toEqual([
      [2, 3],
      [1, 4],
    ]);
    // 12 in blocks: their corners lie at 12, 24, 36 in, the seam 12 in down.
    expect(seam(4)[0]?.places.map(({ x, y }) => [x / 16256, y / 16256])).toEqual([
      [12, 12],
      [24, 12],
      [36, 12],
    ]);
  });

  test("where no corners meet, whatever meets", () => {
    expect(seam(1)[0]?.order).toEqual([[1]]);
  });
});
