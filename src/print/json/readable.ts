/** Columns of a line before a value is spread over several: a piece of cloth on a lay fits on one. */
const WIDEST = 220;

/** A value with more parts than this is longer than a line, however short they are. */
const MOST_PARTS = WIDEST / 2;

/** Letters gathered before they are handed on. */
const PORTION = 1 << 16;

/** JSON that people can read too: what fits on one line stays on one, the rest is indented. */
export function readable(value: unknown): string {
  return [...readablePortions(value)].join("");
}

/** The same, a portion at a time: the plan of a great many pieces is longer than all else that a run holds. */
export function* readablePortions(value: unknown): Generator<string> {
  let held: string[] = [];
  let letters = 0;
  for (const text of spread(value, "")) {
    held.push(text);
    letters += text.length;
    if (letters < PORTION) continue;
    yield held.join("");
    held = [];
    letters = 0;
  }
  if (held.length > 0) yield held.join("");
}

function* spread(value: unknown, margin: string): Generator<string> {
  const line = onOneLine(value, margin);
  if (line !== null) {
    yield line;
    return;
  }
  const inner = `${margin}  `;
  const isList = Array.isArray(value);
  let before = isList ? "[\n" : "{\n";
  // A list of a hundred thousand is gone through as it is.
  for (const [name, part] of isList ? value.entries() : Object.entries(value as object)) {
    if (part === undefined && !isList) continue;
    before += isList ? inner : `${inner}${JSON.stringify(name)}: `;
    const short = onOneLine(part, inner);
    if (short === null) {
      yield before;
      yield* spread(part, inner);
    } else yield before + short;
    before = ",\n";
  }
  yield `\n${margin}${isList ? "]" : "}"}`;
}

/** The value on one line behind such a margin; null where it is too long for that. */
function onOneLine(value: unknown, margin: string): string | null {
  if (typeof value !== "object" || value === null) return JSON.stringify(value);
  if (partsIn(value, MOST_PARTS) > MOST_PARTS) return null;
  const line = JSON.stringify(value);
  return line.length === 2 || margin.length + line.length <= WIDEST ? line : null;
}

/** How many values there are in a value; no further than `most`. */
function partsIn(value: object, most: number): number {
  let found = 0;
  for (const part of Array.isArray(value) ? value : Object.values(value)) {
    found += typeof part === "object" && part !== null ? 1 + partsIn(part, most - found) : 1;
    if (found > most) return found;
  }
  return found;
}
