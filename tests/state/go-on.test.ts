import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { goneOnList } from "../../src/content/choosing/go-on.ts";
import { goOn, planQuilt, quickSolve, solveHere, USUAL_OPTIONS } from "../../src/index.ts";
import type { FabricPlan, Plan } from "../../src/plan/types.ts";
import { addEntry, beginWork, USUALLY_PLANNED, withoutLastEntry } from "../../src/spec/index.ts";
import { english } from "../../src/words/index.ts";
import { IN } from "../support/cut-list-spec.ts";
import { allSaid } from "../support/in-words.ts";

/**
 * The tide pool's first fabric, 42 in usable, 27 in bought, 1 in straightened off. Its diagram: strips 1 to 3 of 4 1/2 in
 * hold 9, 9 and 8 of [B] (4 1/2 in square), strips 4 to 6 of 2 1/2 in are [A] whole, strip 7 holds 4 of [C] (2 1/2 in
 * square). All counts below are worked out from that by hand.
 */
const TIDE = readFileSync(new URL("../../fixtures/cutlists/tide-pool.yaml", import.meta.url), "utf8");
const quilt = { text: TIDE, name: "tide-pool.yaml" };
/** Each search is done once, however often the work is gone through. */
const solve = quickSolve(solveHere);
const BEGUN = beginWork(USUALLY_PLANNED);

async function go(words: readonly string[], text = BEGUN, more: { again?: boolean; made?: Plan } = {}) {
  const made = more.made === undefined ? null : { plan: more.made, folder: "out/tide-pool" };
  const work = { text, name: "work.yaml" };
  return goOn({ quilt, work, words, again: more.again === true, made }, solve);
}

async function gone(words: readonly string[], text = BEGUN) {
  const { value, diagnostics } = await go(words, text);
  if (value === null)
    throw new Error(
      allSaid(diagnostics)
        .map(({ message }) => message)
        .join("; "),
    );
  return { ...value, sea: value.plan.fabrics[0]! };
}

async function codes(words: readonly string[], text = BEGUN, more: { again?: boolean; made?: Plan } = {}) {
  const { value, diagnostics } = await go(words, text, more);
  return {
    none: value === null,
    codes: diagnostics.filter(({ severity }) => severity !== "info").map(({ code }) => code),
  };
}

/** By letter: how many lie cut. */
const cut = ({ pieces, done }: FabricPlan) =>
  Object.fromEntries(pieces.map(({ letter }, i) => [letter, done?.cut[i] ?? 0]));

const rollOf = ({ lays }: FabricPlan) => lays.find(({ name }) => name === "rest of the bolt");

describe("a plan that is gone on with", () => {
  test("is the plan of the file where nothing is said", async () => {
    const usual = await planQuilt(TIDE, "tide-pool.yaml", USUAL_OPTIONS, solve);
    const { plan, changes, workText } = await gone([]);
    expect(plan).toEqual(usual.value);
    expect(changes).toEqual([]);
    expect(workText).toBe(BEGUN);
  });

  test("cut as planned to strip 3: the rest stands as it was", async () => {
    const { sea, changes, plan } = await gone(["Night sea: cut to strip 3"]);
    expect(cut(sea)).toEqual({ A: 0, B: 26, C: 0 });
    // 27 less 1 straightened less 3 strips of 4 1/2.
    expect(rollOf(sea)?.along).toBe(12.5 * IN);
    expect(sea.purchase).toBeNull();
    expect(sea.done?.bought).toEqual(["3/4 yd"]);
    expect(sea.steps.map(({ count, width }) => [count, width])).toEqual([
      [3, 2.5 * IN],
      [1, 2.5 * IN],
    ]);
    expect(changes[0]?.still).toBe(7);
    // What 9 squares of 4 1/2 leave of 42 in, twice, and what 8 of them leave.
    expect(
      sea.done?.kept.map(({ across, along, available }) => [across / IN, along / IN, available]),
    ).toEqual([
      [1.5, 4.5, 2],
      [6, 4.5, 1],
    ]);
    expect(plan.fabrics[1]?.done).toBeUndefined();
    expect(plan.said).toEqual([{ fabric: "Night sea", facts: ["cut to strip 3"] }]);
  });

  test("half cut, and the bolt is 40 in wide", async () => {
    const { sea, changes } = await gone(["Night sea: cut to strip 2", "40 in wide"]);
    // 8 squares of 4 1/2 from 40 in; the ninth of both strips is not there.
    expect(cut(sea)).toEqual({ A: 0, B: 16, C: 0 });
    expect(changes[0]).toMatchObject({ lost: [{ letter: "B", count: 2 }], still: 17, more: null });
    expect(changes[0]?.width).toEqual({ now: 40 * IN, planned: 42 * IN });
    expect(sea.usable).toBe(40 * IN);
    expect(rollOf(sea)).toMatchObject({ across: 40 * IN, along: 17 * IN });
    expect(sea.pieces.find(({ letter }) => letter === "A")?.across).toBe(40 * IN);
  });

  test("beside lengthwise strips the width told later holds for what is left beside them", async () => {
    const long = {
      name: "long.yaml",
      text: `name: Long
units: in
all-fabrics: { width: 43 in, selvage: 1/2 in }
fabrics:
  - name: night
    pieces:
      - rails 6 x 60, 2, cut lengthwise
      - squares 4 1/2 square, 60
`,
    };
    const told = async (...entries: string[][]) => {
      let text = BEGUN;
      let last: Awaited<ReturnType<typeof goOn>>["value"] = null;
      for (const words of entries) {
        const work = { text, name: "work.yaml" };
        last = (await goOn({ quilt: long, work, words, again: false, made: null }, solve)).value;
        text = last?.workText ?? "";
      }
      return last!.plan.fabrics[0]!;
    };
    // 42 less two of 6 in leaves 30; of 40 in it leaves 28.
    const later = await told(["cut to strip 2"], ["40 in wide"]);
    expect(later.lays.map(({ name, across }) => [name, across / IN])).toContainEqual([
      "rest of 28 x 60 in",
      28,
    ]);
    const { lays, purchase, leftovers } = await told(["cut to strip 2", "40 in wide"]);
    expect(later).toMatchObject({ lays, purchase, leftovers });
  });

  test("strip 7 is spoiled: those before it count as cut, and it is said so", async () => {
    const { sea, changes, plan } = await gone(["night sea: strip 7 is spoiled"]);
    expect(cut(sea)).toEqual({ A: 3, B: 26, C: 0 });
    expect(changes[0]?.taken).toEqual([{ cloth: "bolt", as: "cut", numbers: [1, 2, 3, 4, 5, 6] }]);
    expect(changes[0]?.lost).toEqual([{ letter: "C", count: 4 }]);
    // 2 1/2 in are left of the bolt: 4 of 2 1/2 come from them, or from the end of strip 3.
    expect(changes[0]).toMatchObject({ still: 4, more: null });
    expect(goneOnList(plan, changes, english)).toContain(
      "Strips 1 to 6 come before what you told of: taken as cut as planned",
    );
  });

  test("three wide strips spoiled: more is bought, as little as will do", async () => {
    const { sea, changes } = await gone(["Night sea: strips 1 to 3 spoiled"]);
    // 12 1/2 in are left, 4 strips of 2 1/2 and 3 of 4 1/2 (23 1/2 in) wanted. No choice of them that fits 12 1/2 in
    // leaves less than 11 1/2 to be bought (4 1/2 and 3 of 2 1/2 make 12), which with 1 in straightened is 3/8 yd.
    expect(changes[0]?.more).toBe("3/8 yd");
    expect(sea.purchase?.text).toBe("3/8 yd");
    expect(sea.done?.bought).toEqual(["3/4 yd"]);
  });

  test("so many of a bag are cut: the strips they come from are begun", async () => {
    const { sea } = await gone(["Night sea: 20 of B cut"]);
    expect(cut(sea)).toEqual({ A: 0, B: 20, C: 0 });
    expect(sea.purchase).toBeNull();
    // Two strips whole and 2 of 9 in the third: 33 in of it are left, 6 of 4 1/2 come from them.
    const rest = sea.stock?.find(({ across, along }) => across === 33 * IN && along === 4.5 * IN);
    expect(rest).toMatchObject({ begun: true, used: 1 });
    expect(rollOf(sea)?.along).toBe(12.5 * IN);
  });

  test("pieces spoiled out of a bag, later", async () => {
    const first = await gone(["Night sea: cut to strip 3"]);
    const { sea, changes } = await gone(["Night sea: 2 of B spoiled"], first.workText);
    expect(cut(sea)).toEqual({ A: 0, B: 24, C: 0 });
    expect(changes).toHaveLength(1);
    expect(changes[0]).toMatchObject({ lost: [{ letter: "B", count: 2 }], still: 9 });
  });

  test("wider than the strips that lie cut: the rest is cut as wide as they are", async () => {
    const first = await gone(["Night sea: cut to strip 4"]);
    const { sea, plan, changes } = await gone(["Night sea: 42 1/2 in wide"], first.workText);
    expect(sea.usable).toBe(42 * IN);
    expect(cut(sea)).toEqual({ A: 1, B: 26, C: 0 });
    expect(goneOnList(plan, changes, english)).toContain(
      "strips of 42 in lie cut, so the rest is planned 42 in wide too",
    );
  });

  test("a strip that is cut off waits in one piece", async () => {
    const { sea } = await gone(["Night sea: cut to strip 1; strip 2 cut off"]);
    expect(cut(sea)).toEqual({ A: 0, B: 9, C: 0 });
    expect([...(sea.stock ?? []), ...(sea.done?.kept ?? [])]).toContainEqual(
      expect.objectContaining({ across: 42 * IN, along: 4.5 * IN, available: 1, begun: true }),
    );
    expect(rollOf(sea)?.along ?? 0).toBeLessThanOrEqual(17 * IN);
  });

  test("a length that is shorter than planned, and cloth in hand besides", async () => {
    // Wanted are 3 strips of 2 1/2 for [A] and one for 2 of the 4 of [C]: the end of strip 3 holds the other 2.
    const more = async (left: string) =>
      (await gone([`Night sea: cut to strip 3; ${left}`])).changes[0]?.more;
    expect(await more("10 in left")).toBeNull();
    // 2 1/2 in more, and 1 in to straighten: 3 1/2 of 4 1/2.
    expect(await more("7 1/2 in left")).toBe("1/8 yd");
    // 5 in more, and 1 in: 6 of 9.
    expect(await more("5 in left")).toBe("1/4 yd");
    // A piece of 43 x 3 in is one of the strips.
    expect(await more("5 in left; 43 x 3 in in hand")).toBe("1/8 yd");
  });

  test("all cut: nothing is left to do, and the rests are told of", async () => {
    const { sea, plan, changes } = await gone(["Night sea: all cut"]);
    expect(cut(sea)).toEqual({ A: 3, B: 26, C: 4 });
    expect(sea.lays).toEqual([]);
    expect(goneOnList(plan, changes, english)).toContain("All of it is cut.");
  });

  test("read back, the same work gives the same plan; taken back, the one before", async () => {
    const first = await gone(["Night sea: cut to strip 2"]);
    const second = await gone(["Starfish: strip 1 spoiled"], first.workText);
    const again = await gone([], second.workText);
    expect(again.plan).toEqual(second.plan);
    const back = withoutLastEntry(second.workText);
    expect((await gone([], back!)).plan).toEqual(first.plan);
  });

  test("said twice it counts once, unless it has happened again", async () => {
    const first = await gone(["Night sea: strip 1 spoiled"]);
    const twice = await go(["Night sea: strip 1 spoiled"], first.workText);
    expect(twice.diagnostics.map(({ code }) => code)).toContain("WORK-SAID-AGAIN");
    expect(twice.value?.workText).toBe(first.workText);
    const again = await go(["Night sea: strip 1 of the rest of the bolt spoiled"], first.workText);
    expect(again.value?.workText).not.toBe(first.workText);
  });
});

describe("what cannot be", () => {
  test.each([
    ["Night see: cut to strip 2", "WORK-FABRIC-UNKNOWN"],
    ["cut to strip 2", "WORK-FABRIC-UNSAID"],
    ["Night sea: strip 8 cut", "WORK-STRIP-UNKNOWN"],
    ["Night sea: 3 of Q cut", "WORK-LETTER-UNKNOWN"],
    ["Night sea: strip 1 of fat quarter cut", "WORK-CLOTH-UNKNOWN"],
    ["Night sea: 27 of B cut", "WORK-TOO-MANY"],
    ["Night sea: cut to strip 2; 3 of B cut", "WORK-TOO-FEW"],
    ["Night sea: 2 of B spoiled", "WORK-NONE-TO-SPOIL"],
    ["Night sea: 50 in wide", "WORK-MEASURE-WRONG"],
    ["Night sea: hello", "FACT-UNREADABLE"],
    ["Night sea: 3 in wide", "PIECE-TOO-WIDE"],
  ])("%s", async (said, code) => {
    const { none, codes: found } = await codes([said]);
    expect(none).toBe(true);
    expect(found).toEqual([code]);
  });

  test("a plan that was made otherwise", async () => {
    const { plan } = await gone([]);
    const other = JSON.parse(JSON.stringify(plan)) as Plan;
    other.fabrics[0]!.lays[0]!.along += 1;
    expect((await codes(["Night sea: all cut"], BEGUN, { made: other })).codes).toEqual([
      "WORK-PLANNED-OTHERWISE",
    ]);
    expect((await codes(["Night sea: all cut"], BEGUN, { made: plan })).none).toBe(false);
  });

  test("an entry of another plan", async () => {
    const entry = { fabric: "Night sea", plan: "0000000000000000", facts: ["all cut"] };
    const { value, diagnostics } = await go([], addEntry(BEGUN, entry));
    expect(value).toBeNull();
    expect(diagnostics[0]).toMatchObject({ code: "WORK-OTHER-PLAN", at: { file: "work.yaml" } });
  });

  test("a strip of two cloths, one of them bought on top of the other", async () => {
    const first = await gone(["Night sea: strips 1 to 3 spoiled"]);
    const { codes: found } = await codes(["Night sea: strip 1 cut"], first.workText);
    expect(found).toEqual(["WORK-CLOTH-UNKNOWN"]);
  });
});
