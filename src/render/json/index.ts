import type { Plan } from "../../plan/types.ts";

/** Columns of a line before a value is spread over several. */
const WIDEST = 160;

/** JSON that people can read too: what fits on one line stays on one, the rest is indented. */
function readable(value: unknown, margin: string): string {
  const line = JSON.stringify(value);
  if (typeof value !== "object" || value === null || margin.length + line.length <= WIDEST) return line;
  const inner = `${margin}  `;
  const parts = Array.isArray(value)
    ? value.map((part) => inner + readable(part, inner))
    : Object.entries(value)
        .filter(([, part]) => part !== undefined)
        .map(([key, part]) => `${inner}${JSON.stringify(key)}: ${readable(part, inner)}`);
  const [open, close] = Array.isArray(value) ? "[]" : "{}";
  return `${open}\n${parts.join(",\n")}\n${margin}${close}`;
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
