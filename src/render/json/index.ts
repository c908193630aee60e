import type { Plan } from "../../plan/types.ts";

function asFile(value: unknown): string {
  return `${JSON.stringify(value, null, 2)}\n`;
}

/** The plan as a file: two spaces, keys in the order of the types, a line end at the end. */
export function planJson(plan: Plan): string {
  return asFile(plan);
}

/** The shopping list for programs. Lengths are ticks, money hundredths, as in the plan. */
export function buyJson(plan: Plan): string {
  const { format, version, ticksPerMillimetre, name, fabrics, diagnostics } = plan;
  return asFile({
    format,
    version,
    ticksPerMillimetre,
    name,
    fabrics: fabrics.map(({ name, usable, purchase, price, bound }) => ({
      name,
      usable,
      purchase,
      price,
      bound,
    })),
    diagnostics,
  });
}
