import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { keepsOf } from "../../src/page/planner/keeps.ts";
import { type Mat, matOf } from "../../src/page/planner/mat.ts";
import type { Answer } from "../../src/page/planner/messages.ts";
import { planText, solveKeeping } from "../../src/page/planner/plan-text.ts";
import { STARTS } from "../../src/page/starts.ts";
import {
  addEntry,
  beginWork,
  english,
  formatLength,
  planJson,
  spoiledFact,
  tickFacts,
  USUALLY_PLANNED,
} from "../../src/planning.ts";
import { crossgrain, crossgrainHere } from "../cli/run.ts";
import { LEFT_OUT } from "../support/sweep.ts";
import { emptyFolder } from "./browser.ts";
import { quiltNamed } from "./quilts.ts";

const around = {
  keeps: keepsOf(1e8),
  overtaken: () => false,
  pause: () => Promise.resolve(),
  rest: () => Promise.resolve(),
  tell: (_: Answer) => {},
};
const LANE = STARTS.find(({ name }) => name === "Lantern Lane")?.text ?? "";
const quilt = { text: LANE, name: "quilt.yaml" };

async function mat(work: string): Promise<{ mat: Mat; json: string }> {
  const plan = await planText(1, LANE, "quilt.yaml", around);
  if (plan === null) throw new Error("no plan");
  const { mat, rest } = await matOf({ quilt, work, plan }, solveKeeping(around));
  return { mat, json: planJson(rest, english) };
}

const fabricOf = ({ fabrics }: Mat, name: string) => fabrics.find((one) => one.name === name)!;

describe("the mat", () => {
  test.skipIf(LEFT_OUT)(
    "what is ticked and said on the page is the file and the plan of the command, to the byte",
    async () => {
      const folder = emptyFolder();
      writeFileSync(join(folder, "quilt.yaml"), LANE);
      expect((await crossgrainHere(["plan", "quilt.yaml", "--out", "o"], folder)).code).toBe(0);
      const read = (name: string) => readFileSync(join(folder, "o", name), "utf8");
      const first = (await mat("")).mat;
      const chalk = fabricOf(first, "chalk");
      const places = [1, 2].map((number) => ({ lay: 0, number }));
      const ticks = tickFacts(chalk.cloths, places);
      const facts = [...ticks, spoiledFact(chalk.cloths, { lay: 0, number: 3 })];
      const spoiled = addEntry(beginWork(USUALLY_PLANNED, english.workFile.about), {
        fabric: "chalk",
        plan: chalk.mark,
        facts,
      });
      const said = facts.map((fact) => `chalk: ${fact}`);
      expect((await crossgrainHere(["go-on", "quilt.yaml", ...said, "--out", "o"], folder)).code).toBe(0);
      expect(read("work.yaml")).toBe(spoiled);
      expect(read("plan.json")).toBe((await mat(spoiled)).json);
      // Said of the diagram as it is then: the width of what is left.
      const after = fabricOf((await mat(spoiled)).mat, "chalk");
      const narrow = addEntry(spoiled, { fabric: "chalk", plan: after.restMark, facts: ["40 in wide"] });
      expect(crossgrain(["go-on", "quilt.yaml", "chalk: 40 in wide", "--out", "o"], { folder }).code).toBe(0);
      expect(read("work.yaml")).toBe(narrow);
      expect(read("plan.json")).toBe((await mat(narrow)).json);
    },
  );

  test("ticks stay on the diagram they are of; what else is said makes a new one", async () => {
    const { mat: first } = await mat("");
    const chalk = fabricOf(first, "chalk");
    const ticked = addEntry(beginWork(USUALLY_PLANNED, english.workFile.about), {
      fabric: "chalk",
      plan: chalk.mark,
      facts: ["strips 1 and 2 cut"],
    });
    const { mat: second } = await mat(ticked);
    expect(fabricOf(second, "chalk")).toMatchObject({ mark: chalk.mark, lays: chalk.lays });
    expect(fabricOf(second, "chalk").told).toEqual([
      { lay: 0, number: 1, cut: true },
      { lay: 0, number: 2, cut: true },
    ]);
    expect(second).toMatchObject({
      base: beginWork(USUALLY_PLANNED, english.workFile.about),
      ticked: ["chalk"],
      changed: [],
    });
    const closed = addEntry(second.base, { fabric: "chalk", plan: chalk.mark, facts: ["cut to strip 2"] });
    const { mat: third } = await mat(closed);
    const rest = fabricOf(third, "chalk");
    expect(rest.mark).not.toBe(chalk.mark);
    expect(rest.mark).toBe(fabricOf(second, "chalk").restMark);
    expect(rest.lays[0]?.strips.length).toBe(chalk.lays[0]!.strips.length - 2);
    // Ten of the large squares lie cut: 6 in the first strip and 4 in the second.
    expect(rest.bags.find(({ letter }) => letter === "H")).toMatchObject({ lay: 10, count: 10 });
    expect(third.changed.join(" ")).toContain("10 of [H]");
  });

  test("what was said of another drawing is told, and the diagrams are those of the quilt", async () => {
    const foreign = addEntry(beginWork(USUALLY_PLANNED, english.workFile.about), {
      fabric: "chalk",
      plan: "0000000000000000",
      facts: ["strip 1 cut"],
    });
    const { mat: laid } = await mat(foreign);
    expect(laid.problems.map(({ code }) => code)).toEqual(["WORK-OTHER-PLAN"]);
    expect(fabricOf(laid, "chalk").mark).toBe(fabricOf((await mat("")).mat, "chalk").mark);
    expect((await mat("format: shopping list\n")).mat.problems).toHaveLength(1);
  });

  test("a strip's width is what its step is set to, in lengths cut along the selvage too", async () => {
    const text = quiltNamed("allotments");
    const plan = await planText(1, text, "quilt.yaml", around);
    if (plan === null) throw new Error("no plan");
    const { mat: laid } = await matOf(
      { quilt: { text, name: "quilt.yaml" }, work: "", plan },
      solveKeeping(around),
    );
    let upright = 0;
    for (const [f, fabric] of plan.fabrics.entries())
      for (const { lay, width, strips } of fabric.steps)
        for (const number of strips) {
          const strip = laid.fabrics[f]?.lays[lay]?.strips.find((one) => one.number === number);
          expect(strip?.width).toBe(formatLength(width, plan.ruler, { typeset: true }));
          if (strip?.lengthwise === true) upright += 1;
        }
    expect(upright).toBeGreaterThan(0);
  });

  test("every strip is told in words of the printed steps, and every bag has its place in the quilt", async () => {
    const { mat: laid } = await mat("");
    for (const fabric of laid.fabrics) {
      const strips = fabric.lays.flatMap(({ strips }) => strips);
      for (const { lay, number, parts } of strips) {
        const told = fabric.words.find((one) => one.lay === lay && one.number === number);
        expect(told?.title, `${fabric.name} ${number}`).toMatch(/^Cut 1 /);
        const letters = new Set(parts.flatMap(({ bag }) => (bag === null ? [] : [fabric.bags[bag]!.letter])));
        for (const letter of letters)
          expect(`${told?.title} ${told?.gives.join(" ")}`).toContain(`[${letter}]`);
      }
      const held = fabric.bags.map((_, bag) =>
        strips
          .flatMap(({ parts }) => parts)
          .reduce((sum, part) => sum + (part.bag === bag ? part.holds : 0), 0),
      );
      expect(held).toEqual(fabric.bags.map(({ count }) => count));
    }
    const chalk = fabricOf(laid, "chalk");
    // Squares for geese four at a time and for corners: each bag lies somewhere else.
    expect(new Set(chalk.bags.map(({ place }) => place)).size).toBe(chalk.bags.length);
  });
});
