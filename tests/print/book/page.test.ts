import { createHash } from "node:crypto";
import { HtmlValidate } from "html-validate";
import { JSDOM } from "jsdom";
import { describe, expect, test } from "vitest";
import type { Plan } from "../../../src/plan/types.ts";
import { BOOK_SCRIPT, BOOK_SCRIPT_HASH } from "../../../src/print/html/script.ts";
import { bookPage } from "../../../src/print/index.ts";
import { DAY, NIGHT } from "../../../src/print/paper/inks.ts";
import { english } from "../../../src/words/index.ts";
import { oneIn } from "../../support/sweep.ts";
import { hostilePlan, listPlan, metricPlan, quiltPlan, smallestPlan } from "./book-plans.ts";

const PLANS: readonly [string, () => Promise<Plan>][] = [
  ["a quilt", quiltPlan],
  ["a cut list", listPlan],
  ["one piece", smallestPlan],
  ["metric", metricPlan],
  ["hostile names", hostilePlan],
];

function documentOf(html: string): Document {
  return new JSDOM(html).window.document;
}

const idsOf = (page: Document) => [...page.querySelectorAll("main > section")].map(({ id }) => id);

describe.each(oneIn(2, PLANS))("the book of %s", (_, make) => {
  test("is valid HTML, the same every time, and needs no other file", async () => {
    const plan = await make();
    const before = JSON.stringify(plan);
    const html = bookPage(plan, english);
    expect(bookPage(plan, english)).toBe(html);
    expect(JSON.stringify(plan)).toBe(before);
    const validator = new HtmlValidate({
      root: true,
      // Checks content models, nesting, ids and attributes against the HTML standard (WHATWG, HTML Living Standard).
      extends: ["html-validate:standard", "html-validate:a11y"],
      rules: {
        // Names of 500 letters are the point of one of these books.
        "long-title": "off",
        // The drawings bring their namespace, as files of their own.
        "attribute-boolean-style": ["error", { style: "omit" }],
      },
    });
    const report = await validator.validateString(html);
    const found = report.results.flatMap(({ messages }) =>
      messages.map(({ ruleId, message, line }) => `${line} ${ruleId}: ${message}`),
    );
    expect(found).toEqual([]);
    const page = documentOf(html);
    expect(page.querySelectorAll("link, img, iframe, object, script[src], [style]").length).toBe(0);
    const addresses = [...html.matchAll(/(?:href|src)="([^"]*)"/g)].map(([, to]) => to);
    expect(addresses.every((to) => to?.startsWith("#"))).toBe(true);
  });

  test("has one tick box for each step, with an id of its own", async () => {
    const plan = await make();
    const page = documentOf(bookPage(plan, english));
    const ids = [...page.querySelectorAll("[id]")].map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    if (plan.making !== undefined) {
      const sewn = plan.making.units.filter(({ steps }) => steps.length > 0).length;
      expect(page.querySelectorAll("#units .card").length).toBeGreaterThanOrEqual(sewn);
      expect(page.querySelectorAll("#units h3 input").length).toBeGreaterThan(0);
    }
    for (const index of plan.fabrics.keys()) {
      const section = page.getElementById(`fabric-${index + 1}`);
      const steps = [...(section?.querySelectorAll(".step") ?? [])];
      expect(steps.length).toBeGreaterThan(0);
      for (const step of steps) {
        const box = step.querySelector("input");
        expect(step.querySelector("label")?.getAttribute("for")).toBe(box?.id);
      }
    }
    expect(page.querySelectorAll(".label").length).toBe(
      plan.fabrics.reduce((sum, { pieces }) => sum + pieces.length, 0),
    );
  });
});

describe("sections", () => {
  test("appear only when they have content", async () => {
    const always = ["buy", "cautions", "hand", "reading", "fabric-1"];
    const smallest = idsOf(documentOf(bookPage(await smallestPlan(), english)));
    expect(smallest).toEqual([...always, "labels", "waste", "glossary"]);
    const quilt = idsOf(documentOf(bookPage(await quiltPlan(), english)));
    expect(quilt).toEqual([
      "buy",
      "assumptions",
      ...always.slice(1),
      "fabric-2",
      "fabric-3",
      "labels",
      "units",
      "blocks",
      "setting",
      "borders",
      "pressing",
      "finishing",
      "waste",
      "glossary",
    ]);
  });

  test("a small book has no empty headings, lists or tables", async () => {
    const page = documentOf(bookPage(await smallestPlan(), english));
    for (const part of page.querySelectorAll("h1, h2, h3, ul, ol, dl, table, p:not(.progress), figure")) {
      expect(part.textContent?.trim(), part.outerHTML.slice(0, 80)).not.toBe("");
    }
  });

  test("cautions come before the first cut, and the teacher's advice before those", async () => {
    const page = documentOf(bookPage(await listPlan(), english));
    const sections = idsOf(page);
    expect(sections.indexOf("cautions")).toBeLessThan(sections.indexOf("fabric-1"));
    const cautions = page.getElementById("cautions")?.textContent ?? "";
    expect(cautions.indexOf("teacher")).toBeLessThan(cautions.indexOf("blade"));
    for (const tool of ["blade", "ruler", "iron", "needle"]) expect(cautions.toLowerCase()).toContain(tool);
    expect(page.getElementById("buy")?.textContent).toContain("estimates");
  });

  test("sizes are typeset, the maker's own words are left alone", async () => {
    const text =
      documentOf(bookPage(await listPlan(), english)).getElementById("fabric-1")?.textContent ?? "";
    expect(text).toContain("4½\u00a0in");
    expect(text).not.toMatch(/\d \d\/\d/);
  });
});

describe("hostile names", () => {
  test("add no element, no script and no style", async () => {
    const dom = new JSDOM(bookPage(await hostilePlan(), english), { runScripts: "outside-only" });
    const page = dom.window.document;
    expect(page.querySelectorAll("script").length).toBe(1);
    expect(page.querySelector("script")?.textContent).toBe(BOOK_SCRIPT);
    expect(page.querySelectorAll("style").length).toBe(1);
    expect(page.querySelectorAll("img, [onerror], [onload]").length).toBe(0);
    const style = page.querySelector("style")?.textContent ?? "";
    // Outside quoted text nothing of the names is left (CSS Syntax Module Level 3, W3C: strings and escapes).
    const faces = /src: url\(data:font\/woff2;base64,[\w+/=]+\) format\("woff2"\)/g;
    const bare = style.replace(faces, "").replace(/"[^"\n]*"/g, "");
    for (const part of ["@import", "url(", "broken", "WWW", '"']) expect(bare).not.toContain(part);
    expect(page.body.textContent).toContain("<script>window.broken = true</script>");
  });

  test("only the book's own script may run", async () => {
    // Content Security Policy Level 3 (W3C): a hash source is the base 64 of the digest of the script's text.
    const hash = createHash("sha256").update(BOOK_SCRIPT).digest("base64");
    expect(BOOK_SCRIPT_HASH).toBe(hash);
    expect(bookPage(await smallestPlan(), english)).toContain(`script-src &#39;sha256-${hash}&#39;`);
  });
});

/** Relative luminance and contrast ratio: W3C, Web Content Accessibility Guidelines 2.2, 2023, section 8. */
function contrast(a: string, b: string): number {
  const [low = 0, high = 0] = [a, b]
    .map((colour) => {
      const [r = 0, g = 0, blue = 0] = [1, 3, 5]
        .map((at) => Number.parseInt(colour.slice(at, at + 2), 16) / 255)
        .map((part) => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4));
      return 0.2126 * r + 0.7152 * g + 0.0722 * blue;
    })
    .sort((x, y) => x - y);
  return (high + 0.05) / (low + 0.05);
}

describe.each([
  ["by day", DAY],
  ["by night", NIGHT],
])("colours %s", (_, colours) => {
  test("text reaches 4.5 : 1 on every ground it stands on, and boxes 3 : 1", () => {
    const { ground, sheet, ink, quiet, accent, alarm, alarmWash } = colours;
    for (const on of [ground, sheet]) {
      for (const text of [ink, quiet, accent, alarm]) expect(contrast(text, on)).toBeGreaterThanOrEqual(4.5);
    }
    for (const text of [ink, alarm]) expect(contrast(text, alarmWash)).toBeGreaterThanOrEqual(4.5);
    expect(contrast(sheet, accent)).toBeGreaterThanOrEqual(3);
  });
});
