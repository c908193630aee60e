import { turnIn } from "../turning/turn-in.ts";
import type { Node } from "./sequence.ts";

export type Quarter = 0 | 90 | 180 | 270;
export const QUARTERS: readonly Quarter[] = [0, 90, 180, 270];

/** A place in a rectangle of `across` x `down`, in the frame of the rectangle turned clockwise. */
export function turnNode([x, y]: Node, turn: number, across: number, down: number): Node {
  const turned = turnIn({ x, y }, turn, across, down, (a, b) => a - b);
  return [turned.x, turned.y];
}

/** What a picture of patches is made of. */
export interface Tile {
  corners: readonly Node[];
  fabric: string;
  /** Which way a print points; null when it has no direction. */
  up: number | null;
}

/** The same text for pictures that are alike, whatever the order of patches and of corners. */
export function pictureKey(tiles: readonly Tile[], turn: number, across: number, down: number): string {
  const told = tiles.map(({ corners, fabric, up }) => {
    const turned = corners.map((corner) => turnNode(corner, turn, across, down).join(" "));
    const first = turned.reduce((best, text, i) => (text < (turned[best] ?? "") ? i : best), 0);
    const outline = [...turned.slice(first), ...turned.slice(0, first)];
    return `${outline.join(",")} ${fabric} ${up === null ? "" : (up + turn) % 360}`;
  });
  const [wide, high] = turn % 180 === 0 ? [across, down] : [down, across];
  return [`${wide},${high}`, ...told.sort()].join("\n");
}
