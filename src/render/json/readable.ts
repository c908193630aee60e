/** Columns of a line before a value is spread over several: a piece of cloth on a lay fits on one. */
const WIDEST = 220;

/** JSON that people can read too: what fits on one line stays on one, the rest is indented. */
export function readable(value: unknown, margin = ""): string {
  if (typeof value !== "object" || value === null) return JSON.stringify(value);
  const inner = `${margin}  `;
  const parts = Array.isArray(value)
    ? value.map((part) => ({ name: "", text: readable(part, inner) }))
    : Object.entries(value)
        .filter(([, part]) => part !== undefined)
        .map(([key, part]) => ({ name: `${JSON.stringify(key)}:`, text: readable(part, inner) }));
  const [open, close] = Array.isArray(value) ? "[]" : "{}";
  const columns = parts.reduce(
    (sum, { name, text }) => sum + name.length + text.length + 1,
    margin.length + 1,
  );
  if (columns <= WIDEST && parts.every(({ text }) => !text.includes("\n")))
    return `${open}${parts.map(({ name, text }) => name + text).join(",")}${close}`;
  const lines = parts.map(({ name, text }) => `${inner}${name}${name === "" ? "" : " "}${text}`);
  return `${open}\n${lines.join(",\n")}\n${margin}${close}`;
}
