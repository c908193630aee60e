import type { Plan } from "../../planning.ts";
import { everythingOf } from "./everything.ts";
import type { Shown, ShowWhat } from "./messages.ts";
import { sewingOf } from "./sewing.ts";

/** The command line's own drawings and text of a plan. */
export function show(plan: Plan, what: ShowWhat): Shown {
  if (what === "sewing") return { what, sewing: sewingOf(plan) };
  const files = everythingOf(plan);
  return { what, html: files["book.html"] ?? "", files };
}
