import { planUnreadable } from "../diagnostics/stash.ts";
import type { Outcome } from "../diagnostics/types.ts";
import type { Plan } from "../plan/types.ts";

/** What a plan file must have for its cloth to be taken; the audit looks at the rest. */
function isPlan(value: unknown): value is Plan {
  if (typeof value !== "object" || value === null) return false;
  const { format, version, fabrics, ruler, name } = value as Partial<Plan>;
  return (
    format === "crossgrain plan" &&
    version === 1 &&
    typeof name === "string" &&
    typeof ruler === "object" &&
    Array.isArray(fabrics) &&
    fabrics.every((fabric) => Array.isArray(fabric?.lays) && Array.isArray(fabric?.leftovers))
  );
}

/** Reads a plan.json back, so that its cloth can be taken out of the drawer. */
export function readPlan(text: string, file: string): Outcome<Plan> {
  let value: unknown;
  try {
    value = JSON.parse(text.replace(/^\ufeff/, ""));
  } catch {
    return { value: null, diagnostics: [planUnreadable(file, "no-json")] };
  }
  if (isPlan(value)) return { value, diagnostics: [] };
  return { value: null, diagnostics: [planUnreadable(file, "other-format")] };
}
