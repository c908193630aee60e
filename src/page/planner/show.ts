import type { Plan } from "../../planning.ts";
import { everythingOf } from "./everything.ts";
import type { Shown, ShowWhat } from "./messages.ts";
import type { OnPaper } from "./pattern.ts";
import { sewingOf } from "./sewing.ts";

/** The command line's own drawings and text of a plan. */
export function show(plan: Plan, what: ShowWhat, pattern: OnPaper | null): Shown {
  if (what === "sewing") return { what, sewing: sewingOf(plan) };
  return { what, files: everythingOf(plan, pattern), problem: pattern?.problem ?? "" };
}
