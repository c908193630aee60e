import type { Block } from "../content.ts";

const HEADING = /^#{1,6}\s+(.*)$/;
const ITEM = /^\s*(?:[-*+]|\d{1,3}[.)])\s+(.*)$/;

/** Marks inside a line are left out; a link keeps its address. */
function plain(text: string): string {
  return text
    .replace(/!?\[([^\]]*)\]\(([^)\s]*)[^)]*\)/g, (_, said: string, to: string) =>
      said === "" || said === to ? to : `${said} (${to})`,
    )
    .replace(/(\*\*|__)(?=\S)(.+?)(?<=\S)\1/g, "$2")
    .replace(/(?<![\p{L}\p{N}])([*_])(?=\S)(.+?)(?<=\S)\1(?![\p{L}\p{N}])/gu, "$2")
    .replace(/`([^`]+)`/g, "$1")
    .replace(/\\([\\`*_{}[\]()#+\-.!])/g, "$1")
    .replace(/\s+/g, " ")
    .trim();
}

/** The author's own words, written in Markdown: paragraphs, headings and lists. Emphasis is set as plain text. */
export function authorWords(markdown: string): Block[] {
  const blocks: Block[] = [];
  let paragraph: string[] = [];
  let items: string[] = [];
  const close = (): void => {
    if (items.length > 0) blocks.push({ kind: "list", items: items.map(plain) });
    const text = plain(paragraph.join(" "));
    if (text !== "") blocks.push({ kind: "text", text, tone: "plain" });
    [paragraph, items] = [[], []];
  };
  for (const line of markdown.split(/\r?\n/)) {
    const heading = HEADING.exec(line);
    const item = ITEM.exec(line);
    if (line.trim() === "") close();
    else if (heading !== null) {
      close();
      blocks.push({ kind: "heading", text: plain(heading[1] ?? "") });
    } else if (item !== null) {
      if (paragraph.length > 0) close();
      items.push(item[1] ?? "");
    } else if (items.length > 0 && /^\s/.test(line)) items.push(`${items.pop() ?? ""} ${line.trim()}`);
    else {
      if (items.length > 0) close();
      paragraph.push(line.trim());
    }
  }
  close();
  return blocks;
}
