import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { exactToNumber } from "../../src/quilt/exact.ts";
import { INCH, type WorkedOut } from "../quilt/reading.ts";
import { make } from "./fixture.ts";

/* How prints lie at the edge and at the back: what is cut is what is drawn, followed by hand. */

const trial = (name: string): string =>
  readFileSync(new URL(`../../fixtures/trials/${name}.yaml`, import.meta.url), "utf8");

/**
 * Strips of a fabric as they are drawn, laid on the bolt by their print: `across x along` of each as finished, and
 * whether the print's up runs along the strip.
 */
function onBolt({ top }: WorkedOut, fabric: string, axis: "along" | "across"): string[] {
  return top.patches
    .filter((patch) => patch.fabric === fabric && patch.origin.place === "border")
    .map(({ outline, up }) => {
      const span = (values: number[]): number => (Math.max(...values) - Math.min(...values)) / INCH;
      const [across, down] = [
        span(outline.map(({ x }) => exactToNumber(x))),
        span(outline.map(({ y }) => exactToNumber(y))),
      ];
      const upright = ((up ?? 0) % 180 === 0) === (axis === "along");
      const [a, b] = upright ? [across, down] : [down, across];
      return `${a} x ${b}`;
    })
    .sort();
}

function cut({ cutLists }: WorkedOut, fabric: string): { across: number; along: number; count: number }[] {
  return (cutLists.find((each) => each.fabric.name === fabric)?.pieces ?? [])
    .filter(({ uses }) => uses.some(({ purpose }) => JSON.stringify(purpose).includes("border")))
    .map(({ across, along, count }) => ({ across: across / INCH, along: along / INCH, count }));
}

const BORDER = (print: string, words: string): WorkedOut =>
  make(`fabrics: [{ name: red, print: one-way }, { name: vines, print: ${print} }]
blocks: { b: { size: 20 x 30, cell: { rectangle: red } } }
setting: { rows: b }
borders: [{ fabric: vines, width: 4${words} }]
`);

describe("a border's own prints", () => {
  // A stripe along the selvage, told as it is, runs along all four sides; the flowers stand upright.
  test("a stripe along the selvage runs round the quilt, and nothing else does", () => {
    const worked = make(trial("stripe-round"));
    expect(onBolt(worked, "stripe", "along")).toEqual(["5 x 42", "5 x 42", "5 x 50", "5 x 50"]);
    for (const piece of cut(worked, "stripe")) expect([piece.across, piece.along > 42]).toEqual([5.5, true]);
    const pieces = worked.cutLists.find(({ fabric }) => fabric.name === "stripe")?.pieces ?? [];
    expect(pieces.map((piece) => piece.cut)).toEqual(["lengthwise", "lengthwise"]);
    const floral = worked.top.patches.filter(({ fabric }) => fabric === "floral");
    expect(new Set(floral.map(({ up }) => up))).toEqual(new Set([0]));
  });

  test.each([
    ["two-way along", ", prints: round", ["4 x 28", "4 x 28", "4 x 30", "4 x 30"]],
    ["two-way across", ", prints: round", ["28 x 4", "28 x 4", "30 x 4", "30 x 4"]],
    ["two-way along", ", prints: outwards", ["28 x 4", "28 x 4", "30 x 4", "30 x 4"]],
    ["one-way along", ", prints: round", ["28 x 4", "28 x 4", "30 x 4", "30 x 4"]],
    ["one-way across", ", prints: round", ["4 x 28", "4 x 28", "4 x 30", "4 x 30"]],
    ["one-way along", ", prints: upright", ["28 x 4", "28 x 4", "4 x 30", "4 x 30"]],
    ["one-way along", "", ["28 x 4", "28 x 4", "4 x 30", "4 x 30"]],
  ])("%s%s is cut as it is drawn", (print, words, sizes) => {
    const worked = BORDER(print, words);
    expect(onBolt(worked, "vines", print.endsWith("across") ? "across" : "along")).toEqual(sizes);
    const told = cut(worked, "vines").flatMap(({ across, along, count }) =>
      Array<string>(count).fill(`${across - 0.5} x ${along - 0.5}`),
    );
    expect(told.sort()).toEqual(sizes);
    expect(worked.top.patches.find(({ fabric }) => fabric === "red")?.up).toBe(0);
  });

  test("heads run round outwards: the heads of each side point away from the quilt", () => {
    const { top } = BORDER("one-way along", ", prints: round");
    const ups = top.patches.filter(({ fabric }) => fabric === "vines").map(({ up }) => up);
    expect(ups.sort()).toEqual([0, 180, 270, 90].sort());
  });

  test("a pieced border may run round alone, or stand upright alone", () => {
    const pieced = (file: string, words: string): unknown[] => {
      const { top } = make(`${file}fabrics: [{ name: p, print: one-way }, { name: z }]
blocks:
  A: { size: 12, cell: { square: p } }
  t: { size: 2, cell: { rails: [p, z] } }
setting: { rows: A }
borders: [{ block: t, width: 2${words} }]
`);
      const of = (place: string): Set<unknown> =>
        new Set(top.patches.filter((p) => p.fabric === "p" && p.origin.place === place).map(({ up }) => up));
      return [of("block"), of("border")];
    };
    const all = new Set([0, 90, 180, 270]);
    expect(pieced("", ", prints: round")).toEqual([new Set([0]), all]);
    expect(pieced("", "")).toEqual([new Set([0]), new Set([0])]);
    expect(pieced("prints: with block\n", ", prints: upright")).toEqual([new Set([0]), new Set([0])]);
  });
});

describe("a backing's print", () => {
  const back = (print: string, words: string, fill = "4 x 5"): ReturnType<typeof make> =>
    make(`fabrics: [{ name: z }, { name: birds, print: ${print} }]
blocks: { A: { size: 10, cell: { square: z } } }
setting: { rows: A, fill: ${fill} }
backing: { fabric: birds${words} }
`);
  const lies = (made: ReturnType<typeof make>): unknown => {
    const { backing } = made.making.finishing;
    const said = made.diagnostics.filter(({ code }) => code === "BACKING-SIDEWAYS").length;
    return [backing?.panels, backing?.seams, backing?.sideways, said];
  };

  // Level seams: panels as long as the quilt is wide, the selvage level, the birds on their side.
  test("seams that go against it are warned of, and told truly", () => {
    expect(lies(make(trial("backing-sideways")))).toEqual([2, "horizontal", true, 1]);
    expect(lies(back("one-way along", ", seams: vertical"))).toEqual([2, "vertical", false, 0]);
    expect(lies(back("one-way across", ", seams: vertical"))).toEqual([2, "vertical", true, 1]);
    expect(lies(back("one-way along", ""))).toEqual([2, "vertical", false, 0]);
  });

  // 20 + 8 in wide fits 42 in: one piece, whatever the seams would have been.
  test("one piece has no seams: the print says how it lies", () => {
    const one = back("one-way along", ", seams: horizontal", "2 x 3");
    expect(lies(one)).toEqual([1, "vertical", false, 0]);
    const piece = one.cutLists.find(({ fabric }) => fabric.name === "birds")?.pieces[0];
    expect([(piece?.across ?? 0) / INCH, (piece?.along ?? 0) / INCH]).toEqual([28.5, 38.5]);
    const sideways = back("one-way across", ", seams: vertical", "2 x 3");
    expect(lies(sideways)).toEqual([1, "horizontal", false, 0]);
    const other = sideways.cutLists.find(({ fabric }) => fabric.name === "birds")?.pieces[0];
    expect([(other?.across ?? 0) / INCH, (other?.along ?? 0) / INCH]).toEqual([38.5, 28.5]);
  });
});
