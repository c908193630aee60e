import type { Plan } from "../../plan/types.ts";
import { english } from "../../words/index.ts";
import { drawFoundation } from "../svg/index.ts";

import type { Section } from "./content.ts";
import { bookWords } from "./words.ts";

/** The foundation drawn, one picture for each of its pieces. Null when nothing is made on one. */
export function foundationSection(plan: Plan): Section | null {
  const { making, top } = plan;
  const foundation = making?.foundation ?? null;
  if (foundation === null || top === null || foundation.parts.length === 0) return null;
  const pictures = drawFoundation(foundation, top, plan.fabrics, plan.ruler);
  return {
    id: "foundation",
    over: "",
    title: english.foundation.title,
    swatch: null,
    running: bookWords.sewing.title,
    newSheet: true,
    titledByDrawing: false,
    blocks: [
      { kind: "text", text: english.foundation.pictures, tone: "lead" },
      ...pictures.map((svg) => ({ kind: "picture" as const, svg })),
    ],
  };
}
