import type { CutPiece } from "../../cutlist/types.ts";
import type { PackingItem, Section, StockLayout } from "../../engine/types.ts";
import { nth } from "../../length/nth.ts";
import type { Ticks } from "../../length/types.ts";
import type { PlanSettings } from "../request.ts";
import type { Lay, Part } from "../types.ts";
import { buildBand, buildStrip, type Frame, type LaidItem } from "./build-strip.ts";
import { stackLimit } from "./flag-steps.ts";
import {
  byLikeness,
  cutInto,
  like,
  likeness,
  moved,
  stripsAndBands,
  transposed,
  wasteLeaf,
} from "./parts.ts";

/** The cloth a layout is cut from: its name and its usable size, straightening included. */
export interface Cloth {
  source: Lay["source"];
  name: string;
  across: Ticks;
  along: Ticks;
  /** Cut off the side that is cut first. */
  straighten: Ticks;
  /** It is one strip already, cut as high as it is. */
  strip: boolean;
  /** Offcuts at least this big both ways are kept. */
  keepFrom: Ticks;
  /** Between two marks of the ruler. Default: every tick is one. */
  mark?: Ticks;
  /** Longest cut along a stacked segment. Default: any. */
  reach?: Ticks;
}

/** What of a plan's settings decides how strips are cut up: all lays of a plan are built with the same. */
export function cuttingOf(settings: PlanSettings): Required<Pick<Cloth, "keepFrom" | "mark" | "reach">> {
  const { keepFrom, ruler } = settings;
  return { keepFrom, mark: ruler.mark, reach: stackLimit(settings).width };
}

/** Items as they are laid, with how those stand that are shapes; a piece has its item's index. */
export function laidItems(items: readonly PackingItem[], pieces: readonly CutPiece[]): LaidItem[] {
  return items.map(({ across, along }, i) => {
    const stands = pieces[i]?.nest;
    return stands === undefined ? { across, along } : { across, along, stands };
  });
}

/**
 * Turns one layout into a lay: parts with coordinates, in cutting order. Lengthwise sections are cut
 * first, while the cloth is long; then strips, widest first, equal strips together.
 */
export function buildLay(cloth: Cloth, layouts: readonly StockLayout[], items: readonly LaidItem[]): Lay {
  const swapped = layouts.some((layout) => layout.firstCut === "along");
  const reach = cloth.reach === undefined ? {} : { reach: cloth.reach };
  const frame: Frame = { items, swapped, keepFrom: cloth.keepFrom, mark: cloth.mark ?? 1, ...reach };
  const [run, room] = swapped ? [cloth.along, cloth.across] : [cloth.across, cloth.along];
  const sections = layouts.flatMap((layout) =>
    layout.sections.flatMap((section) => copies(cloth.strip ? asHighAs(room, section) : section, run, frame)),
  );
  const parts = inCuttingOrder(sections);
  if (cloth.straighten > 0) parts.unshift(wasteLeaf("straightening", run, cloth.straighten));
  const uncut = room - parts.reduce((sum, part) => sum + part.along, 0);
  if (uncut < 0) throw new Error(`${cloth.name}: the strips are ${-uncut} ticks longer than the cloth`);
  if (uncut > 0) parts.push(wasteLeaf("uncut-end", run, uncut));
  const root = numbered(cutInto("stock", "across", parts));
  const { source, name, across, along } = cloth;
  return { source, name, across, along, root: swapped ? transposed(root) : root };
}

/**
 * What is still to cut of a lay when some of its strips are cut off: the others move up and are numbered anew.
 * @param left parts of its root that are still there
 * @param name what the cloth is called from now on
 */
export function layOfRest(lay: Lay, left: readonly Part[], name: string): Lay {
  const parts = left.map((part) => moved(part, -part.x, -part.y));
  const root = numbered(cutInto("stock", lay.root.cut ?? "across", parts));
  return { source: "fixed", name, across: root.across, along: root.along, root };
}

/** A strip that is cut already stays as high as it is: lower pieces are trimmed from it. */
function asHighAs(room: Ticks, section: Section): Section {
  return section.kind === "bands" ? section : { ...section, column: { ...section.column, along: room } };
}

function copies(section: Section, run: Ticks, frame: Frame): Part[] {
  const part =
    section.kind === "strips"
      ? buildStrip(section.column, run, frame)
      : buildBandSection(section, run, frame);
  return Array.from({ length: section.count }, () => part);
}

/**
 * A length of the cloth cut lengthwise: bands at the left, widest first, then the width that remains, cut
 * into strips of its own.
 */
function buildBandSection(section: Extract<Section, { kind: "bands" }>, run: Ticks, frame: Frame): Part {
  const bands = section.bands
    .flatMap((band) => Array.from({ length: band.count }, () => buildBand(band, section.along, frame)))
    .sort((a, b) => b.across - a.across || byLikeness(a, b));
  const restAcross = run - bands.reduce((sum, band) => sum + band.across, 0);
  if (restAcross > 0) {
    const strips = inCuttingOrder(section.rest.flatMap((strip) => copies(strip, restAcross, frame)));
    const end = section.along - strips.reduce((sum, strip) => sum + strip.along, 0);
    if (end > 0) strips.push(wasteLeaf("strip-end", restAcross, end));
    const bare = strips.length === 1 && strips[0]?.parts.length === 0;
    bands.push(bare ? nth(strips, 0) : cutInto("rest", "across", strips));
  }
  return cutInto("band-section", "along", bands);
}

/**
 * Lengthwise sections, then the widest strips; equal ones gathered. Of one width those that are only
 * subcut come before those that are trimmed as well, the most numerous first, the fullest first.
 */
function inCuttingOrder(parts: readonly Part[]): Part[] {
  const counts = new Map<string, number>();
  for (const part of parts) counts.set(likeness(part), (counts.get(likeness(part)) ?? 0) + 1);
  return [...parts].sort(
    (a, b) =>
      Number(b.role === "band-section") - Number(a.role === "band-section") ||
      b.along - a.along ||
      segmentsIn(a) - segmentsIn(b) ||
      (counts.get(likeness(b)) ?? 0) - (counts.get(likeness(a)) ?? 0) ||
      endOf(a) - endOf(b) ||
      byLikeness(a, b),
  );
}

function segmentsIn(strip: Part): number {
  return strip.parts.filter(({ role }) => role === "segment").length;
}

function endOf(strip: Part): number {
  const last = strip.parts.at(-1);
  if (last?.role === "segment") return endOf(last.parts[0] ?? last);
  return last?.cause === "strip-end" ? last.across : 0;
}

/** Numbers strips and bands in cutting order, and says which of them are alike. */
function numbered(root: Part): Part {
  const kinds = new Map<string, number>();
  for (const part of stripsAndBands(root)) {
    if (!kinds.has(likeness(part))) kinds.set(likeness(part), kinds.size);
  }
  let next = 1;
  // What a strip or band holds has no number: it is left as it is, however many pieces that are.
  const visit = (part: Part): Part =>
    isNumbered(part)
      ? like(part, { ...part, number: next++, kind: kinds.get(likeness(part)) ?? -1 })
      : part.parts.length === 0
        ? part
        : { ...part, parts: part.parts.map(visit) };
  return visit(root);
}

function isNumbered(part: Part): boolean {
  return part.role === "strip" || part.role === "band";
}
