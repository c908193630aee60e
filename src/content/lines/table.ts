import stringWidth from "string-width";

/** A column: its heading and on which side its cells line up. */
export interface Column {
  heading: string;
  align: "left" | "right";
}

/** Rows as aligned lines with two spaces between columns, an empty one a space wide. Wide (CJK) letters count double. */
export function alignedLines(columns: readonly Column[], rows: readonly (readonly string[])[]): string[] {
  const headed = columns.some(({ heading }) => heading !== "");
  const lines = [...(headed ? [columns.map(({ heading }) => heading)] : []), ...rows];
  const widths = columns.map((_, at) => Math.max(1, ...lines.map((cells) => stringWidth(cells[at] ?? ""))));
  const padded = (cell: string, at: number) => {
    const room = " ".repeat((widths[at] ?? 0) - stringWidth(cell));
    return columns[at]?.align === "right" ? room + cell : cell + room;
  };
  return lines.map((cells) =>
    columns
      .map((_, at) => padded(cells[at] ?? "", at))
      .join("  ")
      .trimEnd(),
  );
}
