import type { Words } from "../../types.ts";
import { comparison } from "./comparison.ts";
import { cutting } from "./cutting.ts";
import { foundation } from "./foundation.ts";
import { quilt } from "./quilt.ts";
import { sewing } from "./sewing.ts";
import { steps } from "./steps.ts";
import { templates } from "./templates.ts";
import { unitSheet } from "./unit-sheet.ts";

/** Everything that stands in a drawing. */
export const drawings: Words["drawings"] = {
  comparison,
  cutting,
  foundation,
  quilt,
  sewing,
  steps,
  templates,
  unitSheet,
};
