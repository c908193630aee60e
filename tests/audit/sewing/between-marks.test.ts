import { describe, expect, test } from "vitest";
import { auditSewing } from "../../../src/audit/sew/index.ts";
import { makingSteps } from "../../../src/content/sewing/making.ts";
import { isBetweenMarks, onMark } from "../../../src/length/index.ts";
import { listAll } from "../../../src/pipeline.ts";
import type { Plan } from "../../../src/plan/types.ts";
import { UNIT_KINDS } from "../../../src/quilt/units/registry.ts";
import type { QuiltSpec } from "../../../src/spec/quilt-types.ts";
import { readSpecFile } from "../../../src/spec/read/read-spec-file.ts";
import { english } from "../../../src/words/index.ts";
import { mustSew } from "./sewn.ts";

const ROLES: Readonly<Record<string, number>> = {
  square: 1,
  rectangle: 1,
  "three-patch square": 3,
  "nine-patch": 3,
  "log cabin": 3,
  "courthouse steps": 3,
  "four-triangle square": 4,
  "eight-pointed star": 4,
};
const WIDE = ["rectangle", "flying geese", "half-rectangle triangle", "sixty-degree triangles"];

/** One quilt with a block for every third of the units by every method, each over several cells beside plain squares of one cell. */
function quilt(mark: string, seam: string, size: string, third: number): string {
  const ways = UNIT_KINDS.filter(({ name }) => name !== "drawn patches")
    .flatMap((kind) => kind.methods.map(({ name: method }) => ({ kind: kind.name, method })))
    .filter((_, i) => i % 3 === third);
  const blocks = ways.map(({ kind, method }, i) => {
    const count = ROLES[kind] ?? 2;
    const parts = count === 1 ? "x" : `[${["x", "y", "z", "w"].slice(0, count).join(", ")}]`;
    const more = kind.endsWith("cabin") || kind.endsWith("steps") ? ", count: 1" : "";
    const rows = WIDE.includes(kind) ? ["u - s s", "s s s s"] : ["u - s s", "| | s s"];
    const grid = [...rows, "s s s s", "s s s s"].map((row) => `"${row}"`).join(", ");
    const unit = `{ ${kind}: ${parts}, method: ${method}${more} }`;
    return `  b${i}: { size: ${size}, grid: [${grid}], cells: { u: ${unit}, s: { square: plain } } }`;
  });
  return `units: ${mark.endsWith("in") ? "in" : "cm"}
ruler: ${mark}
seam: ${seam}
fabrics: [{ name: x }, { name: y }, { name: z }, { name: w }, { name: plain }]
blocks:
${blocks.join("\n")}
setting: { rows: [${ways.map((_, i) => `"b${i}"`).join(", ")}] }
`;
}

function worked(text: string) {
  const spec = readSpecFile(text, "quilt.yaml").value as QuiltSpec;
  const all = listAll(spec).value;
  if (all === null) throw new Error("not listed");
  const fabrics = all.cutLists.map(({ fabric, pieces }) => ({ ...fabric, pieces }));
  const plan = { name: spec.name, ruler: spec.ruler, top: all.top, making: all.making, fabrics };
  return { spec, pieces: all.cutLists.flatMap(({ pieces }) => pieces), plan: plan as unknown as Plan };
}

describe("a seam allowance off the ruler's marks", () => {
  test.each([
    ["0.25 cm", "0.6 cm", "20", 0],
    ["0.5 cm", "0.6 cm", "14.6", 1],
    ["1/4 in", "5/16 in", "5 1/3", 2],
  ])("marks every %s, seams of %s: units over several cells are sewn and told", (mark, seam, size, third) => {
    const text = quilt(mark, seam, size, third);
    expect(auditSewing(mustSew(text))).toEqual([]);
    const { spec, pieces, plan } = worked(text);
    for (const { across, along, fullWidth } of pieces)
      for (const side of fullWidth ? [along] : [across, along])
        expect(onMark(side, spec.ruler) || isBetweenMarks(side, spec.ruler)).toBe(true);
    expect(makingSteps(plan, english)).toContain("measures");
  });

  // derived geometry: cells of 5 cm and two seams of 0.6 cm are 6.2 cm, sewn of 6.25 cm; two cells then are
  // 2 x 5.05 + 1.2 = 11.3 cm, between the marks. Squares that are trimmed to it are rounded up to a mark:
  // 10.1 + 0.6 x (2 + root 2) = 12.149 cm.
  test("what must be exact is told as exact, what is trimmed is cut on the marks", () => {
    const { spec, pieces, plan } = worked(`units: cm
ruler: 0.25 cm
seam: 0.6 cm
fabrics: [{ name: x }, { name: y }]
blocks:
  a: { size: 20, grid: ["u - s s", "| | s s", "s s s s", "s s s s"], cells: { u: { half-square triangle: [x, y], method: two at a time }, s: { square: y } } }
  b: { size: 20, grid: ["u - s s", "| | s s", "s s s s", "s s s s"], cells: { u: { square: x }, s: { square: y } } }
setting: { rows: ["a b"] }
`);
    expect(spec.seam).toBe(0.6 * 6400);
    const sides = pieces.map(({ across }) => across / 6400).sort((a, b) => a - b);
    expect(sides).toEqual([6.25, 11.3, 12.25, 12.25]);
    expect(makingSteps(plan, english)).toContain("Trim to exactly 11.3 x 11.3 cm");
  });
});
