import type { Ticks } from "../length/types.ts";
import { type Joining, joinFromStrips, needsJoin } from "./joins.ts";
import { type Marked, mergeMarked } from "./merge.ts";
import type { CutList, CutPiece } from "./types.ts";

/** One way of making the long pieces of a fabric. */
export interface JoinedWay {
  way: "whole" | "joined" | "mixed";
  cutList: CutList;
}

/** Each free choice doubles the ways to work out, so only so many are tried apart. */
const CHOICES = 3;

/**
 * The ways a fabric's long pieces may be made, where the maker allows both joining and cutting along the
 * selvage. A fabric without such pieces has one way. Beyond three such pieces, the rest are joined.
 */
export function waysOfJoining(cutList: CutList, usable: Ticks, joining: Joining): JoinedWay[] {
  const joinable = cutList.pieces.map((piece) =>
    needsJoin(piece, usable) && piece.cut === "either" ? joinFromStrips(piece, usable, joining) : null,
  );
  const open = joinable.flatMap((joined, index) => (joined === null ? [] : [index]));
  if (open.length === 0) return [{ way: "whole", cutList }];
  const apart = open.slice(0, CHOICES);
  return Array.from({ length: 2 ** apart.length }, (_, choice): JoinedWay => {
    const kept = new Set(apart.filter((_, bit) => ((choice >> bit) & 1) === 0));
    const pieces = cutList.pieces.map((piece, index) => ({
      piece: kept.has(index) ? piece : (joinable[index] ?? piece),
      marks: [index],
    }));
    const way = kept.size === open.length ? "whole" : kept.size === 0 ? "joined" : "mixed";
    return { way, cutList: { fabric: cutList.fabric, pieces: inTheirBags(pieces, cutList) } };
  });
}

/** The pieces gathered anew, each in the bag it was listed for: the sewing is told by those letters, whichever way is taken. */
function inTheirBags(pieces: readonly Marked[], { fabric, pieces: listed }: CutList): CutPiece[] {
  return mergeMarked(pieces, fabric.print)
    .map(({ piece, marks }) => ({ piece, first: Math.min(...marks) }))
    .sort((a, b) => a.first - b.first)
    .map(({ piece, first }) => ({ ...piece, letter: listed[first]?.letter ?? piece.letter }));
}
