import { nth } from "../length/nth.ts";
import type { Ticks } from "../length/types.ts";
import type { FabricSpec } from "../spec/types.ts";
import { forKits } from "./for-kits.ts";
import { type Joining, needsJoin } from "./joins.ts";
import { type LettersOfFabric, letterMarked } from "./letters.ts";
import { mergeMarked, mergeUses } from "./merge.ts";
import { addShapes } from "./shapes.ts";
import type { CutList, CutPiece } from "./types.ts";
import { type JoinedWay, waysOfJoining } from "./ways-of-joining.ts";

/** So many kits that are alike, and what one of them takes. */
export interface KitLists {
  kits: number;
  cutLists: readonly CutList[];
}

/** The same of one fabric; null where these kits have nothing of it. */
export interface KitList {
  kits: number;
  cutList: CutList | null;
}

/** Ways of making the long pieces that are tried together at most: each is packed. */
const MOST_WAYS = 8;

/**
 * One letter for each bag of a class: pieces of several sorts of kits that are cut alike share it, as in one quilt, and it
 * runs on from fabric to fabric. What is joined end to end is joined within a kit, so that only equal runs share one.
 * @returns for every sort of kit the letters of its bags, by fabric
 */
export function letterClass(
  sorts: readonly KitLists[],
  fabrics: readonly FabricSpec[],
  usable: (fabric: FabricSpec) => Ticks,
): Map<string, LettersOfFabric>[] {
  const known = sorts.map(() => new Map<string, LettersOfFabric>());
  let lettered = 0;
  for (const fabric of fabrics) {
    const own = sorts.flatMap(({ cutLists }, sort) => {
      const pieces = cutLists.find((list) => list.fabric.name === fabric.name)?.pieces ?? [];
      return pieces.map((piece, index) => ({ piece, sort, index }));
    });
    const runs = new Map<string, number[]>();
    const plain: number[] = [];
    own.forEach(({ piece }, mark) => {
      if (piece.joined === undefined && !needsJoin(piece, usable(fabric))) plain.push(mark);
      else runs.set(runKey(piece), [...(runs.get(runKey(piece)) ?? []), mark]);
    });
    const merged = mergeMarked(
      plain.map((mark) => ({ piece: nth(own, mark).piece, marks: [mark] })),
      fabric.print,
    );
    const joined = [...runs.values()].map((marks) => ({ piece: nth(own, nth(marks, 0)).piece, marks }));
    const bags = letterMarked([...merged, ...joined], lettered);
    lettered += bags.length;
    const letters = new Map(bags.flatMap(({ piece, marks }) => marks.map((mark) => [mark, piece.letter])));
    for (const [sort, letterOf] of known.entries()) {
      const pieces = own.flatMap((each, mark) =>
        each.sort === sort ? [{ ...each.piece, letter: letters.get(mark) ?? each.piece.letter }] : [],
      );
      letterOf.set(fabric.name, { bags: pieces, next: 0 });
    }
  }
  for (const letterOf of known)
    for (const [name, { bags }] of letterOf) letterOf.set(name, { bags, next: lettered });
  return known;
}

function runKey({ across, along, fullWidth, count, cut, join, joined, uses }: CutPiece): string {
  return JSON.stringify([across, along, fullWidth, count, cut, join, joined, uses]);
}

/** A way of making the long pieces of a fabric in all sorts of kits. */
export interface ClassWays {
  ways: JoinedWay[];
  /** No other combination of ways is left untried. */
  all: boolean;
}

/** Everything that is cut of one fabric for a class, in every way that its long pieces may be made. */
export function waysForClass(lists: readonly KitList[], usable: Ticks, joining: Joining): ClassWays {
  const fabric = lists.find(({ cutList }) => cutList !== null)?.cutList?.fabric;
  if (fabric === undefined) return { ways: [], all: true };
  const own = lists.map(({ cutList }) =>
    cutList === null ? [null] : waysOfJoining(cutList, usable, joining),
  );
  const count = own.reduce((product, ways) => product * ways.length, 1);
  const all = count <= MOST_WAYS;
  const most = Math.max(...own.map((ways) => ways.length));
  const chosen = all
    ? own.reduce<(JoinedWay | null)[][]>(
        (before, ways) => before.flatMap((some) => ways.map((way) => [...some, way])),
        [[]],
      )
    : Array.from({ length: most }, (_, i) => own.map((ways) => ways[Math.min(i, ways.length - 1)] ?? null));
  const ways = chosen.map((some): JoinedWay => {
    const kinds = new Set(some.flatMap((way) => (way === null ? [] : [way.way])));
    const [only] = kinds;
    return {
      way: kinds.size === 1 && only !== undefined ? only : "mixed",
      cutList: {
        fabric,
        pieces: inOneBatch(
          some.map((way, i) => ({ kits: nth(lists, i).kits, cutList: way?.cutList ?? null })),
          fabric,
        ),
      },
    };
  });
  return { ways, all };
}

/** Bags of one letter as one, with how many pieces each sort of kit has of it. */
function inOneBatch(lists: readonly KitList[], { print }: FabricSpec): CutPiece[] {
  const letters = [...new Set(lists.flatMap(({ cutList }) => cutList?.pieces.map((p) => p.letter) ?? []))];
  return letters.map((letter) => {
    const each = lists.map(({ cutList }) => cutList?.pieces.find((piece) => piece.letter === letter));
    const cut = lists.flatMap(({ kits }, i) => {
      const piece = each[i];
      return piece === undefined
        ? []
        : forKits({ fabric: nth(lists, i).cutList!.fabric, pieces: [piece] }, kits, true).pieces;
    });
    const [first, ...others] = cut;
    if (first === undefined) throw new Error("a letter that no piece has");
    let batch = first;
    for (const piece of others) batch = bothInOne(batch, piece, print);
    const inKits = lists.map(({ kits }, i) => ({ kits, each: each[i]?.count ?? 0 }));
    return { ...batch, letter, inKits };
  });
}

/**
 * Of what was cut together, the pieces of one kit: as they were listed for it, made in the way that was cut.
 * @param cut the pieces of the batch
 * @param sort which sort of kit, by its place in `inKits`
 * @throws Error when the batch holds no such kit: our fault
 */
export function piecesOfKit(
  cut: readonly CutPiece[],
  listed: CutList,
  sort: number,
  usable: Ticks,
  joining: Joining,
): CutPiece[] {
  const own = cut.filter(({ inKits }) => (inKits?.[sort]?.each ?? 0) > 0);
  const size = ({ across, along }: CutPiece) => [across, along].sort((a, b) => a - b).join(" ");
  for (const { cutList } of waysOfJoining(listed, usable, joining)) {
    const pieces = cutList.pieces.map((piece) => {
      const bag = own.find(({ letter }) => letter === piece.letter);
      const isIt = bag !== undefined && size(bag) === size(piece) && bag.inKits?.[sort]?.each === piece.count;
      // A pair of borders may have been laid one way.
      return isIt ? { ...piece, across: bag.across, along: bag.along, turnable: bag.turnable } : null;
    });
    if (pieces.length !== own.length || pieces.includes(null)) continue;
    return pieces
      .filter((piece) => piece !== null)
      .map((piece) =>
        piece.joined === undefined ? piece : { ...piece, joined: { ...piece.joined, perKit: true } },
      );
  }
  throw new Error("the pieces of a kit are not those that were cut for it");
}

/** Two bags' pieces in one bag, which are cut alike. */
function bothInOne(a: CutPiece, b: CutPiece, print: FabricSpec["print"]): CutPiece {
  const both: CutPiece = { ...a, count: a.count + b.count, uses: mergeUses([...a.uses, ...b.uses]) };
  if (a.shape !== undefined && b.shape !== undefined) both.shape = addShapes(a.shape, b.shape, print);
  if (a.rests !== undefined || b.rests !== undefined) both.rests = [...(a.rests ?? []), ...(b.rests ?? [])];
  if (a.corners !== undefined || b.corners !== undefined) both.corners = (a.corners ?? 0) + (b.corners ?? 0);
  if (a.seams !== undefined || b.seams !== undefined) both.seams = (a.seams ?? 0) + (b.seams ?? 0);
  return both;
}
