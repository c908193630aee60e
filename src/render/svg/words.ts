import { formatLength, formatMeasure, formatNumber, formatSize } from "../../length/format.ts";
import { roomToMark } from "../../length/marks.ts";
import type { Ruler, Ticks } from "../../length/types.ts";
import type { FabricPlan, Part, Plan, WasteCause } from "../../plan/types.ts";
import { bladeCautions, estimates } from "../../words/en/cautions.ts";
import { capital } from "../../words/en/language.ts";
import { wasteCauses } from "../../words/en/waste.ts";

/** All the words that stand in cutting diagrams. */

export const WASTE_WORDS: Readonly<Record<WasteCause, string>> = {
  shrinkage: capital(wasteCauses.shrinkage),
  selvage: capital(wasteCauses.selvage),
  straightening: capital(wasteCauses.straightening),
  trimming: capital(wasteCauses.trimming),
  "strip-end": capital(wasteCauses["strip-end"]),
  "uncut-end": capital(wasteCauses["uncut-end"]),
};

export const HEADINGS = {
  drawing: "Cutting diagram",
  pieces: "Pieces to cut",
  waste: "Fabric that is in no piece",
  signs: "Signs",
} as const;

export const CAUTION = [bladeCautions.shut, bladeCautions.away, bladeCautions.fingers, estimates].join(" ");

/** A length as the ruler reads; one that lies off the marks is given to the nearest mark with a sign. */
export function spokenLength(ticks: Ticks, ruler: Ruler): string {
  if (ticks % ruler.mark === 0) return formatLength(ticks, ruler, { typeset: true });
  const near = Math.round(ticks / ruler.mark) * ruler.mark;
  return `≈ ${formatLength(near, ruler, { typeset: true })}`;
}

export function spokenSize(across: Ticks, along: Ticks, ruler: Ruler): string {
  if (across % ruler.mark === 0 && along % ruler.mark === 0) {
    return formatSize(across, along, ruler, { typeset: true });
  }
  const near = (ticks: Ticks): Ticks => Math.round(ticks / ruler.mark) * ruler.mark;
  return `≈ ${formatSize(near(across), near(along), ruler, { typeset: true })}`;
}

/** What is told of a piece in the list: its size, or the strip that a shape is cut from. */
export function pieceWords({ across, along, nest }: FabricPlan["pieces"][number], ruler: Ruler): string {
  const { spec, setting } = nest ?? { spec: null, setting: null };
  if (spec === null) return spokenSize(across, along, ruler);
  const angle = setting?.angle == null ? "" : `${setting.angle}° `;
  return `${angle}${spec.kind}, from strips ${spokenLength(along, ruler)}`;
}

/** A piece's size from the longest way of saying it to the shortest. */
export function sizeWords(piece: FabricPlan["pieces"][number], ruler: Ruler): string[] {
  const full = formatSize(piece.across, piece.along, ruler, { typeset: true });
  const bare = formatSize(piece.across, piece.along, ruler, { typeset: true, unit: false });
  return piece.across === piece.along ? [full, spokenLength(piece.across, ruler)] : [full, bare];
}

export function percent(part: number, whole: number, ruler: Ruler): string {
  return whole === 0 ? "0 %" : `${formatNumber((part / whole) * 100, 1, ruler)} %`;
}

export function wasteShare(fabric: FabricPlan, ruler: Ruler): string {
  const { bought, pieces } = fabric.waste;
  return percent(bought - pieces, bought, ruler);
}

/** What was proved, in words a maker can weigh. */
export function proofWords(fabric: FabricPlan, ruler: Ruler): string {
  const { bound, mix } = fabric;
  if (mix !== undefined) {
    if (!mix.proven) return "best found; not proven least";
    return mix.cost === null ? "proven: no fewer pieces" : "proven: nothing cheaper";
  }
  if (fabric.purchase === null) return "nothing need be bought";
  if (bound.lengthProven) return "proven: no shorter cutting of this kind";
  const gap = spokenLength(Math.max(0, bound.used - bound.least), ruler);
  return bound.purchaseProven
    ? `purchase proven least; length within ${gap}`
    : `not proven: up to ${gap} might be saved`;
}

export function printWords(fabric: FabricPlan): string {
  const { kind, axis } = fabric.print;
  if (kind === "none") return "no direction";
  const way = axis === "along" ? "along the selvage" : "across the width";
  return kind === "one-way" ? `one way, ${way}` : `two ways, ${way}`;
}

export function buyWords(fabric: FabricPlan, { decimal }: Pick<Ruler, "decimal">): string {
  const { purchase, sold, stock = [] } = fabric;
  const yardage =
    purchase === null ? [] : [formatMeasure(purchase.length, sold.unit, { typeset: true, decimal })];
  const readyCut = stock
    .filter(({ from, used }) => from === "shop" && used > 0)
    .map(({ name, used }) => `${used} × ${name.replace(/^bought /, "")}`);
  const all = [...yardage, ...readyCut];
  if (all.length === 0)
    return fabric.done === undefined ? "nothing: cut from fabric in hand" : "nothing more";
  return fabric.done === undefined ? all.join(" + ") : `${all.join(" + ")} more`;
}

export interface Fact {
  caption: string;
  value: string;
}

export function titleFacts(fabric: FabricPlan, ruler: Ruler): Fact[] {
  const usable = spokenLength(roomToMark(fabric.usable, ruler), ruler);
  const width = formatLength(fabric.width, ruler, { typeset: true });
  return [
    { caption: "Buy", value: buyWords(fabric, ruler) },
    {
      caption: "Length used",
      value: fabric.purchase === null ? "–" : spokenLength(fabric.bound.used, ruler),
    },
    { caption: "Usable width", value: fabric.purchase === null ? "–" : `${usable} of ${width}` },
    { caption: "Fabric in no piece", value: wasteShare(fabric, ruler) },
    { caption: "Print", value: printWords(fabric) },
    { caption: "How good", value: proofWords(fabric, ruler) },
  ];
}

/** Ways of naming strips left out of the drawing, longest first. */
export function gapWords(strips: readonly Part[], drawn: number): string[] {
  const [first, last] = [strips[0]?.number ?? 0, strips[strips.length - 1]?.number ?? 0];
  const numbers = first === last ? `strip ${first}` : `strips ${first} to ${last}`;
  const range = first === last ? `${first}` : `${first}–${last}`;
  return [
    `${strips.length} more cut just like strip ${drawn}: ${numbers}`,
    `${strips.length} more like ${drawn}: ${numbers}`,
    `${strips.length} more: ${range}`,
    `+${strips.length}`,
  ];
}

export const UNCUT_GAP_WORDS = ["drawn shorter than it is", "shortened"];

/** One sentence for people who hear the drawing. */
export function describe(plan: Plan, fabric: FabricPlan): string {
  const strips = new Set<string>();
  const walk = (part: Part, lay: number): void => {
    if (part.role === "strip") strips.add(`${lay}:${part.number}`);
    for (const inner of part.parts) walk(inner, lay);
  };
  for (const [i, lay] of fabric.lays.entries()) walk(lay.root, i);
  const pieces = fabric.pieces.reduce((sum, { count }, i) => sum + count - (fabric.done?.cut[i] ?? 0), 0);
  const nothing = fabric.purchase === null && fabric.mix === undefined;
  const buy = nothing ? "Nothing to buy." : `Buy ${buyWords(fabric, plan.ruler)}.`;
  const sizes = fabric.pieces
    .map((p) => `${p.letter}, ${p.count} of ${pieceWords(p, plan.ruler)}`)
    .join("; ");
  return (
    `${buy} ${strips.size} strip${strips.size === 1 ? "" : "s"} and ${pieces} piece${pieces === 1 ? "" : "s"}: ` +
    `${sizes}. ${wasteShare(fabric, plan.ruler)} of the fabric is in no piece. ${proofWords(fabric, plan.ruler)}.`
  );
}

/** How many of a bag are still to cut, where some lie cut. */
export function stillWords(count: number, cut: number): string {
  if (cut === 0) return countWords(count);
  return cut === count ? `all ${count} cut` : `${count - cut} more, ${cut} cut`;
}

export function countWords(count: number): string {
  return `${count} piece${count === 1 ? "" : "s"}`;
}

/** Beside the arrows that show how the cloth lies. */
export const DIRECTION_WORDS = { grain: "grain", "one-way": "print up", "two-way": "print" } as const;

export const SIGN_WORDS = {
  number: "strip, in cutting order, with its width",
  grain: "lengthwise grain: along the selvage",
  "one-way": "the way the print's top points",
  "two-way": "the way the print runs",
  gap: "part left out of the drawing",
  keep: "offcut big enough to keep",
  shaping: "cut on the dashes once the piece is free, right side up",
  key: "letter of pieces too small to hold it",
} as const;

export function layHeading(
  name: string,
  isBolt: boolean,
  alike: number,
  part: { n: number; of: number },
  isTrimmed: boolean,
): string {
  const named = `${name.charAt(0).toUpperCase()}${name.slice(1)}${isTrimmed ? ", trimmed" : ""}`;
  const who = isBolt ? "Bolt" : named;
  const many = alike > 1 ? ` – ${alike} cut alike` : "";
  return part.of > 1 ? `${who}${many} – part ${part.n} of ${part.of}` : `${who}${many}`;
}
