import Table from "cli-table3";

const BARE = {
  top: "",
  "top-mid": "",
  "top-left": "",
  "top-right": "",
  bottom: "",
  "bottom-mid": "",
  "bottom-left": "",
  "bottom-right": "",
  left: "",
  "left-mid": "",
  mid: "",
  "mid-mid": "",
  right: "",
  "right-mid": "",
  middle: "  ",
} as const;

/** A column: its heading and on which side its cells line up. */
export interface Column {
  heading: string;
  align: "left" | "right";
}

/** Rows as aligned lines with two spaces between columns. Wide (CJK) letters count double. */
export function alignedLines(columns: readonly Column[], rows: readonly (readonly string[])[]): string[] {
  const headed = columns.some(({ heading }) => heading !== "");
  const table = new Table({
    chars: BARE,
    style: { "padding-left": 0, "padding-right": 0, head: [], border: [], compact: true },
    colAligns: columns.map(({ align }) => align),
    ...(headed ? { head: columns.map(({ heading }) => heading) } : {}),
  });
  table.push(...rows.map((row) => [...row]));
  return table
    .toString()
    .split("\n")
    .map((line) => line.trimEnd());
}
