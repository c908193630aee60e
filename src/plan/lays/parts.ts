import type { Ticks } from "../../length/types.ts";
import type { Part, PartRole, PlacedShape, WasteCause } from "../types.ts";

/** Builders of parts. All make a part at the origin; `moved` and `stackedUp` put it in its place. */

function blank(role: PartRole, across: Ticks, along: Ticks): Part {
  return {
    role,
    x: 0,
    y: 0,
    across,
    along,
    cut: null,
    parts: [],
    piece: null,
    turned: false,
    cause: null,
    keep: false,
    number: 0,
    kind: -1,
  };
}

export function pieceLeaf(piece: number, across: Ticks, along: Ticks, turned: boolean): Part {
  return { ...blank("piece", across, along), piece, turned };
}

/** A run of shapes: one leaf that holds them all. */
export function runLeaf(
  piece: number,
  across: Ticks,
  along: Ticks,
  turned: boolean,
  shapes: PlacedShape[],
): Part {
  return { ...pieceLeaf(piece, across, along, turned), shapes };
}

/** How many pieces a leaf is. */
export function piecesIn({ piece, shapes }: Pick<Part, "piece" | "shapes">): number {
  return piece === null ? 0 : (shapes?.length ?? 1);
}

export function wasteLeaf(cause: WasteCause, across: Ticks, along: Ticks): Part {
  const role: PartRole = cause === "straightening" || cause === "uncut-end" ? cause : "waste";
  return { ...blank(role, across, along), cause };
}

/** A part cut into `parts`, laid one after another in the order given: in y for `across`, in x for `along`. */
export function cutInto(role: PartRole, cut: "across" | "along", parts: readonly Part[]): Part {
  let reached = 0;
  const laid = parts.map((part) => {
    const placed = cut === "across" ? moved(part, 0, reached) : moved(part, reached, 0);
    reached += cut === "across" ? part.along : part.across;
    return placed;
  });
  const first = parts[0];
  const across = cut === "along" ? reached : (first?.across ?? 0);
  const along = cut === "across" ? reached : (first?.along ?? 0);
  return { ...blank(role, across, along), cut, parts: laid };
}

/** The part and everything in it, moved. */
export function moved(part: Part, dx: Ticks, dy: Ticks): Part {
  if (dx === 0 && dy === 0) return part;
  const { parts } = part;
  if (parts.length === 0) return { ...part, x: part.x + dx, y: part.y + dy };
  const inside = parts.map((inner) => moved(inner, dx, dy));
  return like(part, { ...part, x: part.x + dx, y: part.y + dy, parts: inside });
}

/** Axes swapped: what ran across runs along. A piece's quarter-turn turns with it. */
export function transposed(part: Part): Part {
  return {
    ...part,
    x: part.y,
    y: part.x,
    across: part.along,
    along: part.across,
    cut: part.cut === null ? null : part.cut === "across" ? "along" : "across",
    parts: part.parts.map(transposed),
    ...(part.shapes === undefined
      ? {}
      : { shapes: part.shapes.map(({ x, y, halfTurned }) => ({ x: y, y: x, halfTurned })) }),
  };
}

/** Every part of a tree, parents before children, in cutting order of their places. */
export function* everyPart(part: Part): Generator<Part> {
  yield part;
  for (const inner of part.parts) yield* everyPart(inner);
}

/** Strips and bands in cutting order; no part of one is another. */
export function* stripsAndBands(part: Part): Generator<Part> {
  if (part.role === "strip" || part.role === "band") yield part;
  else for (const inner of part.parts) yield* stripsAndBands(inner);
}

const known = new WeakMap<Part, string>();

/**
 * Text equal for parts that are cut exactly alike, wherever they lie. Remembered, but for pieces and waste, which are many
 * and soon told: strips share their parts.
 */
export function likeness(part: Part): string {
  const before = known.get(part);
  if (before !== undefined) return before;
  const text = describe(part);
  if (part.parts.length > 0) known.set(part, text);
  return text;
}

/** A part made of one that is cut exactly alike, so that this need not be found out again. */
export function like(part: Part, made: Part): Part {
  const before = known.get(part);
  if (before !== undefined) known.set(made, before);
  return made;
}

function describe(part: Part): string {
  const size = `${part.across}x${part.along}`;
  const run = part.shapes === undefined ? "" : `r${part.shapes.length}`;
  if (part.parts.length === 0)
    return `${size}${part.cause ?? `#${part.piece}${part.turned ? "t" : ""}${run}`}`;
  return `${size}${part.role}${part.cut}[${part.parts.map(likeness).join(",")}]`;
}

export function byLikeness(a: Part, b: Part): number {
  const [p, q] = [likeness(a), likeness(b)];
  return p < q ? -1 : p > q ? 1 : 0;
}
