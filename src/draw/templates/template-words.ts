import { formatLength, formatSize } from "../../length/format.ts";
import type { Ruler } from "../../length/types.ts";
import type { Template, TemplateUse } from "../../plan/template-types.ts";
import type { Plan } from "../../plan/types.ts";
import type { Words } from "../../words/index.ts";

/** `cut 8`, `cut 4 as drawn and 4 reversed`, `cut 4 reversed`. */
export function countWords({ asDrawn, reversed }: TemplateUse, words: Words): string {
  const { cut, cutReversed, cutBoth } = words.drawings.templates;
  if (reversed === 0) return cut(asDrawn);
  return asDrawn === 0 ? cutReversed(reversed) : cutBoth(asDrawn, reversed);
}

/** What it is cut from: `Canvas [B], from rectangles 3 3/4 x 5 5/8 in`. */
export function fromWords(
  { fabric, piece, from }: TemplateUse,
  plan: Plan,
  words: Words,
  typeset = true,
): string {
  const cloth = plan.fabrics[fabric];
  const cut = cloth?.pieces[piece];
  if (cloth === undefined || cut === undefined) return "";
  const say = { typeset };
  const told = words.drawings.templates;
  const size =
    from === "strip"
      ? told.fromStrips(formatLength(cut.along, plan.ruler, say))
      : cut.across === cut.along
        ? told.fromSquares(formatLength(cut.across, plan.ruler, say))
        : told.fromRectangles(formatSize(cut.across, cut.along, plan.ruler, say));
  return told.from(cloth.name, cut.letter, size);
}

/** What the pieces of a template are for, each said once: `block peak, side`. */
export function purposeWords({ uses }: Template, plan: Plan, words: Words): string {
  const texts = uses.flatMap(({ fabric, piece }) => plan.fabrics[fabric]?.pieces[piece]?.uses ?? []);
  // What the sewn unit is trimmed to belongs to the sewing, not to the template.
  return [...new Set(texts.map(({ purpose }) => words.purposes.purpose(purpose, plan.ruler, false)))].join(
    "; ",
  );
}

/** How far a corner lies from an edge of the rectangle, to half a ruler mark. */
export function cornerWords(ticks: number, ruler: Ruler): string {
  const fine = ruler.unit === "in" ? 1016 : 640;
  return formatLength(Math.round(ticks / fine) * fine, ruler, { typeset: true });
}
