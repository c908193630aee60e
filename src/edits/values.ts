import { parse } from "yaml";

/** What an edit writes: plain values, nothing else. */
export type Value = string | number | boolean | Value[] | { [key: string]: Value };

/** Whether a text without quotes means itself wherever a value may stand, inside brackets too. */
function meansItself(text: string): boolean {
  if (text === "" || text !== text.trim() || /[\n,[\]{}#&*!|>'"%@`]|: |:$|^[-?:](\s|$)/.test(text))
    return false;
  try {
    const [back] = parse(`[${text}]`) as unknown[];
    // `4` and `1/2` are read as written by the file reader whatever YAML takes them for; true and null are not.
    return back === text || (typeof back === "number" && String(back) === text);
  } catch {
    return false;
  }
}

/** A text as it is written in the file: bare where that is safe, else in quotes. */
export function writtenText(text: string, json: boolean): string {
  return !json && meansItself(text) ? text : JSON.stringify(text);
}

/** A value on one line, the way makers write short ones: `{ fabric: navy, width: 4 }`. */
export function writtenValue(value: Value, json: boolean): string {
  if (typeof value === "string") return writtenText(value, json);
  if (typeof value !== "object") return String(value);
  if (Array.isArray(value)) return `[${value.map((one) => writtenValue(one, json)).join(", ")}]`;
  const pairs = Object.entries(value).map(
    ([key, one]) => `${writtenText(key, json)}: ${writtenValue(one, json)}`,
  );
  return pairs.length === 0 ? "{}" : `{ ${pairs.join(", ")} }`;
}

/** Whether two plain values are the same, the order of keys aside. Numbers and their texts count as one. */
export function sameValue(a: unknown, b: unknown): boolean {
  if (typeof a !== "object" || a === null || typeof b !== "object" || b === null)
    return a === b || (a !== null && b !== null && String(a) === String(b) && typeof a !== "object");
  if (Array.isArray(a) !== Array.isArray(b)) return false;
  const [left, right] = [Object.entries(a), Object.entries(b)];
  const other = b as Record<string, unknown>;
  return (
    left.length === right.length &&
    left.every(([key, one]) => Object.hasOwn(b, key) && sameValue(one, other[key]))
  );
}

/** A function of a text that remembers its last few answers. */
export function keepingLast<T>(most: number, of: (text: string) => T): (text: string) => T {
  const kept = new Map<string, T>();
  return (text) => {
    const found = kept.get(text) ?? of(text);
    kept.delete(text);
    kept.set(text, found);
    for (const oldest of kept.keys()) {
      if (kept.size <= most) break;
      kept.delete(oldest);
    }
    return found;
  };
}
