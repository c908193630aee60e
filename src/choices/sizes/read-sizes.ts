import { quiltSizeUnreadable } from "../../diagnostics/choices.ts";
import { nearest } from "../../diagnostics/nearest.ts";
import type { Diagnostic, Outcome } from "../../diagnostics/types.ts";
import { familyOf, floor, formatLength, formatSize, parseLength, parseSize } from "../../length/index.ts";
import type { Ruler, Ticks } from "../../length/types.ts";
import {
  FINISHED_NAMES,
  finishedSize,
  MATTRESS_SIZES,
  mattressName,
  mattressSize,
  USUAL_DROP,
} from "../../stock/index.ts";

/** A quilt so many blocks across and down. */
export interface InBlocks {
  across: number;
  down: number;
}

/** A finished size to come to, and where it comes from. */
export interface Target {
  across: Ticks;
  down: Ticks;
  /** Null for a size as written. */
  from: SizeFrom | null;
}

/** Where a finished size comes from: the usual size of a name, or a mattress and how far the quilt hangs beyond it. */
export type SizeFrom =
  | { kind: "usual"; name: string }
  | {
      kind: "bed";
      /** The name it has in shops. */
      name: string;
      mattress: string;
      drops: readonly { length: string; sides: readonly Side[] }[];
      /** How much is tucked under the pillows; null for nothing. */
      tuck: string | null;
    };

/** A size a maker asks for. */
export interface SizeAsked {
  /** As typed. */
  asked: string;
  wanted: { kind: "blocks"; blocks: InBlocks } | { kind: "target"; target: Target };
}

/** Most blocks one way: more make no quilt anyone sews. */
export const MOST_BLOCKS = 60;

const BLOCKS = /^(\d{1,3})\s*[x×]\s*(\d{1,3})(?:\s*blocks?)?$/i;
/** A comma before anything but a decimal parts sizes: `3x3,4x5` too. */
const COMMA = /,(?!\d)|,(?=\d+\s*[x×])/;
const CLAUSE = /\s+(?=(?:drop|tuck)\b)/i;
const SIDES = ["left", "right", "foot", "head"] as const;

type Side = (typeof SIDES)[number];

/** Reads `3x3, 4x5; 60 x 80 in; queen drop 12 in at sides and foot`. Every size that is none is told. */
export function readSizes(text: string, ruler: Ruler): Outcome<SizeAsked[]> {
  // Where semicolons part the sizes, commas are those of decimals.
  const parts = text
    .split(text.includes(";") ? ";" : COMMA)
    .map((part) => part.trim())
    .filter((part) => part !== "");
  const asked: SizeAsked[] = [];
  const diagnostics: Diagnostic[] = [];
  for (const part of parts) {
    const read = readOne(part, ruler);
    if ("code" in read) diagnostics.push(read);
    else asked.push({ asked: part, wanted: read });
  }
  if (parts.length === 0) diagnostics.push(quiltSizeUnreadable(text, { is: "none" }));
  return { value: diagnostics.length > 0 ? null : asked, diagnostics };
}

function readOne(part: string, ruler: Ruler): SizeAsked["wanted"] | Diagnostic {
  const blocks = BLOCKS.exec(part);
  if (blocks !== null) {
    const size = { across: Number(blocks[1]), down: Number(blocks[2]) };
    const good = [size.across, size.down].every((count) => count >= 1 && count <= MOST_BLOCKS);
    return good
      ? { kind: "blocks", blocks: size }
      : quiltSizeUnreadable(part, { is: "blocks", most: MOST_BLOCKS });
  }
  if (/^\d/.test(part)) {
    const size = parseSize(part, ruler.unit);
    if (!size.ok) return quiltSizeUnreadable(part, { is: "size", fault: size.problem.fault });
    const [across, down] = [Number(floor(size.across)), Number(floor(size.along))];
    if (across <= 0 || down <= 0) return quiltSizeUnreadable(part, { is: "not-above-nothing" });
    return { kind: "target", target: { across, down, from: null } };
  }
  return readBed(part, ruler);
}

/** `queen`, `uk king drop 30 cm at sides and foot tuck 35 cm`. */
function readBed(part: string, ruler: Ruler): SizeAsked["wanted"] | Diagnostic {
  const [named = "", ...clauses] = part.split(CLAUSE);
  const family = familyOf(ruler.unit);
  const finished = clauses.length === 0 ? finishedSize(named, family) : null;
  if (finished !== null) {
    const { name, across, down } = finished;
    return { kind: "target", target: { across, down, from: { kind: "usual", name } } };
  }
  const mattress = mattressSize(named, family);
  if (mattress === null) {
    const mattresses = MATTRESS_SIZES.flatMap((size) => [size.name, ...size.alsoCalled, mattressName(size)]);
    const names = [...FINISHED_NAMES, ...mattresses];
    return quiltSizeUnreadable(part, { is: "no-bed", near: nearest(named, names) });
  }
  const hangs: Record<Side, Ticks> = { left: 0, right: 0, foot: 0, head: 0 };
  let tuck = 0;
  let dropped = false;
  for (const clause of clauses) {
    const [, kind = "", rest = ""] = /^(drop|tuck)\s+(.*)$/i.exec(clause) ?? [];
    const [length = "", where = ""] = rest.split(/\s+(?:at|on|to)\s+(?:the\s+)?/i);
    const read = parseLength(length, ruler.unit);
    const of = kind.toLowerCase() === "tuck" ? "tuck" : "drop";
    if (!read.ok) return quiltSizeUnreadable(part, { is: "no-length", of, fault: read.problem.fault });
    const ticks = Number(floor(read.value));
    if (ticks < 0) return quiltSizeUnreadable(part, { is: "below-nothing", of });
    if (of === "tuck") {
      tuck += ticks;
      continue;
    }
    const sides = sidesOf(where);
    if (sides === null) {
      return quiltSizeUnreadable(part, { is: "no-side", found: where });
    }
    for (const side of sides) hangs[side] = ticks;
    dropped = true;
  }
  const usual = USUAL_DROP[family];
  if (!dropped) for (const side of ["left", "right", "foot"] as const) hangs[side] = usual;
  const across = mattress.across + hangs.left + hangs.right;
  const down = mattress.along + hangs.head + hangs.foot + tuck;
  const from: SizeFrom = {
    kind: "bed",
    name: mattressName(mattress),
    mattress: formatSize(mattress.across, mattress.along, ruler),
    drops: dropsOf(hangs, ruler),
    tuck: tuck === 0 ? null : formatLength(tuck, ruler),
  };
  return { kind: "target", target: { across, down, from } };
}

/** `sides and foot` (also where nothing is written), `left`, `all round`; null for other words. */
function sidesOf(where: string): Side[] | null {
  const words = where
    .toLowerCase()
    .split(/[\s,]+|\band\b/)
    .filter((word) => word !== "" && word !== "both" && word !== "the");
  if (words.length === 0) return ["left", "right", "foot"];
  const found: Side[] = [];
  for (const word of words) {
    const side = SIDES.find((each) => each === word);
    if (word === "all" || word === "round") found.push(...SIDES);
    else if (word === "sides" || word === "side") found.push("left", "right");
    else if (side === undefined) return null;
    else found.push(side);
  }
  return found;
}

/** Sides that hang equally far are told together. */
function dropsOf(
  hangs: Readonly<Record<Side, Ticks>>,
  ruler: Ruler,
): { length: string; sides: readonly Side[] }[] {
  const lengths = [...new Set(SIDES.map((side) => hangs[side]))].filter((length) => length > 0);
  return lengths.map((length) => ({
    length: formatLength(length, ruler),
    sides: SIDES.filter((side) => hangs[side] === length),
  }));
}
