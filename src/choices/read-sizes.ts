import { quiltSizeUnreadable } from "../diagnostics/choices.ts";
import { nearest } from "../diagnostics/nearest.ts";
import type { Diagnostic, Outcome } from "../diagnostics/types.ts";
import { familyOf, floor, formatLength, formatSize, parseLength, parseSize } from "../length/index.ts";
import type { Ruler, Ticks } from "../length/types.ts";
import {
  FINISHED_NAMES,
  finishedSize,
  MATTRESS_SIZES,
  mattressName,
  mattressSize,
  USUAL_DROP,
} from "../stock/index.ts";

/** A quilt so many blocks across and down. */
export interface InBlocks {
  across: number;
  down: number;
}

/** A finished size to come to, and where it comes from. */
export interface Target {
  across: Ticks;
  down: Ticks;
  /** In words: `mattress 60 x 80 in, drop 13 in at the sides and the foot`; empty for a size as written. */
  from: string;
}

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
  if (parts.length === 0) diagnostics.push(quiltSizeUnreadable(text));
  return { value: diagnostics.length > 0 ? null : asked, diagnostics };
}

function readOne(part: string, ruler: Ruler): SizeAsked["wanted"] | Diagnostic {
  const blocks = BLOCKS.exec(part);
  if (blocks !== null) {
    const size = { across: Number(blocks[1]), down: Number(blocks[2]) };
    const good = [size.across, size.down].every((count) => count >= 1 && count <= MOST_BLOCKS);
    return good
      ? { kind: "blocks", blocks: size }
      : quiltSizeUnreadable(part, `is not from 1 to ${MOST_BLOCKS} blocks each way`);
  }
  if (/^\d/.test(part)) {
    const size = parseSize(part, ruler.unit);
    if (!size.ok) return quiltSizeUnreadable(part, `is not a size: ${size.problem.message}`);
    const [across, down] = [Number(floor(size.across)), Number(floor(size.along))];
    if (across <= 0 || down <= 0) return quiltSizeUnreadable(part, "is not more than nothing");
    return { kind: "target", target: { across, down, from: "" } };
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
    return { kind: "target", target: { across, down, from: `usual ${name} size, common practice` } };
  }
  const mattress = mattressSize(named, family);
  if (mattress === null) {
    const mattresses = MATTRESS_SIZES.flatMap((size) => [size.name, ...size.alsoCalled, mattressName(size)]);
    const names = [...FINISHED_NAMES, ...mattresses];
    return quiltSizeUnreadable(part, "is no bed with a standard size", nearest(named, names));
  }
  const hangs: Record<Side, Ticks> = { left: 0, right: 0, foot: 0, head: 0 };
  let tuck = 0;
  let dropped = false;
  for (const clause of clauses) {
    const [, kind = "", rest = ""] = /^(drop|tuck)\s+(.*)$/i.exec(clause) ?? [];
    const [length = "", where = ""] = rest.split(/\s+(?:at|on|to)\s+(?:the\s+)?/i);
    const read = parseLength(length, ruler.unit);
    if (!read.ok) return quiltSizeUnreadable(part, `has no length after "${kind}": ${read.problem.message}`);
    const ticks = Number(floor(read.value));
    if (ticks < 0) return quiltSizeUnreadable(part, `has a ${kind} below nothing`);
    if (kind.toLowerCase() === "tuck") {
      tuck += ticks;
      continue;
    }
    const sides = sidesOf(where);
    if (sides === null) {
      return quiltSizeUnreadable(
        part,
        `drops at "${where}", which is none of sides, left, right, foot, head and all round`,
      );
    }
    for (const side of sides) hangs[side] = ticks;
    dropped = true;
  }
  const usual = USUAL_DROP[family];
  if (!dropped) for (const side of ["left", "right", "foot"] as const) hangs[side] = usual;
  const across = mattress.across + hangs.left + hangs.right;
  const down = mattress.along + hangs.head + hangs.foot + tuck;
  const bed = `${mattressName(mattress)} mattress ${formatSize(mattress.across, mattress.along, ruler)}`;
  const told = [
    bed,
    ...dropsSaid(hangs, ruler),
    ...(tuck === 0 ? [] : [`pillow tuck ${formatLength(tuck, ruler)}`]),
  ];
  return { kind: "target", target: { across, down, from: told.join(", ") } };
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

function dropsSaid(hangs: Readonly<Record<Side, Ticks>>, ruler: Ruler): string[] {
  const lengths = [...new Set(SIDES.map((side) => hangs[side]))].filter((length) => length > 0);
  return lengths.map((length) => {
    const sides = SIDES.filter((side) => hangs[side] === length);
    const both = sides.includes("left") && sides.includes("right");
    const named = [
      ...(both ? ["both sides"] : []),
      ...sides.filter((side) => !both || (side !== "left" && side !== "right")),
    ];
    const last = named.at(-1) ?? "";
    const list = named.length < 2 ? last : `${named.slice(0, -1).join(", ")} and ${last}`;
    return `drop ${formatLength(length, ruler)} at ${list}`;
  });
}
