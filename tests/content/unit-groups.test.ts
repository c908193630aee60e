import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { makingParts } from "../../src/content/book/parts/making-parts.ts";
import { makingSteps } from "../../src/content/sewing/making.ts";
import { unitGroups } from "../../src/content/sewing/unit-groups.ts";
import { textsOf } from "../../src/draw/scene/scene.ts";
import { unitStepsScenes } from "../../src/draw/steps/draw-unit-steps.ts";
import type { Plan } from "../../src/plan/types.ts";
import { english } from "../../src/words/index.ts";
import { make } from "../making/fixture.ts";
import { stepFabrics } from "../support/step-quilts.ts";

const text = readFileSync(
  new URL("../../fixtures/trials/alike-but-for-fabric.yaml", import.meta.url),
  "utf8",
);

function listed(from = text) {
  const made = make(from);
  const fabrics = made.cutLists.map(({ fabric, pieces }) => ({ ...fabric, pieces }));
  const { spec, top, making } = made;
  const plan = { name: spec.name, ruler: spec.ruler, top, making, fabrics } as unknown as Plan;
  return { made, plan, sewing: makingSteps(plan, english) };
}

const quilt = listed();
const { making } = quilt.made;

/** Cells of the row of a unit in the printed table. */
function rowOf(unit: string, sewing: string): string[] {
  const line = sewing.split("\n").find((each) => each.startsWith(`      ${unit}  `)) ?? "";
  return line.trim().split(/ {2,}/);
}

describe("units alike but for fabric", () => {
  // The file has two of each kind and method: triangles, geese in plain cloth, geese of a print, four-patches.
  test("are one step, and every unit that is sewn is in one group", () => {
    const groups = unitGroups(quilt.plan, english).map(({ units }) => units.map(({ name }) => name));
    expect(groups).toEqual([
      ["U1", "U2"],
      ["U3", "U4"],
      ["U5", "U6"],
      ["U7", "U8"],
    ]);
    const titles = quilt.sewing.split("\n").filter((line) => /^ {2}\[ \] U\d/.test(line));
    expect(titles.map((line) => /^ {2}\[ \] (.*?):/.exec(line)?.[1])).toEqual([
      "U1 and U2",
      "U3 and U4",
      "U5 and U6",
      "U7 and U8",
    ]);
  });

  test("every row names the bags of its unit as they were cut, with their counts", () => {
    const pieces = new Map(
      quilt.made.cutLists.flatMap((list) => list.pieces.map((piece) => [piece.letter, list.fabric.name])),
    );
    for (const unit of making.units.filter(({ steps }) => steps.length > 0)) {
      const cells = rowOf(unit.name, quilt.sewing);
      const letters = new Set(
        [
          ...unit.batches.flatMap(({ laid }) => laid.map(({ letter }) => letter)),
          ...unit.heaps.flatMap(({ patches }) => patches.flatMap((patch) => patch.letters)),
          ...unit.stripSets.flatMap(({ strips }) =>
            strips.flatMap((strip) => [strip.letter, strip.lastLetter]),
          ),
        ].filter((letter) => letter !== null),
      );
      const told = cells.flatMap((cell) => {
        const [, own = "", fabric] = /^([A-Z]+(?:\/[A-Z]+)*) \((.*)\)$/.exec(cell) ?? [];
        return own === "" ? [] : own.split("/").map((letter) => ({ letter, fabric }));
      });
      expect(new Set(told.map(({ letter }) => letter)), unit.name).toEqual(letters);
      for (const { letter, fabric } of told) expect(pieces.get(letter)).toBe(fabric);
      expect(cells, unit.name).toContain(String(unit.units));
      if (unit.unitsPerSet > 1 && !unit.loose) expect(cells).toContain(String(unit.sets));
      if (unit.heaps.length > 1)
        for (const { name, count } of unit.heaps) expect(cells).toContain(`${name}: ${count}`);
    }
  });

  test("no letter of a bag stands in their steps, only in the table", () => {
    const units = quilt.sewing.slice(quilt.sewing.indexOf("\nUnits"), quilt.sewing.indexOf("\nBlocks"));
    const steps = units.split("\n").filter((line) => !/^ {6}U\d+ {2}|^ {2}Over when all /.test(line));
    for (const line of steps) expect(line).not.toMatch(/\b[A-Z]{1,2} \((slate|soil|sky|chalk|herons)\)/);
    expect(units).toContain("For each set take 1 UPPER and 1 LOWER.");
    expect(units).toContain("Lay LOWER on UPPER, right sides together");
  });

  test("a print that points the other way, another method, size or pressing keeps them apart", () => {
    const alone = (change: (from: string) => string): string[][] =>
      unitGroups(listed(change(text)).plan, english).map(({ units }) => units.map(({ name }) => name));
    // Soil with an up is sewn otherwise than slate without one.
    expect(alone((from) => from.replace('"#664433" }', '"#664433", print: one-way }')).flat()).toHaveLength(
      making.units.filter(({ steps }) => steps.length > 0).length,
    );
    const turned = alone((from) => from.replace('"#664433" }', '"#664433", print: one-way }'));
    expect(turned.some((units) => units.includes("U1") && units.includes("U2"))).toBe(false);
    // A light goose: its triangles are pressed to the fabric that is darker, which is now the other one.
    const swapped = alone((from) =>
      from.replace("b: { half-square triangle: [soil, sky] }", "b: { half-square triangle: [sky, soil] }"),
    );
    expect(swapped.some((units) => units.includes("U1") && units.includes("U2"))).toBe(false);
  });

  test("the book has the table, and one set of pictures that names the bags of the others", () => {
    const blocks = makingParts(quilt.plan, english).units?.blocks ?? [];
    const at = blocks.findIndex((block) => block.kind === "heading" && block.text.startsWith("U1 and U2"));
    const next = blocks[at + 1];
    const table = next?.kind === "table" ? next.table : undefined;
    expect(table?.columns.map(({ heading }) => heading)).toEqual(["Unit", "UPPER", "LOWER", "Sets", "Make"]);
    expect(table?.rows.map((row) => row[0]?.text)).toEqual(["U1", "U2"]);
    const scenes = unitStepsScenes(
      quilt.made.top,
      making,
      stepFabrics(quilt.made.cutLists),
      quilt.made.spec.ruler,
      english,
    );
    const words = scenes.flatMap(({ nodes }) => textsOf(nodes).map(({ text: word }) => word));
    expect(words.filter((word) => /^U\d+: .* make/.test(word)).map((word) => word.slice(0, 2))).toEqual([
      "U1",
      "U3",
      "U5",
      "U7",
    ]);
    const [, upper, lower] = rowOf("U2", quilt.sewing);
    const shown = rowOf("U1", quilt.sewing)
      .slice(1, 3)
      .map((bag) => bag.split(" ")[0]);
    const also = words.find((word) => word.startsWith("U2 "))?.replace(/[\u2066-\u2069]/g, "");
    expect(also).toBe(
      `U2 is sewn so too, with ${upper} in place of ${shown[0]}; ${lower} in place of ${shown[1]}: make 4`,
    );
  });
});
