import type { Plan } from "../../plan/types.ts";
import { shorten } from "../svg/text-fit.ts";
import { blockMarkup, inlined, swatchMark } from "./blocks.ts";
import { bookOf } from "./book.ts";
import type { Book, Section } from "./content.ts";
import { type Child, element, escapeCss, type Markup, trusted } from "./markup.ts";
import { BOOK_SCRIPT, BOOK_SCRIPT_HASH } from "./script.ts";
import { BOOK_STYLE } from "./style.ts";
import { bookWords } from "./words.ts";

/** Points that a running header has room for, and the size it is set in. */
const HEADER_ROOM = 230;
const HEADER_SIZE = 8;
/** Glyphs of a title that would fill the cover. */
const LONG_TITLE = 60;

/** Page numbers and running headers. A fabric's pages are a kind of their own, named as its section. */
function pageRules({ title, sections }: Book): string {
  const quoted = (text: string) => `"${escapeCss(shorten(text, HEADER_ROOM, HEADER_SIZE))}"`;
  const look = `font: ${HEADER_SIZE}pt "DejaVu Sans", Verdana, Arial, sans-serif; color: #1d2733;`;
  const running = sections
    .filter((section) => section.running !== "")
    .map(
      ({ id, running }) =>
        `@page ${id} { @top-right { content: ${quoted(running)}; ${look} } }\n#${id} { page: ${id}; }`,
    );
  return [
    `@page { margin: 17mm 13mm 15mm; @top-left { content: ${quoted(title)}; ${look} }`,
    `  @bottom-right { content: "${bookWords.page} " counter(page) " / " counter(pages); ${look} } }`,
    "@page :first { @top-left { content: none; } }",
    ...running,
  ].join("\n");
}

/** The blocks in order; what follows a bench stands beside its drawing too. */
function blocksMarkup({ id, blocks }: Section): Child {
  const named = blocks.map((block, i) => ({ block, id: `${id}-${i + 1}` }));
  const bench = blocks.findIndex(({ kind }) => kind === "bench");
  const [before, after] = bench < 0 ? [named, []] : [named.slice(0, bench + 1), named.slice(bench + 1)];
  const under = after.map((each) => blockMarkup(each.block, each.id));
  return before.map((each, i) => blockMarkup(each.block, each.id, i === bench ? under : null));
}

function sectionMarkup(section: Section): Markup {
  const { id, title, over, swatch } = section;
  const classes = [section.newSheet ? "sheet" : "", section.titledByDrawing ? "titled" : ""].filter(Boolean);
  const heading = `${id}-title`;
  return element(
    "section",
    { id, "aria-labelledby": heading, class: classes.length === 0 ? null : classes.join(" ") },
    element(
      "div",
      { class: "section-head" },
      over === "" ? null : element("p", { class: "over" }, over),
      element("h2", { id: heading }, swatch === null ? null : swatchMark(swatch), element("bdi", {}, title)),
    ),
    blocksMarkup(section),
  );
}

function coverMarkup(book: Book): Markup {
  return element(
    "header",
    { class: "cover" },
    element(
      "div",
      {},
      element("p", { class: "over" }, book.subtitle),
      element("h1", { class: book.title.length > LONG_TITLE ? "long" : null, dir: "auto" }, book.title),
      blockMarkup({ kind: "facts", facts: book.cover.facts }, "cover"),
      element(
        "div",
        { class: "bar" },
        element("button", { type: "button", "data-print": true, hidden: true }, bookWords.print),
        element(
          "button",
          { type: "button", "data-clear": bookWords.clearSure, hidden: true },
          bookWords.clear,
        ),
      ),
    ),
    element("div", { class: "cover-picture" }, inlined(book.cover.svg)),
  );
}

function contentsMarkup({ sections }: Book): Markup {
  return element(
    "nav",
    { "aria-labelledby": "contents-title" },
    element("h2", { id: "contents-title" }, bookWords.contents),
    element(
      "ul",
      {},
      sections.map(({ id, title, swatch }) =>
        element(
          "li",
          {},
          element(
            "a",
            { href: `#${id}` },
            swatch === null ? null : swatchMark(swatch),
            element("bdi", {}, title),
          ),
        ),
      ),
    ),
  );
}

/**
 * The cutting book as one HTML file that needs nothing else: no network, no fonts, no other files. Its
 * policy lets only its own script run. Same book, same bytes.
 */
export function pageOf(book: Book): string {
  const policy = `default-src 'none'; style-src 'unsafe-inline'; script-src 'sha256-${BOOK_SCRIPT_HASH}'`;
  const head = element(
    "head",
    {},
    element("meta", { charset: "utf-8" }),
    element("meta", { name: "viewport", content: "width=device-width, initial-scale=1" }),
    element("meta", { "http-equiv": "Content-Security-Policy", content: policy }),
    element("title", {}, bookWords.documentTitle(book.title)),
    element("style", {}, trusted(`${BOOK_STYLE}${pageRules(book)}\n`)),
  );
  const body = element(
    "body",
    {},
    element("a", { class: "skip", href: "#book" }, bookWords.skip),
    element(
      "div",
      { class: "page" },
      coverMarkup(book),
      contentsMarkup(book),
      element("main", { id: "book" }, book.sections.map(sectionMarkup)),
    ),
    element("script", {}, trusted(BOOK_SCRIPT)),
  );
  const page = element("html", { lang: bookWords.language, "data-key": book.key }, head, body);
  return `<!DOCTYPE html>\n${page.html}\n`;
}

/** The cutting book of a plan as a web page. `diagrams`: as for `bookOf`. */
export function bookPage(plan: Plan, diagrams?: readonly string[]): string {
  return pageOf(bookOf(plan, diagrams));
}
