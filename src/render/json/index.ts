import type { Plan } from "../../plan/types.ts";

/** The plan as a file: two spaces, keys in the order of the types, a line end at the end. */
export function planJson(plan: Plan): string {
  return `${JSON.stringify(plan, null, 2)}\n`;
}
