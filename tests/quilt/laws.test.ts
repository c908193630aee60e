import fc from "fast-check";
import { expect, test } from "vitest";
import { rational } from "../../src/length/rational.ts";
import {
  addSurd,
  mulSurd,
  type Surd,
  scaleSurd,
  subSurd,
  surd,
  surdToNumber,
} from "../../src/length/surd.ts";
import { exactToNumber, surdOfExact } from "../../src/quilt/exact.ts";
import type { Patch, QuiltTop } from "../../src/quilt/types.ts";
import { cutsOf, type WorkedOut, workOut } from "./reading.ts";

const RUNS = { numRuns: 16, seed: 20_261_125 };

/** Units that fill a square cell, and one that takes two cells side by side. */
const CELLS = [
  "{ square: F }",
  "{ half-square triangle: [F, F] }",
  "{ half-square triangle: [F, F], method: single triangles }",
  "{ half-square triangle: [F, F], method: eight at a time }",
  "{ quarter-square triangle: [F, F] }",
  "{ four-patch: [F, F], method: single pieces }",
  "{ four-patch: [F, F] }",
  "{ square-in-a-square: [F, F], method: stitch-and-flip }",
  "{ snowball: [F, F], corner: 1/2 }",
  "{ rails: [F, F, F] }",
] as const;
const GEESE = ["four at a time", "stitch-and-flip", "single triangles"] as const;
const FABRICS = ["red", "white", "blue"] as const;
const TURNS = ["^", ">", "v", "<"] as const;

const fabric = fc.constantFrom(...FABRICS);
const fill = (cell: string): fc.Arbitrary<string> =>
  fc.array(fabric, { minLength: 8, maxLength: 8 }).map((names) => {
    let i = 0;
    return cell.replaceAll(/\bF\b/g, () => names[i++ % names.length] ?? "red");
  });

/** A block on a grid of 3 in cells: units of one cell, and pairs of cells that hold a goose. */
const block = fc
  .record({
    columns: fc.integer({ min: 1, max: 4 }),
    marks: fc.array(fc.record({ code: fc.nat(5), turn: fc.constantFrom(...TURNS) }), {
      minLength: 16,
      maxLength: 16,
    }),
    cells: fc.tuple(...Array.from({ length: 5 }, () => fc.constantFrom(...CELLS).chain(fill))),
    goose: fc.tuple(fabric, fabric, fc.constantFrom(...GEESE)),
  })
  .map(({ columns, marks, cells, goose }) => {
    const lines = Array.from({ length: columns }, (_, row) => {
      const line: string[] = [];
      while (line.length < columns) {
        const mark = marks[row * 4 + line.length] ?? { code: 0, turn: "^" };
        const wide = mark.code === 5 && line.length + 2 <= columns;
        if (wide) line.push(mark.turn === ">" || mark.turn === "<" ? "g^" : `g${mark.turn}`, "-");
        else line.push(`c${mark.code % 5}${mark.turn}`);
      }
      return `      ${line.join(" ")}`;
    });
    const explained = cells.map((cell, i) => `      c${i}: ${cell}`);
    return {
      size: 3 * columns,
      text: `{SIZE}\n    grid: |\n${lines.join("\n")}\n    cells:\n${explained.join("\n")}\n      g: { flying geese: [${goose[0]}, ${goose[1]}], method: ${goose[2]} }\n`,
    };
  });

interface Design {
  text: (extra: { turn?: number; fabrics?: string }) => string;
  onPoint: boolean;
  bordered: boolean;
}

const design: fc.Arbitrary<Design> = fc
  .record({
    one: block,
    turns: fc.array(fc.constantFrom(...TURNS), { minLength: 9, maxLength: 9 }),
    across: fc.integer({ min: 1, max: 3 }),
    down: fc.integer({ min: 1, max: 3 }),
    layout: fc.constantFrom("straight", "sashed", "ringed", "on point"),
    border: fc.constantFrom("", "sides first", "tops first", "mitred", "cornerstones"),
  })
  .map(({ one, turns, across, down, layout, border }) => {
    const rows = Array.from({ length: layout === "on point" ? 2 * down - 1 : down }, (_, i) => {
      const count = layout === "on point" && i % 2 === 1 ? across - 1 : across;
      return Array.from({ length: count }, (__, j) => `b${turns[(i * 3 + j) % 9] ?? "^"}`).join(" ");
    });
    // A single column on point has no rows between: they would be empty lines.
    const onPoint = layout === "on point" && across > 1;
    const used = onPoint || layout !== "on point" ? rows : rows.filter((row) => row !== "");
    const sashing =
      layout === "sashed"
        ? "\n  sashing: { width: 1, fabric: blue, cornerstones: red }"
        : layout === "ringed"
          ? "\n  sashing: { width: 1 1/2, fabric: white, ring: true }"
          : "";
    const point = onPoint ? "\n  layout: on point\n  triangles: white" : "";
    const corners = border === "cornerstones" ? "cornerstones: red" : `corners: ${border}`;
    const borders = border === "" ? "" : `borders:\n  - { fabric: blue, width: 2, ${corners} }\n`;
    const text: Design["text"] = ({ turn = 0, fabrics }) =>
      `name: random\nfabrics:\n${fabrics ?? FABRICS.map((name) => `  - { name: ${name}, width: 90 in }`).join("\n")}\nblocks:\n  b:\n    size: ${one.text.replace("{SIZE}", String(one.size))}setting:\n  turn: ${turn}\n  rows: |\n${used.map((row) => `    ${row}`).join("\n")}${sashing}${point}\n${borders}`;
    return { text, onPoint, bordered: border !== "" };
  });

function areaOf(patch: Patch): Surd {
  let twice = surd(rational(0n));
  patch.outline.forEach((a, i) => {
    const b = patch.outline[(i + 1) % patch.outline.length] ?? a;
    const cross = subSurd(
      mulSurd(surdOfExact(a.x), surdOfExact(b.y)),
      mulSurd(surdOfExact(b.x), surdOfExact(a.y)),
    );
    twice = addSurd(twice, cross);
  });
  return scaleSurd(twice, rational(1n, 2n));
}

function covering(top: QuiltTop, x: number, y: number): number {
  return top.patches.filter(({ outline }) => {
    const points = outline.map((p) => [exactToNumber(p.x), exactToNumber(p.y)] as const);
    let inside = false;
    points.forEach(([x1, y1], i) => {
      const [x2, y2] = points[(i + 1) % points.length] ?? [x1, y1];
      if (y1 > y !== y2 > y && x < ((x2 - x1) * (y - y1)) / (y2 - y1) + x1) inside = !inside;
    });
    return inside;
  }).length;
}

test("the patches tile the top exactly", () => {
  fc.assert(
    fc.property(design, fc.constantFrom(0, 90, 180, 270), ({ text }, turn) => {
      const { top } = workOut(text({ turn }));
      const sum = top.patches.map(areaOf).reduce(addSurd);
      const whole = mulSurd(surdOfExact(top.across), surdOfExact(top.down));
      expect(subSurd(sum, whole)).toEqual(surd(rational(0n)));
      // Equal areas may still overlap here and gape there: a net of odd points is covered once each.
      const [across, down] = [exactToNumber(top.across), exactToNumber(top.down)];
      for (let i = 1; i < 8; i += 1)
        for (let j = 1; j < 8; j += 1)
          expect(covering(top, (across * (i + 0.0371)) / 8, (down * (j + 0.0173)) / 8)).toBe(1);
    }),
    RUNS,
  );
});

/** Area of the finished patches of a fabric, from the drawing alone. */
function finishedBy(top: QuiltTop, name: string): number {
  return top.patches
    .filter((patch) => patch.fabric === name)
    .reduce((sum, patch) => sum + surdToNumber(areaOf(patch)), 0);
}

test("cut area is finished area, seams and corner waste", () => {
  fc.assert(
    fc.property(design, ({ text }) => {
      const { top, cutLists } = workOut(text({}));
      for (const {
        fabric: { name },
        pieces,
      } of cutLists) {
        const told = pieces.reduce(
          (sum, piece) =>
            sum + piece.across * piece.along * piece.count - (piece.seams ?? 0) - (piece.corners ?? 0),
          0,
        );
        // Areas are told to the nearest square tick, patch by patch.
        expect(Math.abs(told - finishedBy(top, name))).toBeLessThan(top.patches.length * 2);
        for (const piece of pieces)
          expect(Math.min(piece.seams ?? 0, piece.corners ?? 0)).toBeGreaterThanOrEqual(0);
      }
    }),
    RUNS,
  );
});

test("turning the whole quilt changes nothing when no fabric has a direction", () => {
  const lists = (worked: WorkedOut): unknown =>
    worked.cutLists.map(({ fabric: { name }, pieces }) => [
      name,
      pieces.map(({ across, along, count, turnable, subcut }) => [across, along, count, turnable, subcut]),
    ]);
  fc.assert(
    fc.property(
      design.filter(({ bordered }) => !bordered),
      fc.constantFrom(90, 180, 270),
      ({ text }, turn) => {
        expect(lists(workOut(text({ turn })))).toEqual(lists(workOut(text({}))));
      },
    ),
    RUNS,
  );
});

const BARS = (prints: string): string => `
fabrics: [{ name: boats, print: one-way }, { name: white }]
prints: ${prints}
blocks:
  whirl:
    columns: [2, 2, 2]
    grid: |
      a  -  b>
      bv m  |
      |  av -
    cells:
      a: { rectangle: boats }
      b: { rectangle: boats }
      m: { square: white }
setting: { rows: whirl*2 whirl>*3 }
`;

test("upright prints and prints that follow their unit differ exactly where the units are turned", () => {
  // Two bars of 4 x 2 lie flat and two stand in each block, whichever way the block is turned; `b` is drawn
  // standing with its own turn, so that following the unit all but the standing `bv` are cut alike.
  expect(cutsOf(workOut(BARS("upright")), "boats")).toEqual(["4.5 x 2.5 x 10", "2.5 x 4.5 x 10"]);
  const follows = cutsOf(workOut(BARS("with unit")), "boats");
  expect(follows).toEqual(["4.5 x 2.5 x 15", "2.5 x 4.5 x 5"]);
  const plain = workOut(BARS("upright").replace(", print: one-way", ""));
  expect(cutsOf(plain, "boats")).toEqual(["2.5 x 4.5 x 20"]);
});

test("every patch of a one-way print is upright in the quilt, or turns with its block when asked", () => {
  const ups = (prints: string): Set<number | null> =>
    new Set(
      workOut(BARS(prints))
        .top.patches.filter((patch) => patch.fabric === "boats")
        .map((patch) => patch.up),
    );
  expect(ups("upright")).toEqual(new Set([0]));
  expect(ups("with block")).toEqual(new Set([0, 90]));
  expect(ups("with unit")).toEqual(new Set([0, 90, 180, 270]));
});
