import type { Corner } from "../quilt/patches.ts";
import { clipped, eighthsOf, type Line, mirrorPoint, turnPoint } from "./geometry.ts";

/** A piece of cloth as it lies, seen from above. */
export interface ClothLayer {
  /** Clockwise as seen, in ticks. */
  corners: Corner[];
  fabric: string;
  /** Bag it came out of; empty where it need not be told. */
  letter: string;
  /** Part it plays in the unit. */
  role: string;
  /** Where its print's up points as seen, in eighths clockwise from up; null for one without direction. */
  up: number | null;
  side: "right" | "wrong";
}

export type Segment = readonly [Corner, Corner];

/** One picture: cloth from the bottom up, and what is done to it. */
export interface Figure {
  layers: ClothLayer[];
  /** Lines ruled on the cloth. */
  ruled: Segment[];
  /** Stitching. */
  sewn: Segment[];
  /** Cuts to make. */
  cuts: Segment[];
  /** Across a seam, the way its allowances go: a point on the seam and the direction, as a vector of length one. */
  pressed: { at: Corner; to: Corner }[];
  /** Points where a seam stops or turns: a set-in corner. */
  stops: Corner[];
  /** Numbers to write on the cloth, in the order of work, each on the outline it speaks of. */
  numbers: { text: string; on: Corner[]; along?: Segment[] }[];
  /** Size to trim to, drawn round what stays. */
  trim: Corner[] | null;
  /** Edges of cloth that goes on: torn off in the picture. */
  torn: Segment[];
  /** Line under the picture. */
  says: string;
  /** Whether bag letters are written. */
  lettered: boolean;
  /** What stands before it in the row: a sign, or nothing. */
  sign: "" | "then" | "and" | "onto";
}

export function figure(layers: ClothLayer[], more: Partial<Figure> = {}): Figure {
  return {
    layers,
    ruled: [],
    sewn: [],
    cuts: [],
    pressed: [],
    stops: [],
    numbers: [],
    trim: null,
    torn: [],
    says: "",
    lettered: true,
    sign: "",
    ...more,
  };
}

const around = (value: number): number => ((value % 8) + 8) % 8;

/** Folded over a line: seen from its other side, the print with it. */
export function foldedOver(layer: ClothLayer, line: Line): ClothLayer {
  return {
    ...layer,
    corners: layer.corners.map((corner) => mirrorPoint(line, corner)).reverse(),
    up: layer.up === null ? null : around(Math.round(2 * eighthsOf(line) - layer.up)),
    side: layer.side === "right" ? "wrong" : "right",
  };
}

export function turnedBy(layer: ClothLayer, eighths: number): ClothLayer {
  return {
    ...layer,
    corners: layer.corners.map((corner) => turnPoint(corner, eighths)),
    up: layer.up === null ? null : around(layer.up + eighths),
  };
}

export function movedBy(layer: ClothLayer, dx: number, dy: number): ClothLayer {
  return { ...layer, corners: layer.corners.map(([x, y]): Corner => [x + dx, y + dy]) };
}

/** What lies on the right-hand side of a line; nothing where no cloth does. */
export function cutBy(layer: ClothLayer, line: Line): ClothLayer[] {
  const corners = clipped(layer.corners, line);
  return corners.length < 3 ? [] : [{ ...layer, corners }];
}

/** The same line walked the other way: its other side is kept. */
export function reversed({ at, run }: Line): Line {
  return { at, run: [-run[0], -run[1]] };
}

/**
 * Two layers sewn along a line and opened: what lies below, and what lay above folded out over the seam. The
 * allowances lie behind and are not seen.
 * @param seam walked so that the cloth kept is on its right-hand side
 */
export function opened(below: readonly ClothLayer[], above: readonly ClothLayer[], seam: Line): ClothLayer[] {
  return [
    ...below.flatMap((layer) => cutBy(layer, seam)),
    ...above.flatMap((layer) => cutBy(layer, seam)).map((layer) => foldedOver(layer, seam)),
  ];
}
