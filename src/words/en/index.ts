import type { Words } from "../types.ts";
import { diagnostics } from "./diagnostics/index.ts";
import { FACT_EXAMPLES } from "./fact-examples.ts";
import { whyNot } from "./why-not.ts";

/** English, as quilters of both measures write it. */
export const english: Words = {
  language: "en",
  diagnostics,
  factExamples: FACT_EXAMPLES,
  whyNot,
};
