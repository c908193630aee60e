import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import type { Plan } from "../../src/plan/types.ts";
import { crossgrainHere, emptyFolder, SMALL } from "./run.ts";

/** A folder with a quilt that is planned in it. */
async function planned(...more: string[]): Promise<string> {
  const folder = emptyFolder();
  writeFileSync(join(folder, "tide.yaml"), SMALL);
  expect((await crossgrainHere(["plan", "tide.yaml", ...more], folder)).code).toBe(0);
  return folder;
}

const goOn = (folder: string, ...words: string[]) => crossgrainHere(["go-on", "tide.yaml", ...words], folder);

const at = (folder: string, name: string) => join(folder, "out", "tide-pool", name);

const planOf = (folder: string) => JSON.parse(readFileSync(at(folder, "plan.json"), "utf8")) as Plan;

test("one command: what is told, what is written, and taking it back", async () => {
  const folder = await planned();
  const before = readFileSync(at(folder, "plan.json"), "utf8");
  const ended = await goOn(folder, "night sea: cut to strip 2", "40 in wide");
  expect(ended).toMatchObject({ code: 0 });
  // 8 squares of 4 1/2 from 40 in, where 9 were planned from 42.
  expect(ended.stdout).toContain("Cut and in their bags: 16 of [A].");
  expect(ended.stdout).toContain("Lost, and to be cut again: 2 of [A].");
  // 18 in bought, 1 straightened, 9 cut: 8 in hold 8 of the 10 that are missing. 4 1/2 in more and 1 in to straighten: 1/4 yd.
  expect(ended.stdout).toContain("What you have is not enough: buy 1/4 yd more.");
  expect(readFileSync(at(folder, "gone-on.txt"), "utf8")).toBe(
    ended.stdout.slice(0, ended.stdout.indexOf("\nFabric to buy")),
  );
  expect(readFileSync(at(folder, "steps.txt"), "utf8")).toContain("On the rest of the bolt:");
  expect(readFileSync(at(folder, "cut-1-night-sea.svg"), "utf8")).toContain("10 more, 16 cut");
  expect(planOf(folder).said).toEqual([{ fabric: "Night sea", facts: ["cut to strip 2", "40 in wide"] }]);
  expect(readFileSync(at(folder, "work.yaml"), "utf8")).toContain("      - 40 in wide\n");

  // Planned from the beginning, the work stays and is spoken of.
  const again = await crossgrainHere(["plan", "tide.yaml"], folder);
  expect(again.stderr).toContain("WORK-LEFT-ASIDE");
  expect(existsSync(at(folder, "work.yaml"))).toBe(true);
  expect(existsSync(at(folder, "gone-on.txt"))).toBe(false);

  const back = await goOn(folder, "--undo");
  expect(back.code).toBe(0);
  expect(back.stdout).toContain("Nothing has been said of the work yet.");
  expect(readFileSync(at(folder, "plan.json"), "utf8")).toBe(before);
  expect((await goOn(folder, "--undo")).stderr).toContain("WORK-NOTHING-TO-UNDO");
});

test("options of the plan are kept with the work, and cannot change", async () => {
  const folder = await planned("--prefer", "simple");
  const other = await goOn(folder, "night sea: strip 1 spoiled", "--style", "strips-3");
  expect(other.code === 0 || other.stderr.includes("WORK-PLANNED-OTHERWISE")).toBe(true);
  expect((await goOn(folder, "night sea: strip 1 spoiled", "--prefer", "simple")).code).toBe(0);
  expect((await goOn(folder, "chalk: all cut")).code).toBe(0);
  expect(planOf(folder).prefer).toBe("simple");
  const fixed = await goOn(folder, "--prefer", "sparing");
  expect(fixed.code).toBe(1);
  expect(fixed.stderr).toContain("WORK-PLANNED-FIXED");
});

test("what it cannot go on from is told, and nothing is written", async () => {
  const folder = emptyFolder();
  writeFileSync(join(folder, "tide.yaml"), SMALL);
  expect((await goOn(folder, "night sea: all cut")).stderr).toContain("WORK-NO-PLAN");
  expect((await crossgrainHere(["plan", "tide.yaml"], folder)).code).toBe(0);
  expect((await goOn(folder)).code).toBe(2);
  expect((await goOn(folder, "night sea: strip 40 cut")).stderr).toContain("its strips are 1 to 4");
  expect(existsSync(at(folder, "work.yaml"))).toBe(false);
  expect((await goOn(folder, "night sea: all cut", "--undo")).code).toBe(2);

  writeFileSync(at(folder, "work.yaml"), "my own notes: yes\n");
  const notOurs = await goOn(folder, "night sea: all cut");
  expect(notOurs.code).toBe(1);
  expect(notOurs.stderr).toContain("WORK-NOT-OURS");
  expect(readFileSync(at(folder, "work.yaml"), "utf8")).toBe("my own notes: yes\n");
});

test("a quilt file that has changed since is refused", async () => {
  const folder = await planned();
  expect((await goOn(folder, "night sea: cut to strip 1")).code).toBe(0);
  writeFileSync(join(folder, "tide.yaml"), SMALL.replace("square, 26", "square, 36"));
  const ended = await goOn(folder, "night sea: all cut");
  expect(ended.code).toBe(1);
  expect(ended.stderr).toContain("WORK-OTHER-PLAN");
  expect(ended.stderr).toContain("work.yaml:");
});

test("a plan that the clock ended is gone on with as it is, by the options it was made with", async () => {
  const folder = await planned("--bolt", "9yd", "--budget", "2.5");
  expect(planOf(folder).asked).toMatchObject({ bolt: 9 * 36 * 16256, budget: 2.5 });
  const before = readFileSync(at(folder, "plan.json"), "utf8");
  const ended = await goOn(folder, "night sea: cut to strip 1");
  expect(ended).toMatchObject({ code: 0 });
  expect(readFileSync(at(folder, "begun.json"), "utf8")).toBe(before);
  expect(readFileSync(at(folder, "work.yaml"), "utf8")).toContain("budget: 2.5");
  expect((await goOn(folder, "night sea: strip 1 spoiled")).code).toBe(0);
  expect((await goOn(folder, "--bolt", "8yd")).stderr).toContain("--bolt is settled");
  // What was kept is believed only where it is a plan of this quilt.
  writeFileSync(join(folder, "tide.yaml"), SMALL.replace("4 1/2", "4 5/8"));
  expect((await goOn(folder, "chalk: all cut")).stderr).toContain("WORK-PLANNED-OTHERWISE");
});
