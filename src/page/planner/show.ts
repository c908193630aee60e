import { type Plan, planFiles, planJson } from "../../planning.ts";
import { tongue } from "../words/index.ts";
import type { Shown, ShowWhat } from "./messages.ts";
import type { PatternMade } from "./pattern.ts";
import { sewingOf } from "./sewing.ts";

/** The command line's own drawings and text of a plan. */
export function show(plan: Plan, what: ShowWhat, pattern: PatternMade | null): Shown {
  if (what === "sewing") return { what, sewing: sewingOf(plan) };
  const files = { "plan.json": planJson(plan, tongue), ...planFiles(plan, tongue, pattern) };
  return { what, files, problem: pattern?.problem ?? "" };
}
