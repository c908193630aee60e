import type { Plan } from "../../plan/types.ts";
import type { Savings } from "../../savings/try-ideas.ts";

/** Columns of a line before a value is spread over several: a piece of cloth on a lay fits on one. */
const WIDEST = 220;

/** JSON that people can read too: what fits on one line stays on one, the rest is indented. */
function readable(value: unknown, margin: string): string {
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

/** The plan as a file, keys in the order of the types, a line end at the end. */
export function planJson(plan: Plan): string {
  return `${readable(plan, "")}\n`;
}

/** The shopping list for programs. Lengths are ticks, money hundredths, as in the plan. */
export function buyJson(plan: Plan): string {
  const { format, version, ticksPerMillimetre, name, diagnostics } = plan;
  const fabrics = plan.fabrics.map(({ name, usable, purchase, stock, mix, price, bound, sturdiness }) => {
    return { name, usable, purchase, stock, mix, price, bound, sturdiness };
  });
  return `${readable({ format, version, ticksPerMillimetre, name, fabrics, diagnostics }, "")}\n`;
}

/** What would save, for programs: each change with what it alters and what is then bought. */
export function savingsJson({ plan, savings, tried }: Savings): string {
  const { format, version, ticksPerMillimetre, name } = plan;
  const listed = savings.map(({ idea, bought, difference }) => ({
    change: idea.change,
    difference,
    fabrics: bought.map(({ fabric, length, cost }) => ({ fabric, length, cost })),
    text: idea.text,
  }));
  return `${readable({ format, version, ticksPerMillimetre, name, tried, savings: listed }, "")}\n`;
}
