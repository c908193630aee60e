import { JSDOM } from "jsdom";
import { expect, test } from "vitest";
import type { Comparison } from "../../../src/choices/methods/comparison.ts";
import type { Figures } from "../../../src/choices/methods/making-figures.ts";
import { faultAmong } from "../../../src/choices/why-not.ts";
import { borderDoesNotFit } from "../../../src/diagnostics/quilts/quilt.ts";
import { bookOf, handoutMarkdown, pageOf } from "../../../src/print/index.ts";
import { english } from "../../../src/words/index.ts";
import { HOSTILE, smallestPlan } from "./book-plans.ts";

const YARD = 585_216;

function figures(eighths: number, minutes: number): Figures {
  return {
    fabrics: [
      { fabric: "Plain", buy: `${eighths}/8 yd`, length: (eighths * YARD) / 8, cost: null, proven: true },
    ],
    cost: null,
    bought: eighths * 1e9,
    strips: 6,
    subcuts: 40,
    apart: 0,
    marks: 0,
    seams: 24,
    seamLength: 9 * YARD,
    presses: 24,
    biasEdges: 0,
    trims: 12,
    corners: 0,
    bonus: [],
    minutes,
    direction: "none",
  };
}

/** An invented quilt with one kind of unit, one way better and one that cannot be taken. */
const comparison: Comparison = {
  name: "Sample",
  currency: "",
  measure: "cloth",
  minutes: { strip: 1, subcut: 0.5, mark: 0.2, seam: 0.5, metre: 1, press: 0.3, trim: 0.5 },
  units: [{ unit: "flying geese", count: 12, filed: ["single"] }],
  filed: figures(5, 90),
  rows: [
    { unit: "flying geese", method: "single", filed: true, figures: figures(5, 90), why: null },
    { unit: "flying geese", method: "four at a time", filed: false, figures: figures(3, 75), why: null },
    {
      unit: "flying geese",
      method: "strips",
      filed: false,
      figures: null,
      why: faultAmong([borderDoesNotFit({ path: "", at: null }, { why: "mitre", border: HOSTILE[0] ?? "" })]),
    },
  ],
  best: {
    methods: { "flying geese": "four at a time" },
    figures: figures(3, 75),
    combinations: 3,
    tried: 3,
    proven: true,
    least: 3e9,
  },
};

test("the ways of making stand in the book when they were compared, and not otherwise", async () => {
  const plan = await smallestPlan();
  expect(pageOf(bookOf(plan, english), english)).not.toContain('id="comparison"');
  const book = bookOf(plan, english, comparison);
  const section = new JSDOM(pageOf(book, english)).window.document.getElementById("comparison");
  const rows = [...(section?.querySelectorAll("tbody tr") ?? [])].map((row) =>
    [...row.children].map(({ textContent }) => textContent),
  );
  expect(rows).toContainEqual(["four at a time", "⅜\u00a0yd"]);
  expect(rows.find(([way, , strips]) => way === "* single" && strips !== undefined)).toContain("1 h 30");
  expect(section?.querySelectorAll("svg title").length).toBe(1);
  expect(section?.querySelectorAll("script").length).toBe(0);
  expect(section?.textContent).toContain(HOSTILE[0] ?? "");
  expect(handoutMarkdown(book)).toContain("four at a time");
});
