import type { Plan } from "../../plan/types.ts";
import { drawBlocks, drawTop } from "../svg/index.ts";
import type { Section } from "./content.ts";
import { bookWords } from "./words.ts";

/** The quilt top and every block with its units. Null for a plain cut list. */
export function quiltSection(plan: Plan): Section | null {
  const { top, fabrics, ruler } = plan;
  if (top === null) return null;
  const blocks = drawBlocks(plan, true).map(({ svg }) => svg);
  return {
    id: "quilt",
    over: "",
    title: bookWords.quilt.title,
    swatch: null,
    running: "",
    newSheet: true,
    titledByDrawing: true,
    blocks: [
      { kind: "picture", svg: drawTop(top, fabrics, ruler) },
      ...(blocks.length === 0 ? [] : [{ kind: "heading" as const, text: bookWords.quilt.blocks }]),
      ...blocks.map((svg) => ({ kind: "picture" as const, svg })),
    ],
  };
}
