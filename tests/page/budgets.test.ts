import { describe, expect, test } from "vitest";
import * as block from "../../src/edits/block-edits.ts";
import { colourPlaced } from "../../src/edits/colourway-edits.ts";
import * as fabric from "../../src/edits/fabric-edits.ts";
import * as quilt from "../../src/edits/quilt-edits.ts";
import { keepsOf } from "../../src/page/planner/keeps.ts";
import type { Answer } from "../../src/page/planner/messages.ts";
import { planText } from "../../src/page/planner/plan-text.ts";
import { STARTS } from "../../src/page/starts.ts";

const LANES = STARTS[1]!.text;
const at = { row: 0, column: 0 };
const area = { column: 0, row: 0, columns: 1, rows: 1 };
const cloth = (words: string[]) => ({ kind: "half-square triangle", words, turn: 180 });

/**
 * Each kind of edit with the most searches it may cost, of about forty for the whole, once the quilt as it was has been
 * planned: work is counted, not timed. A few rounds more or fewer for the fabrics an edit touches are the engine's own.
 */
const EDITS: readonly { name: string; most: number; edit(text: string): string }[] = [
  { name: "the name", most: 0, edit: (text) => fabric.setName(text, "Another name") },
  { name: "a colour of a fabric", most: 0, edit: (text) => fabric.setColour(text, 0, "#123456") },
  { name: "the name of a fabric", most: 0, edit: (text) => fabric.renameFabric(text, 0, "dusk") },
  { name: "a price", most: 0, edit: (text) => fabric.setCloth(text, "price", "$12.50 per yd") },
  { name: "a block's name", most: 0, edit: (text) => block.nameBlock(text, "L", "Lamp") },
  { name: "a placed block turned", most: 0, edit: (text) => quilt.turnPlaced(text, at, 90) },
  { name: "two blocks swapped", most: 0, edit: (text) => quilt.swapPlaced(text, at, { row: 0, column: 1 }) },
  { name: "all blocks of a design turned", most: 0, edit: (text) => quilt.fillTurns(text, "N", "round", 0) },
  { name: "a unit turned", most: 0, edit: (text) => block.turnUnit(text, "N", at, 1) },
  { name: "wadding", most: 0, edit: (text) => quilt.setFinishing(text, "wadding", "") },
  { name: "a fabric nothing is made of", most: 0, edit: (text) => fabric.addFabric(text, "sand", "#ccbb99") },
  { name: "a border wider", most: 15, edit: (text) => quilt.widenBorder(text, 1, 4, 2032) },
  {
    name: "binding in another fabric",
    most: 20,
    edit: (text) => quilt.setFinishing(text, "binding", "night"),
  },
  { name: "backing", most: 4, edit: (text) => quilt.setFinishing(text, "backing", "moss") },
  {
    name: "a patch in another fabric",
    most: 18,
    edit: (text) => block.colourPatch(text, "L", { ...at, part: "patch" }, "moss", "patch"),
  },
  {
    name: "a unit laid over another",
    most: 18,
    edit: (text) => block.layUnit(text, "N", area, cloth(["chalk", "moss"])),
  },
  { name: "one placing in other colours", most: 20, edit: (text) => colourPlaced(text, at, "night", "moss") },
  { name: "a print with an up", most: 10, edit: (text) => fabric.setPrint(text, 0, "one-way") },
  { name: "a row of blocks more", most: 44, edit: (text) => quilt.sizeQuilt(text, 4, 6) },
];

describe("what an edit may cost", () => {
  const keeps = keepsOf(1e8);
  const plan = async (text: string) => {
    const answers: Answer[] = [];
    const own = keepsOf(1e8);
    own.keep(keeps.all());
    await planText(1, text, "quilt.yaml", {
      keeps: own,
      overtaken: () => false,
      pause: () => Promise.resolve(),
      rest: () => Promise.resolve(),
      tell: (answer) => void answers.push(answer),
    });
    return { own, kinds: answers.map(({ kind }) => kind) };
  };
  const solvedOf = (kinds: readonly string[]) => kinds.filter((kind) => kind === "kept").length;
  let whole = 0;

  test("the quilt as it stands", async () => {
    const { own, kinds } = await plan(LANES);
    keeps.keep(own.all());
    whole = solvedOf(kinds);
    expect(whole).toBeGreaterThan(10);
  });

  test.each(EDITS)("$name", async ({ edit, most }) => {
    const text = edit(LANES);
    expect(text).not.toBe(LANES);
    const { kinds } = await plan(text);
    expect(solvedOf(kinds)).toBeLessThanOrEqual(most);
    // No drawing is made that nobody looks at: the picture of the top once, amounts, and the plan.
    expect(kinds.filter((kind) => kind !== "kept")).toEqual(["laid", "amounts", "planned"]);
  });
});
