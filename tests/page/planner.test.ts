import { describe, expect, test } from "vitest";
import type { Content } from "../../src/cli/files/manifest.ts";
import { resultFiles } from "../../src/cli/results/result-files.ts";
import { layUnit } from "../../src/edits/block-edits.ts";
import { setColour } from "../../src/edits/fabric-edits.ts";
import * as pattern from "../../src/edits/pattern-edits.ts";
import { widenBorder } from "../../src/edits/quilt-edits.ts";
import { planQuilt, solveHere, USUAL_OPTIONS } from "../../src/index.ts";
import { completed, linesBetween, NOTHING_YET } from "../../src/page/planner/complete.ts";
import { keepsOf } from "../../src/page/planner/keeps.ts";
import type { Answer } from "../../src/page/planner/messages.ts";
import { patternFor } from "../../src/page/planner/pattern.ts";
import { type Around, planText } from "../../src/page/planner/plan-text.ts";
import { show } from "../../src/page/planner/show.ts";
import { workerLoop } from "../../src/page/planner/worker.ts";
import { EMPTY_SHEET, STARTS } from "../../src/page/starts.ts";
import type { Plan } from "../../src/plan/types.ts";
import { planJson } from "../../src/print/json/index.ts";
import { bySaving, findSavings } from "../../src/savings/index.ts";
import { PATTERN_PARTS } from "../../src/spec/index.ts";
import { english } from "../../src/words/index.ts";
import { firstOf, LEFT_OUT } from "../support/sweep.ts";
import { QUILTS, quiltNamed } from "./quilts.ts";

const MOST = 1e8;

/** What the planner tells of a text, and how many searches it made. */
async function told(
  text: string,
  around: Partial<Around> = {},
): Promise<{ answers: Answer[]; solved: number; plan: Plan | null }> {
  const answers: Answer[] = [];
  const plan = await planText(1, text, "quilt.yaml", {
    keeps: keepsOf(MOST),
    overtaken: () => false,
    pause: () => Promise.resolve(),
    rest: () => Promise.resolve(),
    ...around,
    tell: (answer) => {
      answers.push(answer);
      around.tell?.(answer);
    },
  });
  return { plan, answers, solved: answers.filter(({ kind }) => kind === "kept").length };
}

const only = <K extends Answer["kind"]>(
  answers: readonly Answer[],
  kind: K,
): Extract<Answer, { kind: K }> => {
  const found = answers.find((answer) => answer.kind === kind);
  if (found === undefined) throw new Error(`no ${kind} among ${answers.map((answer) => answer.kind)}`);
  return found as Extract<Answer, { kind: K }>;
};

/** Quick ones every time; all of them where there is time. */
const SOME =
  process.env.ALL_QUILTS === undefined
    ? firstOf(["nine-stars", "salsa-on-point", "regatta", "vintage-crib"], 2)
    : QUILTS.map(({ name }) => name.replace(".yaml", ""));

describe("the page plans as the command line does", () => {
  test.each(SOME)("%s: plan, drawings, text and book to the byte", async (name) => {
    const text = quiltNamed(name);
    const expected = (await planQuilt(text, "quilt.yaml", USUAL_OPTIONS, solveHere)).value;
    if (expected === null) throw new Error("the fixture cannot be planned");
    const { plan, answers } = await told(text);
    expect(only(answers, "planned").whole).toBe(true);
    if (plan === null) throw new Error("the page cannot plan it");
    expect(planJson(plan, english)).toBe(planJson(expected, english));
    const made = await patternFor(text, "quilt.yaml", plan, solveHere);
    if (made === null) throw new Error("it has no pattern");
    const book = show(plan, "book", made, []);
    if (book.what !== "book") throw new Error("asked for the book");
    // What the page zips is what the command writes, name by name and byte by byte.
    const written = await resultFiles(expected, english, { told: made.told, sizes: [] });
    const whole = (content: Content | undefined): string =>
      typeof content === "object" && "portions" in content ? [...content.portions()].join("") : `${content}`;
    for (const [file, bytes] of Object.entries(book.files)) expect(bytes, file).toBe(whole(written[file]));
    expect(Object.keys(book.files)).toEqual(
      expect.arrayContaining([
        "plan.json",
        "book.html",
        "pattern.html",
        "buy.txt",
        "steps.txt",
        "sewing.txt",
        "top.svg",
      ]),
    );
    expect(Object.keys(book.files).filter((file) => file.startsWith("cut-"))).toHaveLength(
      expected.fabrics.length,
    );
  });

  test("the pattern has the sizes, parts and words its text names; one that is none is told and left out", async () => {
    let text = pattern.setPatternLine(quiltNamed("nine-stars"), "sizes", "2x2");
    text = pattern.setPatternParts(text, ["requirements", "about"]);
    text = pattern.setPatternWords(text, "before", "requirements", "Wash **first**.\n\n- by hand");
    const { plan } = await told(text);
    if (plan === null) throw new Error("the page cannot plan it");
    const made = await patternFor(text, "quilt.yaml", plan, solveHere);
    expect(made?.sizes.map(({ heading }) => heading)).toEqual(["2x2"]);
    const shown = show(plan, "book", made, []);
    const html = shown.what === "book" ? (shown.files["pattern.html"] ?? "") : "";
    expect(html).toContain("Wash first.");
    expect(html).not.toContain('<section id="cutting"');
    const wrong = pattern.setPatternLine(text, "sizes", "a sofa");
    const without = await patternFor(wrong, "quilt.yaml", plan, solveHere);
    expect(without?.sizes).toEqual([]);
    expect(without?.problem).toMatch(/sofa/);
    // Taken back a line at a time, nothing of the pattern is left.
    text = pattern.setPatternWords(text, "before", "requirements", "");
    text = pattern.setPatternParts(text, PATTERN_PARTS);
    expect(pattern.setPatternLine(text, "sizes", "")).toBe(quiltNamed("nine-stars"));
  });

  test.each(STARTS)(
    "$name can be planned whole, of the size it says",
    async ({ text, across, down, fabrics }) => {
      const { plan } = await told(text);
      if (plan === null) throw new Error("it cannot be planned");
      const inches = ({ n, r, d }: { n: number; r: number; d: number }) => (n + r * Math.SQRT2) / d / 16256;
      expect([plan.top?.across, plan.top?.down].map((size) => size && inches(size))).toEqual([across, down]);
      expect(plan.fabrics.length).toBe(fabrics);
      expect(plan.diagnostics.filter(({ severity }) => severity !== "info")).toEqual([]);
    },
  );
});

describe("two passes", () => {
  test("amounts come before the plan, and are called proven only where they stay", async () => {
    const { answers } = await told(quiltNamed("meadow-geese"));
    expect(answers.map(({ kind }) => kind).filter((kind) => kind !== "kept")).toEqual([
      "laid",
      "amounts",
      "planned",
    ]);
    const [quick, full] = [only(answers, "amounts").amounts, only(answers, "planned").amounts];
    for (const amount of quick.fabrics) {
      const later = full.fabrics.find(({ fabric }) => fabric === amount.fabric);
      if (amount.proven) expect(later?.length).toBe(amount.length);
      else expect(later?.length ?? 0).toBeLessThanOrEqual(amount.length ?? 0);
    }
  });

  test("what was solved before is not solved again: a colour none, a border only what is cut with it", async () => {
    const keeps = keepsOf(MOST);
    const text = quiltNamed("nine-stars");
    const first = await told(text, { keeps });
    expect(first.solved).toBeGreaterThan(3);
    const coloured = await told(setColour(text, 0, "#123456"), { keeps });
    expect(coloured.solved).toBe(0);
    expect(coloured.answers.map(({ kind }) => kind)).toEqual(["laid", "amounts", "planned"]);
    const [start] = STARTS;
    const whole = await told(start!.text, { keeps });
    const wider = await told(widenBorder(start!.text, 0, 4, 2032), { keeps });
    expect(wider.solved).toBeGreaterThan(0);
    expect(wider.solved).toBeLessThan(whole.solved);
  });

  test("a newer question ends an older search between two jobs", async () => {
    let asked = 0;
    const { answers, solved } = await told(quiltNamed("nine-stars"), { overtaken: () => ++asked > 3 });
    expect(answers.some(({ kind }) => kind === "planned")).toBe(false);
    expect(solved).toBeLessThan(4);
  });
});

describe("a design that is not finished", () => {
  test("is laid out as far as it goes, and what is drawn is counted", async () => {
    const area = { column: 1, row: 1, columns: 2, rows: 2 };
    const text = layUnit(EMPTY_SHEET, "A", area, { kind: "square", words: ["lanterns"], turn: 0 });
    expect(completed(text).empty).toBe(12);
    const { answers } = await told(text);
    const { picture, empty } = only(answers, "laid");
    expect(empty).toBe(12);
    expect(picture?.groups.find(({ fabric }) => fabric === "lanterns")?.d.match(/M/g)).toHaveLength(9);
    const { amounts, whole } = only(answers, "planned");
    expect(whole).toBe(false);
    expect(amounts.fabrics.map(({ fabric }) => fabric)).not.toContain(NOTHING_YET);
    expect(amounts.fabrics.find(({ fabric }) => fabric === "lanterns")?.pieces).toMatchObject([
      { count: 9, size: "4 1/2 in square" },
    ]);
  });

  test("one without empty squares is not touched", () => {
    for (const { text } of [...QUILTS, ...STARTS]) expect(completed(text)).toMatchObject({ text, empty: 0 });
  });

  test("half-written text is never a fault of the planner's own", async () => {
    for (const tail of ["b", "borders: [", "x: {", "  - a", "\tq", "&a [*a]", "- - -", "? :"]) {
      for (const text of [EMPTY_SHEET + tail, tail]) {
        const { answers } = await told(text, { overtaken: () => true });
        expect(["failed", "laid"], tail).toContain(answers.at(-1)?.kind);
      }
    }
  });

  test("a faulty text is told of, with its places, and nothing is planned", async () => {
    const { answers } = await told(quiltNamed("nine-stars").replace(/fabric: [\w ]+/, "fabric: nowhere"));
    expect(answers.map(({ kind }) => kind)).toEqual(["laid", "failed"]);
    const [fault] = only(answers, "failed").diagnostics;
    expect(fault?.at?.line).toBeGreaterThan(1);
  });
});

describe("a text with empty squares", () => {
  test("tells faults at the lines of the text as written, before and behind what had to be filled", async () => {
    const laid = layUnit(
      EMPTY_SHEET,
      "A",
      { column: 0, row: 0, columns: 1, rows: 1 },
      {
        ...{ kind: "square", words: ["night"], turn: 0 },
      },
    );
    for (const [right, wrong] of [
      ["square:", "quare:"],
      ["setting:", "stting:"],
      ["fill: 3 x 3", "fill: 3 by"],
    ] as const) {
      const text = laid.replace(right, wrong);
      expect(text, right).not.toBe(laid);
      expect(completed(text).empty).toBeGreaterThan(0);
      const { answers } = await told(text);
      const faults = answers.flatMap((answer) => ("diagnostics" in answer ? answer.diagnostics : []));
      const line = text.split("\n").findIndex((one) => one.includes(wrong)) + 1;
      expect(
        faults.map(({ at }) => at?.line),
        wrong,
      ).toContain(line);
    }
  });

  test("lines alike are found again in their order", () => {
    expect(linesBetween("a\nb\nc", "a\nb\nc")).toEqual([1, 2, 3]);
    expect(linesBetween("a\ng\nx y\nc", "a\nnew\ng\nx o\nc\no")).toEqual([1, 1, 2, 3, 4, 4]);
  });
});

describe("a worker", () => {
  test("begins the sewing when the hand rests, and a gesture meanwhile ends the rest", async () => {
    const answers: Answer[] = [];
    const rests: (() => void)[] = [];
    const text = quiltNamed("nine-stars");
    const until = async (good: () => boolean) => {
      for (let i = 0; i < 20_000 && !good(); i++) await new Promise((resolve) => setTimeout(resolve, 1));
      expect(good()).toBe(true);
    };
    const take = workerLoop({
      post: (answer) => void answers.push(answer),
      pause: () => Promise.resolve(),
      later: (_, call) => void rests.push(call),
      useSolver() {},
    });
    const planned = (id: number) => answers.some((one) => one.kind === "planned" && one.id === id);
    take({ kind: "plan", id: 1, text, name: "q" });
    await until(() => planned(1));
    expect(rests).toHaveLength(0);
    take({ kind: "plan", id: 2, text: widenBorder(text, 0, 4, 2032), name: "q" });
    await until(() => rests.length === 1);
    expect(answers.filter((one) => one.kind === "amounts" && one.id === 2)).toHaveLength(1);
    expect(planned(2)).toBe(false);
    take({ kind: "plan", id: 3, text, name: "q" });
    await until(() => rests.length === 2);
    rests[1]?.();
    await until(() => planned(3));
    expect(planned(2)).toBe(false);
  });
});

describe("what would save", () => {
  test.skipIf(LEFT_OUT)("the page's list is the command's: same changes, same amounts", async () => {
    const { text } = STARTS[1]!;
    const found = (await findSavings(text, "quilt.yaml", USUAL_OPTIONS, solveHere, () => {})).value;
    const answers: Answer[] = [];
    await new Promise<void>((resolve) => {
      const take = workerLoop({
        post(answer) {
          answers.push(answer);
          if (answer.kind === "triedAll") resolve();
        },
        pause: () => Promise.resolve(),
        later: (_, call) => call(),
        useSolver() {},
      });
      take({ kind: "save", id: 1, text });
    });
    const onPage = answers.flatMap((answer) => (answer.kind === "saves" ? [answer.saving] : []));
    onPage.sort((a, b) => bySaving(a.difference, b.difference));
    expect(onPage.map(({ key, difference }) => [key, difference])).toEqual(
      found?.savings.map(({ idea, difference }) => [idea.key, difference]),
    );
    // An eighth of a yard of chalk: its corners are cut from a strip that is cut once more.
    const style = onPage.find(({ key }) => key === "style");
    expect(style?.difference).toEqual({ cost: null, length: -16256 * 4.5, fabrics: ["chalk"] });
    const real = only((await told(style!.text)).answers, "planned").amounts;
    expect(style?.amounts.fabrics.map(({ length }) => length)).toEqual(
      real.fabrics.map(({ length }) => length),
    );
  });
});
