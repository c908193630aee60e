import { JSDOM } from "jsdom";
import MarkdownIt from "markdown-it";
import { describe, expect, test } from "vitest";
import { escapeMarkdown } from "../../../src/print/handouts/handout-markdown.ts";
import { bookOf, handoutMarkdown, handoutText } from "../../../src/print/index.ts";
import { english } from "../../../src/words/index.ts";
import { HOSTILE, hostilePlan, listPlan, quiltPlan } from "./book-plans.ts";

// A reader of Markdown that takes all there is: raw HTML, bare addresses as links, GitHub's tables
// (CommonMark 0.31.2 and GitHub Flavored Markdown 0.29, as markdown-it reads them).
const reader = new MarkdownIt({ html: true, linkify: true });
const read = (markdown: string): Document => new JSDOM(reader.render(markdown)).window.document;

const CASES = [
  ["a quilt", quiltPlan],
  ["a cut list", listPlan],
] as const;

describe.each(CASES)("the handout of %s", (_, make) => {
  test("says what to buy, what can hurt, every step and the words used, in this order", async () => {
    const plan = await make();
    const book = bookOf(plan, english);
    const page = read(handoutMarkdown(book));
    const sections = [...page.querySelectorAll("h2")].map(({ textContent }) => textContent ?? "");
    const places = ["What to buy", "Safety first", "Cutting", "Words used here"].map((start) =>
      sections.findIndex((title) => title.startsWith(start)),
    );
    expect(places.every((place, i) => place > (places[i - 1] ?? -1))).toBe(true);
    if (plan.making !== undefined) expect(sections).toEqual(expect.arrayContaining(["Units", "Finishing"]));
    // The pressing map is a drawing, and what is said beside it goes with it.
    const steps = book.sections
      .filter(({ id }) => id !== "pressing")
      .flatMap(({ blocks }) =>
        blocks.flatMap((block) =>
          block.kind === "beside" || block.kind === "steps"
            ? block.groups.flatMap((group) => group.steps)
            : block.kind === "cards"
              ? block.cards.flatMap(({ lines: [title] }) =>
                  title === undefined ? [] : [{ title: title.trim() }],
                )
              : [],
        ),
      );
    const told = [...page.querySelectorAll("ol > li > strong")].map(({ textContent }) => textContent);
    const spaced = (text: string) => text.replace(/\s+/g, " ");
    expect(told).toEqual(steps.map(({ title }) => spaced(title)));
    const [first] = page.querySelectorAll("table");
    expect(first?.querySelectorAll("tbody tr").length).toBe(plan.fabrics.length);
    const text = handoutText(book, english);
    for (const { title } of steps) {
      expect(text.replace(/\s+/g, " ")).toContain(spaced(title));
    }
    for (const line of text.split("\n")) expect(line.length).toBeLessThanOrEqual(84);
  });
});

describe("hostile names", () => {
  test("become no element, link, picture or code in Markdown, and lose no letter", () => {
    const more = [
      "[a](javascript:alert(1))",
      "![x](http://a.b)",
      "<http://a.b>",
      "`code`",
      "# h",
      "- l",
      "1. n",
      "a\n\n# b",
      "***",
      "[a]: http://b",
      "| a | b |",
      "&lt;b&gt;",
      "www.a.b",
      "~~~",
      "a\\",
      "me@a.b",
      "== ==",
    ];
    for (const name of [...HOSTILE, ...more]) {
      const said = escapeMarkdown(name);
      const page = read(`- ${said}\n\n${said}\n\n| a |\n| --- |\n| ${said} |\n`);
      expect(
        page.querySelectorAll("script, style, img, a, code, h1, h2, hr, em, strong, s, ol").length,
        name,
      ).toBe(0);
      expect(page.querySelectorAll("td").length, name).toBe(1);
      const clean = name
        .replaceAll("\u0000", " ")
        .replaceAll("\u202e", " ")
        .replace(/\ud800/g, "\ufffd")
        .replace(/\s+/g, " ")
        .trim();
      expect(page.querySelector("p")?.textContent, name).toBe(clean);
      expect(page.querySelector("li")?.textContent?.trim(), name).toBe(clean);
    }
  });

  test("leave the handout's own shape alone", async () => {
    const plan = await hostilePlan();
    const page = read(handoutMarkdown(bookOf(plan, english)));
    expect(page.querySelectorAll("script, style, img, a, code, iframe").length).toBe(0);
    expect(page.querySelectorAll("h1").length).toBe(1);
  });
});
