import { bookPage, type Plan, pageOf, patternOf, planFiles, planJson } from "../../planning.ts";
import { tongue } from "../words/index.ts";
import type { Shown, ShowWhat } from "./messages.ts";
import type { PatternMade } from "./pattern.ts";
import { pictured, type SeenPhoto } from "./pictured.ts";
import { sewingOf } from "./sewing.ts";

/** The command line's own drawings and text of a plan; what is only looked at in the photos of its fabrics. */
export function show(
  plan: Plan,
  what: ShowWhat,
  pattern: PatternMade | null,
  photos: readonly SeenPhoto[],
): Shown {
  const seen = pictured(plan, photos);
  if (what === "sewing") return { what, sewing: sewingOf(seen) };
  const files = { "plan.json": planJson(plan, tongue), ...planFiles(plan, tongue, pattern) };
  const looks =
    seen === plan
      ? files
      : {
          "book.html": bookPage(seen, tongue),
          ...(pattern === null
            ? {}
            : { "pattern.html": pageOf(patternOf(seen, pattern.told, tongue, pattern.sizes), tongue) }),
        };
  return { what, files, looks, problem: pattern?.problem ?? "" };
}
