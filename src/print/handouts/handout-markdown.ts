import type { Book } from "../../content/book/content.ts";
import { type HandoutPart, handoutOf, type StepTable } from "../../content/book/handouts/handout.ts";
import { fitText } from "../../draw/scene/text-fit.ts";

/**
 * Text as it may stand in a line of Markdown: what could be read as a mark of it is escaped (CommonMark 0.31.2,
 * section 2.4), entities and raw HTML with it, and addresses are no links.
 */
export function escapeMarkdown(text: string): string {
  return fitText(text)
    .replace(/\s+/g, " ")
    .trim()
    .replace(/[\\`*_<>|~$@]/g, "\\$&")
    .replace(/&(?=[#\w]+;)/g, "\\&")
    .replace(/\](?=[[(:])/g, "\\]")
    .replace(/!(?=\[)/g, "\\!")
    .replace(/:(?=\/\/)/g, "\\:")
    .replace(/\bwww\./gi, "www\\.")
    .replace(/^[#+=-]/, "\\$&")
    .replace(/^(\d+)([.)])(?=\s|$)/, "$1\\$2");
}

const say = escapeMarkdown;

function tableLines({ headings, right, rows }: HandoutPart & { kind: "table" }): string[] {
  const line = (cells: readonly string[]): string => `| ${cells.join(" | ")} |`;
  return [
    line(headings.map(say)),
    line(right.map((isRight) => (isRight ? "---:" : "---"))),
    ...rows.map((row) => line(row.map(say))),
  ];
}

function stepTable({ headings, rows }: StepTable): string[] {
  return tableLines({ kind: "table", headings, right: headings.map(() => false), rows });
}

function partLines(part: HandoutPart): string[] {
  switch (part.kind) {
    case "title":
      return [`${"#".repeat(part.level)} ${say(part.text) || "\u2013"}`];
    case "paragraph":
      return [say(part.text)];
    case "list":
      return part.items.map((item) => `- ${say(item)}`);
    case "facts":
      return part.facts.map(({ caption, value }) => `- **${say(caption)}:** ${say(value)}`);
    case "table":
      return tableLines(part);
    case "steps":
      return part.steps.flatMap(({ number, title, table, inner }) => {
        const indent = " ".repeat(`${number}. `.length);
        return [
          `${number}. **${say(title)}**`,
          ...(table === null ? [] : ["", ...stepTable(table).map((line) => `${indent}${line}`), ""]),
          ...inner.flatMap((group) => [
            ...(group.title === "" ? [] : [`${indent}- ${say(group.title)}`]),
            ...group.lines.map((text) => `${indent}${group.title === "" ? "" : "  "}- ${say(text)}`),
          ]),
        ];
      });
  }
}

/** The book without its drawings as Markdown (CommonMark, with the tables of GitHub's dialect). */
export function handoutMarkdown(book: Book): string {
  return `${handoutOf(book)
    .map((part) => partLines(part).join("\n"))
    .join("\n\n")}\n`;
}
