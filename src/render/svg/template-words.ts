import { formatLength, formatSize } from "../../length/format.ts";
import type { Ruler } from "../../length/types.ts";
import type { Template, TemplateUse } from "../../plan/template-types.ts";
import type { Plan } from "../../plan/types.ts";

/** All the words that stand on templates. */
export const TEMPLATE_WORDS = {
  sheet: (plan: string, number: number, count: number) =>
    `Templates, sheet ${number} of ${count}: ${plan || "A quilt"}`,
  alone: (plan: string, name: string) => `Template ${name}: ${plan || "A quilt"}`,
  inch: "1 in",
  centimetres: "2 cm",
  print: "Print at 100 %, not fitted to the page; measure the square before cutting.",
  lines:
    "Solid line: cut here. Dashed line: sew here. Dots: corners of the seam. Rings: a neighbour's corner comes here.",
  grain: "Thin arrow: the straight grain, along the selvage.",
  grainFree: "Thin arrow: the straight grain, along the selvage or across.",
  up: "Thick arrow: the top of the print.",
  caution: "Close the blade after every cut, and keep your fingers off the ruler's edge.",
  cut: (count: number) => `cut ${count}`,
  cutReversed: (count: number) => `cut ${count} reversed`,
  cutBoth: (asDrawn: number, reversed: number) => `cut ${asDrawn} as drawn and ${reversed} reversed`,
  part: (name: string, number: number, count: number) => `${name}, part ${number} of ${count}`,
  join: "Lay the parts over each other so that crosses with the same letter meet, and tape them.",
} as const;

/** `cut 8`, `cut 4 as drawn and 4 reversed`, `cut 4 reversed`. */
export function countWords({ asDrawn, reversed }: TemplateUse): string {
  if (reversed === 0) return TEMPLATE_WORDS.cut(asDrawn);
  if (asDrawn === 0) return TEMPLATE_WORDS.cutReversed(reversed);
  return TEMPLATE_WORDS.cutBoth(asDrawn, reversed);
}

/** What it is cut from: `Canvas [B], from rectangles 3 3/4 x 5 5/8 in`. */
export function fromWords({ fabric, piece, from }: TemplateUse, plan: Plan, typeset = true): string {
  const cloth = plan.fabrics[fabric];
  const cut = cloth?.pieces[piece];
  if (cloth === undefined || cut === undefined) return "";
  const say = { typeset };
  const size =
    from === "strip"
      ? `from strips ${formatLength(cut.along, plan.ruler, say)} wide`
      : cut.across === cut.along
        ? `from squares ${formatLength(cut.across, plan.ruler, say)}`
        : `from rectangles ${formatSize(cut.across, cut.along, plan.ruler, say)}`;
  return `${cloth.name} [${cut.letter}] ${size}`;
}

/** What the pieces of a template are for, each said once: `block peak, side`. */
export function purposeWords({ uses }: Template, plan: Plan): string {
  const texts = uses.flatMap(({ fabric, piece }) => plan.fabrics[fabric]?.pieces[piece]?.uses ?? []);
  // What the sewn unit is trimmed to belongs to the sewing, not to the template.
  return [...new Set(texts.map(({ text }) => text.replace(/, trim to [^,;]+$/, "")))].join("; ");
}

/** How far a corner lies from an edge of the rectangle, to half a ruler mark. */
export function cornerWords(ticks: number, ruler: Ruler): string {
  const fine = ruler.unit === "in" ? 1016 : 640;
  return formatLength(Math.round(ticks / fine) * fine, ruler, { typeset: true });
}
