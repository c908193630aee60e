import type { Ticks } from "../length/types.ts";
import { exactToNumber } from "../quilt/index.ts";
import type { QuiltTop } from "../quilt/types.ts";
import { bulkOf, leastBulk } from "./bulk.ts";
import { type Choice, fewestDenied, type Wish } from "./frustration.ts";
import { juncturesOf } from "./junctures.ts";
import { pinOrders } from "./pins.ts";
import type { ReadTop } from "./read-top.ts";
import {
  allSeams,
  FIXED,
  type Junction,
  junctionsOf,
  type Seam,
  type Sharing,
  seamsOfDesign,
  softSide,
} from "./seams.ts";
import type { BlockPressing, Press, PressedSeam, Pressing, RowPressing } from "./types.ts";

type Placed = Pressing["placed"];

interface Answer {
  sharing: Sharing;
  placed: Placed;
  seams: Seam[];
  junctions: Junction[];
  choice: Choice;
  wishes: Wish[];
  numberOf: (seam: Seam) => number;
}

function answer(top: QuiltTop, read: ReadTop, sharing: Sharing, placed: Placed): Answer {
  const seams = allSeams(top, read, sharing);
  const numbers = new Map<string, number>();
  const name = ({ joining, index }: Pick<Seam, "joining" | "index">): string =>
    sharing.byRow ? joining : `${joining}#${index}`;
  // The first of all: its choice is always 1.
  numbers.set(name({ joining: FIXED, index: 0 }), 0);
  for (const seam of seams) if (!numbers.has(name(seam))) numbers.set(name(seam), numbers.size);
  const numberOf = (seam: Seam): number => numbers.get(name(seam)) ?? 0;
  const junctions = junctionsOf(seams);
  // They nest when one is pressed each way: chosen unlike, or alike when one of them stands reversed.
  const wishes = junctions.map(
    ({ a, b }): Wish => ({ a: numberOf(a), b: numberOf(b), same: a.flip !== b.flip }),
  );
  return { sharing, placed, seams, junctions, choice: fewestDenied(numbers.size, wishes), wishes, numberOf };
}

const PLACINGS: readonly Placed[] = ["second-columns", "second-rows", "chequered", "turned-blocks"];

function variantsBy(top: QuiltTop, read: ReadTop, placed: Placed): Sharing["variantOf"] {
  const turned = new Set(
    read.cells.filter(({ turn }) => turn === 90 || turn === 270).map(({ block }) => block),
  );
  return (block) => {
    const at = top.blocks[block];
    if (at === undefined) return "";
    const odd = {
      "everywhere-alike": false,
      "second-columns": at.column % 2 === 1,
      "second-rows": at.row % 2 === 1,
      chequered: (at.row + at.column) % 2 === 1,
      "turned-blocks": turned.has(block),
    }[placed];
    return odd ? "B" : "A";
  };
}

/** Fewest first; among equals the one that is easiest to say. */
function best(answers: readonly Answer[]): Answer | undefined {
  return [...answers].sort((a, b) => a.choice.denied - b.choice.denied)[0];
}

/**
 * Chooses which way every seam is pressed, so that as many as can be of the seams that meet across a joining
 * seam lie opposite and nest. All copies of a block are pressed alike; where that leaves places un-nested and a
 * second way of pressing the same block, set in a simple pattern, leaves fewer, that is taken and named. Among
 * pressings that nest alike, the one with the least bulk.
 * @param limit most layers of cloth wanted where seams meet
 */
export function choosePressing(top: QuiltTop, read: ReadTop, limit: number): Pressing {
  const simple: Sharing = { byRow: true, towardPlain: true, variantOf: () => "" };
  const alike = [answer(top, read, simple, "everywhere-alike")];
  const free = { ...simple, byRow: false };
  if (alike[0]?.choice.denied !== 0) {
    alike.push(answer(top, read, { ...simple, towardPlain: false }, "everywhere-alike"));
    // Any seam for itself: no sharing but the blocks' own can do better.
    alike.push(answer(top, read, free, "everywhere-alike"));
  }
  const one = best(alike);
  if (one === undefined) throw new Error("no way of pressing");
  const least = alike.at(-1)?.choice ?? one.choice;
  let taken = one;
  if (one.choice.denied > 0) {
    const two = PLACINGS.flatMap((placed) => {
      const variantOf = variantsBy(top, read, placed);
      return [simple, free].map((sharing) => answer(top, read, { ...sharing, variantOf }, placed));
    });
    const better = best(two);
    if (better !== undefined && better.choice.denied < one.choice.denied) taken = better;
  }
  const proven = taken === one ? least.proven : taken.choice.denied === 0;
  return {
    ...told(top, read, taken, limit),
    proven: proven || taken.choice.denied === 0,
    alike: { open: least.denied, proven: least.proven || least.denied === 0 },
  };
}

type Placer = (x: number, y: number) => { x: Ticks; y: Ticks };

/** Whole parts of a tick to ticks; for a top on point, turned back into the quilt as it hangs. */
function placer(tilted: QuiltTop | null, scale: number): Placer {
  if (tilted === null) return (x, y) => ({ x: Math.round(x / scale), y: Math.round(y / scale) });
  const [left, upper] = [exactToNumber(tilted.centre.x), exactToNumber(tilted.centre.y)];
  const over = scale * Math.SQRT2;
  return (x, y) => ({ x: Math.round(left + (x - y) / over), y: Math.round(upper + (x + y) / over) });
}

function told(
  top: QuiltTop,
  read: ReadTop,
  taken: Answer,
  limit: number,
): Omit<Pressing, "proven" | "alike"> {
  const { sharing, placed, seams, junctions, wishes, numberOf } = taken;
  const junctures = juncturesOf(top.designs, read, seams);
  const { choice, proven } = leastBulk(junctures, taken.choice, numberOf, wishes, limit);
  const here = placer(null, read.scale);
  const inTop = placer(read.tilted ? top : null, read.scale);
  const onwards = (seam: Seam): boolean => (choice.chosen[numberOf(seam)] === 1) !== seam.flip;
  const reads = (seam: Seam): Press => {
    const positive = onwards(seam);
    return seam.upright ? (positive ? "right" : "left") : positive ? "down" : "up";
  };
  const pressed = (seam: Seam, place: Placer): PressedSeam => {
    const { x, y, across, down } = seam.box;
    const [from, to] = [place(x, y), place(x + across, y + down)];
    return { x1: from.x, y1: from.y, x2: to.x, y2: to.y, press: reads(seam), level: seam.level };
  };
  const variants = variantsUsed(top, sharing);
  const blocks: BlockPressing[] = [];
  for (const [design, used] of variants.used.entries()) {
    for (const [variant, count] of used) {
      const own = seamsOfDesign(read, design, `design${design}${variant}`);
      blocks.push({
        design,
        variant: used.size > 1 ? variant : "",
        count,
        seams: own.map((seam) => pressed(seam, here)),
      });
    }
  }
  const open = junctions.filter(({ a, b }) => reads(a) === reads(b));
  return {
    junctions: junctions.length,
    open: open.map(({ x, y }) => inTop(x, y)),
    variants: variants.used.some((used) => used.size > 1) ? 2 : 1,
    placed,
    blocks,
    variantOf: top.blocks.map((_, block) => variants.of[block] ?? ""),
    lines: read.centre.kind === "join" && read.centre.way === "across" ? "columns" : "rows",
    rows: rowsTold(read, seams, sharing, reads),
    seams: seams.filter(({ joining }) => /^(top|border)/.test(joining)).map((seam) => pressed(seam, inTop)),
    bulk: bulkOf(junctures, onwards, limit, proven, inTop),
    pins: pinOrders(read, junctions, inTop),
  };
}

/** Which variants each design has, with how many blocks; a design that has one is not told apart. */
function variantsUsed(
  top: QuiltTop,
  sharing: Sharing,
): { used: Map<"" | "A" | "B", number>[]; of: ("" | "A" | "B")[] } {
  const used = top.designs.map(() => new Map<"" | "A" | "B", number>());
  const of = top.blocks.map(({ place }, block) => (place === "block" ? sharing.variantOf(block) : ""));
  for (const [block, { design }] of top.blocks.entries()) {
    const own = used[design];
    const variant = of[block] ?? "";
    own?.set(variant, (own.get(variant) ?? 0) + 1);
  }
  return {
    used,
    of: of.map((variant, block) => ((used[top.blocks[block]?.design ?? -1]?.size ?? 1) > 1 ? variant : "")),
  };
}

function rowsTold(
  read: ReadTop,
  seams: readonly Seam[],
  sharing: Sharing,
  reads: (seam: Seam) => Press,
): RowPressing[] {
  const { centre } = read;
  if (centre.kind !== "join") return [];
  return centre.parts.flatMap((part, row): RowPressing[] => {
    if (part.kind !== "join") return [];
    const own = seams.filter(({ joining }) => joining === `top.${row}`);
    const ways = new Set(own.map(reads));
    const soft = sharing.towardPlain ? softSide(part, read) : null;
    const sashes = part.parts.every(
      (each) => each.kind === "cell" && ["sash", "cornerstone"].includes(read.cells[each.ref]?.place ?? ""),
    );
    const toward =
      soft !== null && own.every((seam) => ["right", "down"].includes(reads(seam)) !== seam.flip);
    const [only] = ways;
    const press = toward ? soft : ways.size === 1 && only !== undefined ? only : null;
    return [{ row: row + 1, of: sashes ? "sashes" : "blocks", press }];
  });
}
