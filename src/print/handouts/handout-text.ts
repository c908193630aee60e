import type { Book } from "../../content/book/content.ts";
import { type HandoutPart, handoutOf } from "../../content/book/handouts/handout.ts";
import { alignedLines } from "../../content/lines/table.ts";
import { fitText } from "../../draw/scene/text-fit.ts";
import type { Words } from "../../words/index.ts";

/** Letters to a line: what a mail shows without turning it. */
const WIDTH = 78;
/** A table wider than this is told row by row. */
const TABLE_WIDTH = 84;
const RULES = { 1: "=", 2: "-", 3: "" } as const;

function clean(text: string): string {
  return fitText(text)
    .replace(/[\s\u00a0]+/g, " ")
    .trim();
}

/** A text over lines, those after the first set in. */
function wrapped(text: string, first: string, rest: string): string[] {
  const lines: string[] = [];
  let line = first;
  let empty = true;
  for (const word of clean(text).split(" ")) {
    if (!empty && line.length + 1 + word.length > WIDTH) {
      lines.push(line);
      line = rest;
      empty = true;
    }
    line += empty ? word : ` ${word}`;
    empty = false;
  }
  return [...lines, line.trimEnd()];
}

function isNothing(cell: string, words: Words): boolean {
  return cell === "" || cell === words.book.bench.buy.none;
}

/** A heading before what it is asked of. */
function asked(heading: string): string {
  return /[?:]$/.test(heading) ? heading : `${heading}:`;
}

function tableLines({ headings, right, rows }: HandoutPart & { kind: "table" }, words: Words): string[] {
  const columns = headings.map((heading, i) => ({
    heading: clean(heading),
    align: right[i] === true ? ("right" as const) : ("left" as const),
  }));
  const said = rows.map((row) => row.map(clean));
  const lines = alignedLines(columns, said);
  if (Math.max(...lines.map((line) => line.length)) <= TABLE_WIDTH) return lines;
  return said.flatMap(([name = "", ...cells]) => [
    ...wrapped(name, "* ", "  "),
    ...cells.flatMap((cell, i) =>
      isNothing(cell, words)
        ? []
        : wrapped(`${asked(columns[i + 1]?.heading ?? "")} ${cell}`, "    ", "      "),
    ),
  ]);
}

function partLines(part: HandoutPart, words: Words): string[] {
  switch (part.kind) {
    case "title": {
      const lines = wrapped(part.level === 3 ? `${part.text}:` : part.text, "", "");
      const longest = Math.max(...lines.map((line) => line.length));
      const rule = RULES[part.level];
      return rule === "" ? lines : [...lines, rule.repeat(longest)];
    }
    case "paragraph":
      return wrapped(part.text, "", "");
    case "list":
      return part.items.flatMap((item) => wrapped(item, "* ", "  "));
    case "facts":
      return alignedLines(
        [
          { heading: "", align: "left" },
          { heading: "", align: "left" },
        ],
        part.facts.map(({ caption, value }) => [clean(caption), clean(value)]),
      );
    case "table":
      return tableLines(part, words);
    case "steps":
      return part.steps.flatMap(({ number, title, table, inner }) => [
        ...wrapped(title, `${number}. `.padStart(4), "    "),
        ...(table === null
          ? []
          : tableLines({ kind: "table", right: table.headings.map(() => false), ...table }, words).map(
              (line) => `    ${line}`,
            )),
        ...inner.flatMap((group) => [
          ...(group.title === "" ? [] : wrapped(group.title, "    ", "    ")),
          ...group.lines.flatMap((text) => wrapped(text, "    - ", "      ")),
        ]),
      ]);
  }
}

/** The book without its drawings as plain text, no line longer than a mail shows. */
export function handoutText(book: Book, words: Words): string {
  const parts = handoutOf(book).map((part) => partLines(part, words).join("\n"));
  return `${parts.join("\n\n")}\n`;
}
