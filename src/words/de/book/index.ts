import type { Words } from "../../types.ts";
import { bench } from "./bench.ts";
import { pattern } from "./pattern.ts";
import { templates } from "./templates.ts";

/** The bench book and the pattern: what stands in them beside the lists and the drawings. */
export const book: Words["book"] = { bench, pattern, templates };
