/** One word of a text drawing, with where it stands in its line. */
interface Word {
  at: number;
  text: string;
}

const wordsOf = (line: string): Word[] =>
  [...line.matchAll(/\S+/g)].map((match) => ({ at: match.index, text: match[0] }));

/** A line with every `b*3` written out, so that each cell has its own word. */
function spreadOut(line: string): string {
  return line.replace(/(\S+)\*(\d{1,3})(?=\s|$)/g, (whole, word: string, count: string) =>
    Number(count) >= 1 && Number(count) <= 500 ? Array(Number(count)).fill(word).join(" ") : whole,
  );
}

/** The line with its cell `index` written anew; neighbours keep their places where the new word leaves room. */
export function withWord(line: string, index: number, word: string): string {
  const spread = spreadOut(line);
  const words = wordsOf(spread);
  const old = words[index];
  if (old === undefined || old.text === word)
    return old === undefined ? line : spread === line ? line : spread;
  const next = words[index + 1];
  const before = spread.slice(0, old.at);
  if (next === undefined) return (before + word).trimEnd();
  const room = next.at - old.at;
  return before + word.padEnd(Math.max(room, word.length + 1)) + spread.slice(next.at);
}

/** Cells of a line as words. */
export function cellsOf(line: string): string[] {
  return spreadOut(line)
    .trim()
    .split(/\s+/)
    .filter((word) => word !== "");
}

/** Words as lines whose columns stand under one another. */
export function asLines(rows: readonly (readonly string[])[]): string {
  const widths: number[] = [];
  for (const row of rows) {
    row.forEach((word, i) => {
      widths[i] = Math.max(widths[i] ?? 0, word.length);
    });
  }
  return rows
    .map((row) =>
      row
        .map((word, i) => word.padEnd(widths[i] ?? 0))
        .join(" ")
        .trimEnd(),
    )
    .join("\n");
}

const MARKS: Readonly<Record<number, string>> = { 0: "", 90: ">", 180: "v", 270: "<" };

/** A code with the mark of its turn. */
export function marked(code: string, turn: number): string {
  return code + (MARKS[((turn % 360) + 360) % 360] ?? "");
}

/** Lines of a drawing as written: one text of several lines, or a list of lines. */
export function linesOf(written: unknown): string[] {
  if (Array.isArray(written)) return written.map(String);
  return String(written ?? "")
    .split(/\r?\n/)
    .filter((line) => line.trim() !== "");
}

/**
 * The same drawing with other lines, in the form it had. A list stays a list; a text keeps the margins and blank
 * lines of the lines that did not change.
 */
export function inTheForm(written: unknown, lines: readonly string[]): string | string[] {
  if (Array.isArray(written)) return [...lines];
  if (lines.length === 1 && !String(written ?? "").includes("\n")) return (lines[0] ?? "").trim();
  return `${lines.join("\n")}\n`;
}
