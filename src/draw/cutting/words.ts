import { formatLength, formatMeasure, formatNumber, formatSize } from "../../length/format.ts";
import { roomToMark } from "../../length/marks.ts";
import type { Ruler, Ticks } from "../../length/types.ts";
import { leastLength } from "../../plan/proved/index.ts";
import type { FabricPlan, Part, Plan } from "../../plan/types.ts";
import type { Words } from "../../words/index.ts";

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
export function pieceWords(
  { across, along, nest }: FabricPlan["pieces"][number],
  ruler: Ruler,
  words: Words,
): string {
  const { spec, setting } = nest ?? { spec: null, setting: null };
  if (spec === null) return spokenSize(across, along, ruler);
  return words.drawings.cutting.shape(setting?.angle ?? null, spec.kind, spokenLength(along, ruler));
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

function wasteShare(fabric: FabricPlan, ruler: Ruler): string {
  const { bought, pieces } = fabric.waste;
  return percent(bought - pieces, bought, ruler);
}

/** What was proved, in words a maker can weigh. */
function proofWords(fabric: FabricPlan, ruler: Ruler, words: Words): string {
  const { bound, mix } = fabric;
  const { proof } = words.drawings.cutting;
  if (mix !== undefined) {
    if (!mix.proven) return proof.mixOpen;
    return mix.cost === null ? proof.mixFewest : proof.mixCheapest;
  }
  if (fabric.purchase === null) return proof.nothing;
  if (leastLength(fabric)) return proof.shortest;
  const gap = spokenLength(Math.max(0, bound.used - bound.least), ruler);
  return bound.purchaseProven ? proof.within(gap) : proof.open(gap);
}

function printWords(fabric: FabricPlan, words: Words): string {
  const { kind, axis } = fabric.print;
  const { print } = words.drawings.cutting;
  return kind === "none" ? print.none : print[kind][axis === "along" ? "along" : "across"];
}

function buyWords(
  fabric: FabricPlan,
  { decimal, language }: Pick<Ruler, "decimal" | "language">,
  words: Words,
): string {
  const { purchase, sold, stock = [] } = fabric;
  const { inHand, nothingMore, more } = words.drawings.cutting.buy;
  const yardage =
    purchase === null
      ? []
      : [formatMeasure(purchase.length, sold.unit, { typeset: true, decimal, language })];
  const readyCut = stock
    .filter(({ from, used }) => from === "shop" && used > 0)
    .map(({ name, used }) => `${used} × ${words.cutting.cloth(name)}`);
  const all = [...yardage, ...readyCut].join(" + ");
  if (all === "") return fabric.done === undefined ? inHand : nothingMore;
  return fabric.done === undefined ? all : more(all);
}

export interface Fact {
  caption: string;
  value: string;
}

/** Of a diagram's title; `bought` where it stands in the list of what to buy as well. */
export interface TitleFact extends Fact {
  bought: boolean;
}

export function titleFacts(fabric: FabricPlan, ruler: Ruler, words: Words): TitleFact[] {
  const usable = spokenLength(roomToMark(fabric.usable, ruler), ruler);
  const width = formatLength(fabric.width, ruler, { typeset: true });
  const { facts, widthOf } = words.drawings.cutting;
  return [
    { caption: facts.buy, value: buyWords(fabric, ruler, words), bought: true },
    {
      caption: facts.used,
      value: fabric.purchase === null ? "–" : spokenLength(fabric.bound.used, ruler),
      bought: true,
    },
    { caption: facts.usable, value: fabric.purchase === null ? "–" : widthOf(usable, width), bought: false },
    { caption: facts.inNone, value: wasteShare(fabric, ruler), bought: false },
    { caption: facts.print, value: printWords(fabric, words), bought: false },
    { caption: facts.proof, value: proofWords(fabric, ruler, words), bought: true },
  ];
}

/** Ways of naming strips left out of the drawing, longest first. */
export function gapWords(strips: readonly Part[], drawn: number, words: Words): readonly string[] {
  const [first, last] = [strips[0]?.number ?? 0, strips[strips.length - 1]?.number ?? 0];
  return words.drawings.cutting.gap(strips.length, drawn, first, last);
}

/** One sentence for people who hear the drawing. */
export function describe(plan: Plan, fabric: FabricPlan, words: Words): string {
  const strips = new Set<string>();
  const walk = (part: Part, lay: number): void => {
    if (part.role === "strip") strips.add(`${lay}:${part.number}`);
    for (const inner of part.parts) walk(inner, lay);
  };
  for (const [i, lay] of fabric.lays.entries()) walk(lay.root, i);
  const pieces = fabric.pieces.reduce((sum, { count }, i) => sum + count - (fabric.done?.cut[i] ?? 0), 0);
  const nothing = fabric.purchase === null && fabric.mix === undefined;
  const { described, describedPiece, describedProof } = words.drawings.cutting;
  const sizes = fabric.pieces.map((piece) =>
    describedPiece(piece.letter, piece.count, pieceWords(piece, plan.ruler, words)),
  );
  const buy = nothing ? null : buyWords(fabric, plan.ruler, words);
  const proof = describedProof(wasteShare(fabric, plan.ruler), proofWords(fabric, plan.ruler, words));
  return `${described(buy, strips.size, pieces, sizes)} ${proof}`;
}

/** How many of a bag are still to cut, where some lie cut. */
export function stillWords(count: number, cut: number, words: Words): string {
  const told = words.drawings.cutting;
  if (cut === 0) return told.count(count);
  return cut === count ? told.allCut(count) : told.stillToCut(count - cut, cut);
}
