import { getDocumentProxy } from "unpdf";

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

interface Told {
  sections: readonly { title: string; running: string; blocks: readonly object[] }[];
}

interface Stepped {
  groups: readonly {
    steps: readonly {
      title: string;
      details: readonly string[];
      parts: readonly { title: string; details: readonly string[] }[];
    }[];
  }[];
}

interface Carded {
  cards: readonly { lines: readonly string[] }[];
}

/** What is wrong with a printed book: numbers, running headers, steps over two pages, text past the paper's edge. */
export function printFaults(pages: readonly PageText[], book: Told, headed = true): string[] {
  const faults: string[] = [];
  for (const [i, { foot, right, width }] of pages.entries()) {
    if (foot !== `page${i + 1}/${pages.length}`) faults.push(`page ${i + 1} is numbered ${foot}`);
    if (right > width) faults.push(`page ${i + 1} runs over its edge`);
  }
  const running = new Set(book.sections.map((section) => bare(section.running)));
  for (const [i, { head }] of pages.entries()) {
    const own = [...running].some((name) => head.endsWith(name));
    if (headed && i > 0 && !own) faults.push(`page ${i + 1} is headed ${head}`);
  }
  for (const { title, blocks } of book.sections) {
    if (!pages.some(({ text }) => text.includes(bare(title)))) faults.push(`${title} is missing`);
    const groups = blocks.flatMap((block) => ("groups" in block ? (block as Stepped).groups : []));
    for (const step of groups.flatMap(({ steps }) => steps)) {
      const lines = [
        step.title,
        ...step.details,
        ...step.parts.flatMap((part) => [part.title, ...part.details]),
      ];
      const whole = pages.some(({ text }) => lines.every((line) => text.includes(bare(line))));
      if (!whole) faults.push(`${title}: "${step.title}" is broken over pages or missing`);
    }
    for (const card of blocks.flatMap((block) => ("cards" in block ? (block as Carded).cards : []))) {
      const whole = pages.some(({ text }) => card.lines.every((line) => text.includes(bare(line))));
      if (!whole) faults.push(`${title}: "${card.lines[0]}" is broken over pages or missing`);
    }
  }
  return faults;
}
