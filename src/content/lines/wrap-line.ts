/** Columns of a line. */
const WIDEST = 98;

/** A line broken between words, what follows set in as far as the first and two more (four after a box to tick). */
export function wrapLine(line: string, widest = WIDEST): string[] {
  const margin = " ".repeat(
    line.length - line.trimStart().length + (line.trimStart().startsWith("[ ]") ? 4 : 2),
  );
  const lines: string[] = [];
  let rest = line;
  while (rest.length > widest) {
    const cut = rest.lastIndexOf(" ", widest);
    if (cut <= margin.length) break;
    lines.push(rest.slice(0, cut));
    rest = margin + rest.slice(cut + 1);
  }
  return [...lines, rest];
}
