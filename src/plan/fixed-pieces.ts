import type { Ticks } from "../length/types.ts";
import type { FabricSpec, FixedClothSpec } from "../spec/types.ts";
import { boughtName, usableWidth } from "../stock/index.ts";
import type { FixedPiece } from "./pose-problem.ts";
import type { FixedStock, SquareUp } from "./types.ts";

/** Cloth of fixed sizes that one fabric may be cut from, besides the bolt. */
export interface FixedStockOf {
  /** There already: used first, at no cost. */
  toHand: FixedPiece[];
  /** Can be bought; `available` is the most that could be of use. */
  offers: FixedPiece[];
}

/**
 * What the file says of cloth in fixed sizes, trimmed and without a size that trimming leaves nothing of.
 * @param most pieces to cut: more cloth than that is never of use
 */
export function fixedStockOf(fabric: FabricSpec, most: number): FixedStockOf {
  const usable = usableWidth(fabric);
  const read = (cloth: FixedClothSpec, from: "to-hand" | "shop"): FixedPiece => {
    const { trim, count, strip, price, currency, squareUp = 0 } = cloth;
    return {
      name: from === "shop" ? boughtName(cloth.name) : cloth.name,
      across: (cloth.fullWidth ? usable : cloth.across) - 2 * trim,
      along: cloth.along - 2 * trim,
      available: Math.min(count ?? most, most),
      from,
      strip,
      trim,
      ...(squareUp === 0 ? {} : { squareUp: squareUpOf(cloth.fullWidth, squareUp) }),
      price,
      currency,
    };
  };
  const fit = ({ across, along }: FixedPiece) => across > 0 && along > 0;
  return {
    toHand: fabric.have.map((cloth) => read(cloth, "to-hand")).filter(fit),
    offers: fabric.readyCut.map((cloth) => read(cloth, "shop")).filter(fit),
  };
}

/** What squaring takes: a piece as wide as the fabric has its selvages for two sides. */
export function squareUpOf(fullWidth: boolean, lost: Ticks): SquareUp {
  return { across: fullWidth ? 0 : lost, along: lost };
}

/** A kind of cloth as the plan tells of it, with so many of it cut into. */
export function asStock(piece: FixedPiece, used = 0): FixedStock {
  const { name, across, along, available, from = "to-hand", strip = false, trim = 0, price = null } = piece;
  const squared = piece.squareUp === undefined || strip ? {} : { squareUp: piece.squareUp };
  const begun = piece.begun === true ? { begun: true as const } : {};
  const edge = piece.atEdge === true ? { atEdge: true as const } : {};
  return { name, across, along, trim, ...squared, from, strip, ...begun, ...edge, available, used, price };
}

/** Like pieces together, each kind under a name of its own: lays are told by it. */
export function gatherFixed(pieces: readonly FixedPiece[]): FixedPiece[] {
  return gatherPlaced(pieces).kinds;
}

/** The same, with the kind that each piece has become. */
export function gatherPlaced(pieces: readonly FixedPiece[]): { kinds: FixedPiece[]; kindOf: number[] } {
  const gathered: FixedPiece[] = [];
  const kindOf: number[] = [];
  for (const piece of pieces) {
    const { available, ...kind } = piece;
    const at = gathered.findIndex(({ available: _, ...known }) => sameKind(known, kind));
    const found = gathered[at];
    if (found !== undefined) gathered[at] = { ...found, available: found.available + available };
    else gathered.push(piece);
    kindOf.push(found === undefined ? gathered.length - 1 : at);
  }
  const names = new Map<string, number>();
  const kinds = gathered.map((piece) => {
    const before = names.get(piece.name) ?? 0;
    names.set(piece.name, before + 1);
    return before === 0 ? piece : { ...piece, name: `${piece.name} (${before + 1})` };
  });
  return { kinds, kindOf };
}

function sameKind(a: Omit<FixedPiece, "available">, b: Omit<FixedPiece, "available">): boolean {
  const key = (piece: typeof a) => {
    const {
      name,
      across,
      along,
      from = "to-hand",
      strip = false,
      trim = 0,
      price = null,
      squareUp,
      begun,
      atEdge,
    } = piece;
    return JSON.stringify([name, across, along, from, strip, trim, price, squareUp, begun, atEdge]);
  };
  return key(a) === key(b);
}
