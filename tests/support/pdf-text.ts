import { getDocumentProxy } from "unpdf";
import type { Block, Book, StepGroup } from "../../src/content/book/content.ts";
import { type Scene, type SceneNode, textsOf as textNodes } from "../../src/draw/scene/scene.ts";
import { laidOut } from "../../src/print/index.ts";
import type { LaidBook } from "../../src/print/paper/paginate.ts";

/** A page of a PDF as a reader of its text finds it; lengths in points. */
export interface PageText {
  width: number;
  /** All of it without spaces, in the order it was set. */
  text: string;
  /** What stands in the margin above, and below. */
  head: string;
  foot: string;
  /** Right end of the text that reaches farthest. */
  right: number;
}

const bare = (text: string) => text.replace(/\s+/g, "");

/** The pages of a PDF, read by PDF.js (in the package unpdf): nothing of ours is in what it finds. */
export async function pagesOf(file: Uint8Array): Promise<PageText[]> {
  const document = await getDocumentProxy(new Uint8Array(file));
  const pages: PageText[] = [];
  for (let number = 1; number <= document.numPages; number += 1) {
    const page = await document.getPage(number);
    const [, , width = 0, height = 0] = page.view;
    const { items } = await page.getTextContent();
    const texts = items.flatMap((item) =>
      "str" in item
        ? [
            {
              said: item.str,
              x: item.transform[4] as number,
              y: item.transform[5] as number,
              // Text that reads upwards goes no way across; spaces between header and header fill what is free.
              wide: Math.abs(item.transform[0]) < 0.01 || item.str.trim() === "" ? 0 : item.width,
            },
          ]
        : [],
    );
    const among = (from: number, to: number) =>
      bare(texts.flatMap(({ said, y }) => (y >= from && y < to ? [said] : [])).join(""));
    pages.push({
      width,
      text: bare(texts.map(({ said }) => said).join("")),
      head: among(height - 42, height),
      foot: among(0, 36),
      right: Math.max(0, ...texts.map(({ x, wide }) => x + wide)),
    });
  }
  return pages;
}

/** Every text of a block, each as it is set in one go. */
function textsOf(block: Block): string[] {
  const steps = (groups: readonly StepGroup[]): string[] =>
    groups.flatMap(({ title, steps: own }) => [
      title,
      ...own.flatMap((step) => [
        step.title,
        ...(step.table?.rows.flatMap((row) => row.map(({ text }) => text)) ?? []),
        ...step.details,
        ...step.parts.flatMap((part) => [part.title, ...part.details]),
        step.where,
        ...step.warnings,
      ]),
    ]);
  switch (block.kind) {
    case "text":
    case "heading":
      return [block.text];
    case "list":
      return block.items;
    case "facts":
      return block.facts.flatMap(({ caption, value }) => [caption, value]);
    case "cautions":
      return block.tools.flatMap(({ tool, rules }) => [tool, ...rules]);
    case "table":
      return block.table.rows.flatMap((row) => row.flatMap(({ text, notes }) => [text, ...notes]));
    case "steps":
    case "beside":
      return steps(block.groups);
    case "cards":
      return block.cards.flatMap(({ lines }) => lines);
    case "labels":
      return block.labels.flatMap(({ size, count }) => [size, count]);
    case "terms":
      return block.terms.flatMap(({ term, meaning }) => [term, meaning]);
    default:
      return [];
  }
}

const scenesOf = (block: Block): Scene[] => {
  if ("scene" in block) return [block.scene];
  return block.kind === "cards"
    ? block.cards.flatMap(({ pictures }) => pictures.map(({ scene }) => scene))
    : [];
};

/** What is written in a drawing. */
const writtenIn = (nodes: readonly SceneNode[]): string[] => textNodes(nodes).map(({ text }) => text);

/** What is on each page by the book's own reckoning: titles of sections, and blocks; the cover is the first. */
function reckoned({ sections, fill }: LaidBook): { titles: string[]; blocks: Block[] }[] {
  const pages = Array.from({ length: fill.length + 1 }, () => ({
    titles: [] as string[],
    blocks: [] as Block[],
  }));
  let at = 0;
  for (const { title, fresh, blocks } of sections) {
    if (fresh) at += 1;
    pages[at]?.titles.push(title);
    for (const { block, fresh: begins } of blocks) {
      if (begins) {
        at += 1;
        pages[at]?.titles.push(title);
      }
      pages[at]?.blocks.push(block);
    }
  }
  return pages;
}

/**
 * What is wrong with a printed book: page numbers; text past the paper's edge; a title, a text or a drawing that is not
 * whole on the page it was reckoned for; and with `headed`, a page that does not name every section on it above.
 */
export function printFaults(pages: readonly PageText[], book: Book, headed = true): string[] {
  const faults: string[] = [];
  for (const [i, { foot, right, width }] of pages.entries()) {
    if (foot !== `page${i + 1}/${pages.length}`) faults.push(`page ${i + 1} is numbered ${foot}`);
    if (right > width) faults.push(`page ${i + 1} runs over its edge`);
  }
  const expected = reckoned(laidOut(book));
  if (expected.length !== pages.length) faults.push(`${pages.length} pages for ${expected.length}`);
  for (const [i, { titles, blocks }] of expected.entries()) {
    const { text = "", head = "" } = pages[i] ?? {};
    if (headed && i > 0) {
      const named = bare(titles.filter((title, t) => titles.indexOf(title) === t).join(" · "));
      const [shown = ""] = [...named.split("…")];
      if (!head.endsWith(shown) && !(head.endsWith("…") && named.includes(head.slice(-12, -1))))
        faults.push(`page ${i + 1} is headed ${head} for ${named}`);
    }
    for (const said of blocks.flatMap(textsOf))
      if (!text.includes(bare(said))) faults.push(`page ${i + 1} lacks "${said}"`);
    for (const { nodes } of blocks.flatMap(scenesOf)) {
      const lacking = writtenIn(nodes).filter((said) => !text.includes(bare(said)));
      if (lacking.length > 0) faults.push(`page ${i + 1} lacks of a drawing: ${lacking.join(" / ")}`);
    }
  }
  return faults;
}

/** Drawings that a book holds: each is printed once. */
export function drawingsIn(book: Book): number {
  return 1 + book.sections.reduce((sum, { blocks }) => sum + blocks.flatMap(scenesOf).length, 0);
}

/** Texts of a PDF in letters smaller than so many points, with their page and size. */
export async function smallestLetters(file: Uint8Array, least: number): Promise<string[]> {
  const document = await getDocumentProxy(new Uint8Array(file));
  const found: string[] = [];
  for (let number = 1; number <= document.numPages; number += 1) {
    const { items } = await (await document.getPage(number)).getTextContent();
    for (const item of items) {
      if (!("str" in item) || item.str.trim() === "") continue;
      const size = Math.hypot(item.transform[2], item.transform[3]);
      if (size < least - 0.01) found.push(`page ${number}: "${item.str}" is ${size.toFixed(2)} pt high`);
    }
  }
  return found;
}
