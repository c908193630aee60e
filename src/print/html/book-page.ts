import { bookOf } from "../../content/book/book.ts";
import type { Book } from "../../content/book/content.ts";
import { shorten } from "../../draw/scene/text-fit.ts";
import type { Plan } from "../../plan/types.ts";
import type { Words } from "../../words/index.ts";
import { columnShares, PER_UNIT, sizeOf } from "../paper/measure.ts";
import { type LaidBook, type LaidSection, laidOut } from "../paper/paginate.ts";
import { blockMarkup, inlined, progressMark, swatchMark, widthClass } from "./blocks.ts";
import { element, escapeCss, type Markup, trusted } from "./markup.ts";
import { BOOK_SCRIPT, BOOK_SCRIPT_HASH } from "./script.ts";
import { BOOK_STYLE } from "./style.ts";

/** Points that a running header has room for, and the size it is set in. */
const HEADER_ROOM = 230;
const HEADER_SIZE = 8;
/** Glyphs of a title that would fill the cover. */
const LONG_TITLE = 60;

/** Page numbers and running headers. Where a header differs, its pages are a kind of their own, named as the section. */
function pageRules({ title }: Book, words: Words): string {
  const quoted = (text: string) => `"${escapeCss(shorten(text, HEADER_ROOM, HEADER_SIZE))}"`;
  const look = `font: ${HEADER_SIZE}pt "Crossgrain Text", Verdana, Arial, sans-serif; color: #1d2733;`;
  return [
    `@page { margin: 15mm 13mm 13mm; @top-left { content: ${quoted(title)}; ${look} }`,
    `  @bottom-right { content: "${words.book.bench.page} " counter(page) " / " counter(pages); ${look} } }`,
    "@page :first { @top-left { content: none; } }",
  ].join("\n");
}

const blockId = (section: string, i: number): string => `${section}-${i + 1}`;

/** How large drawings are printed: as they were measured when the pages were made. */
function sizeRules({ sections, coverHigh }: LaidBook): string {
  const rules = new Set([`.page .cover { height: ${coverHigh}pt; }`]);
  for (const { id, blocks } of sections) {
    for (const [i, { block, scale }] of blocks.entries()) {
      if (block.kind === "picture" || block.kind === "beside") {
        const width = sizeOf(block.scene).width * scale;
        rules.add(`#${blockId(id, i)}-figure svg { width: ${width.toFixed(1)}pt; }`);
      } else if (block.kind === "cards") {
        for (const { width } of block.cards.flatMap(({ pictures }) => pictures))
          rules.add(`.${widthClass(width)} svg { width: ${(width * PER_UNIT).toFixed(1)}pt; }`);
      }
    }
  }
  return `@media print {\n${[...rules].join("\n")}\n}`;
}

const TICKED: ReadonlySet<string> = new Set(["steps", "beside", "heading"]);

/** Classes of what begins a page, or stands close to what is above it. */
const placing = ({ fresh, close }: { fresh: boolean; close: boolean }): string =>
  fresh ? "fresh" : close ? "close" : "";

function sectionMarkup(section: LaidSection, ticked: boolean, words: Words): Markup {
  const { id, title, over, swatch } = section;
  // Drawings have titles with ids of their own.
  const heading = `${id}-heading`;
  const counted =
    ticked &&
    section.blocks.some(
      ({ block }) => TICKED.has(block.kind) && (block.kind !== "heading" || "tick" in block),
    );
  return element(
    "section",
    {
      id,
      "aria-labelledby": heading,
      class: placing(section) || null,
    },
    element(
      "div",
      { class: "section-head" },
      over === "" ? null : element("p", { class: "over" }, over),
      element("h2", { id: heading }, swatch === null ? null : swatchMark(swatch), element("bdi", {}, title)),
      counted ? progressMark(words) : null,
    ),
    section.blocks.map((laid, i) =>
      element(
        "div",
        { class: `part-of of-${laid.block.kind} ${placing(laid)}`.trim() },
        blockMarkup(laid.block, blockId(id, i), ticked, words),
      ),
    ),
  );
}

function coverMarkup(book: Book, words: Words): Markup {
  return element(
    "header",
    { class: "cover" },
    element(
      "div",
      {},
      element("p", { class: "over" }, book.subtitle),
      element("h1", { class: book.title.length > LONG_TITLE ? "long" : null, dir: "auto" }, book.title),
      (book.cover.lines ?? []).map((line) => element("p", { class: "cover-line", dir: "auto" }, line)),
      blockMarkup({ kind: "facts", facts: book.cover.facts }, "cover", false, words),
      element(
        "div",
        { class: "bar" },
        element("button", { type: "button", "data-print": true, hidden: true }, words.book.bench.print),
        book.purpose === "bench"
          ? element(
              "button",
              { type: "button", "data-clear": words.book.bench.clearSure, hidden: true },
              words.book.bench.clear,
            )
          : null,
      ),
    ),
    element("div", { class: "cover-picture" }, inlined(book.cover.scene)),
    (book.cover.foot ?? "") === ""
      ? null
      : element("p", { class: "cover-foot", dir: "auto" }, book.cover.foot ?? ""),
  );
}

function contentsMarkup({ sections }: Pick<Book, "sections">, words: Words): Markup {
  return element(
    "nav",
    { "aria-labelledby": "contents-title" },
    element("h2", { id: "contents-title" }, words.book.bench.contents),
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

/** Widths in print of the columns that the tables of a book have. */
function shareRules({ sections }: LaidBook): string {
  const shares = sections.flatMap(({ blocks }) =>
    blocks.flatMap(({ block }) =>
      block.kind === "table" && block.table.widths !== undefined
        ? columnShares(block.table, block.table.widths).map((share) => Math.round(share * 1000))
        : [],
    ),
  );
  const rules = [...new Set(shares)].sort((a, b) => a - b);
  return rules.map((share) => `\n@media print { .share-${share} { width: ${share / 10}%; } }`).join("");
}

/**
 * The cutting book as one HTML file that needs nothing else: no network, no fonts, no other files. Its
 * policy lets only its own script run. Same book, same bytes.
 */
export function pageOf(book: Book, words: Words): string {
  const laid = laidOut(book);
  const policy = `default-src 'none'; font-src data:; style-src 'unsafe-inline'; script-src 'sha256-${BOOK_SCRIPT_HASH}'`;
  const head = element(
    "head",
    {},
    element("meta", { charset: "utf-8" }),
    element("meta", { name: "viewport", content: "width=device-width, initial-scale=1" }),
    element("meta", { "http-equiv": "Content-Security-Policy", content: policy }),
    element("title", {}, words.book.bench.documentTitle(book.title, book.subtitle)),
    element(
      "style",
      {},
      trusted(`${BOOK_STYLE}${sizeRules(laid)}${shareRules(laid)}\n${pageRules(book, words)}\n`),
    ),
  );
  const body = element(
    "body",
    {},
    element("a", { class: "skip", href: "#book" }, words.book.bench.skip),
    element(
      "div",
      { class: "page" },
      coverMarkup(book, words),
      contentsMarkup(book, words),
      element(
        "main",
        { id: "book" },
        laid.sections.map((section) => sectionMarkup(section, book.purpose === "bench", words)),
      ),
    ),
    element("script", {}, trusted(BOOK_SCRIPT)),
  );
  const page = element(
    "html",
    { lang: words.book.bench.language, class: book.purpose, "data-key": book.key },
    head,
    body,
  );
  return `<!DOCTYPE html>\n${page.html}\n`;
}

/** The cutting book of a plan as a web page. */
export function bookPage(plan: Plan, words: Words): string {
  return pageOf(bookOf(plan, words), words);
}
