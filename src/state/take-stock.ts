import type { InFile } from "../diagnostics/reading.ts";
import type { Diagnostic, Outcome } from "../diagnostics/types.ts";
import { workLetterUnknown, workNoneToSpoil, workTooFew, workTooMany } from "../diagnostics/work.ts";
import { nth } from "../length/nth.ts";
import type { Ticks } from "../length/types.ts";
import { piecesIn } from "../plan/index.ts";
import type { FabricPlan, Part } from "../plan/types.ts";
import type { Fact, SaidOf, What } from "../spec/index.ts";
import { LENGTH_IN_HAND } from "../stock/index.ts";
import { findStrips, numberedParts } from "./find-strips.ts";

/** What was done to a strip. `begun`: some of its pieces are cut. */
export type StripState = "cut" | "cut-off" | "spoiled" | "begun";

/** Strips of a cloth that come before one that is told of. */
export interface Taken {
  cloth: string;
  as: "cut" | "cut-off";
  numbers: number[];
}

/** What is known of the work on a fabric, by the plan that it was done from. */
export interface Work {
  /** By lay, then by number. */
  strips: Map<number, StripState>[];
  /** Piece leaves that are cut. */
  told: Set<Part>;
  /** By piece: how many lie in their bag. */
  bags: number[];
  /** By piece: how many were lost. */
  lost: number[];
  /** Usable width: as measured, else as planned. */
  width: Ticks;
  /** Width as measured where that is more than the strips that lie cut are long; null elsewhere. */
  wider: Ticks | null;
  /** Length of the bolt as measured; null when it was not. */
  left: Ticks | null;
  /** Strips that nothing is said of, taken as cut or as cut off since they come before others. */
  taken: Taken[];
  /** Cloth told of besides. */
  besides: { across: Ticks; along: Ticks; count: number }[];
}

function pieceLeaves(part: Part): Part[] {
  return part.parts.length === 0 ? (part.piece === null ? [] : [part]) : part.parts.flatMap(pieceLeaves);
}

/** Cloth that is as wide as the bolt: what is measured of the width holds for it. */
function isFullWidth({ usable }: FabricPlan, { source, name, across }: FabricPlan["lays"][number]): boolean {
  return source === "bolt" || name === LENGTH_IN_HAND || across === usable;
}

/** Whether a lay ends where the fabric does, so that a width measured holds for it. */
export function isAtEdge(fabric: FabricPlan, lay: FabricPlan["lays"][number]): boolean {
  return (
    isFullWidth(fabric, lay) || (fabric.stock ?? []).some(({ name, atEdge }) => atEdge && name === lay.name)
  );
}

/** How wide the cloth of a lay really is: what ends where the fabric does is as much narrower or wider as the fabric. */
export function widthOfLay(
  fabric: FabricPlan,
  lay: FabricPlan["lays"][number],
  { width }: Pick<Work, "width">,
): Ticks {
  return isAtEdge(fabric, lay) ? lay.across + width - fabric.usable : lay.across;
}

/** Reads what was said against the diagram it was said of. Every problem is told. */
export function takeStock(fabric: FabricPlan, said: Pick<SaidOf, "facts">): Outcome<Work> {
  const { pieces, lays, usable, done } = fabric;
  const diagnostics: Diagnostic[] = [];
  const work: Work = {
    strips: lays.map(() => new Map()),
    told: new Set(),
    bags: pieces.map((_, i) => done?.cut[i] ?? 0),
    lost: pieces.map(() => 0),
    width: usable,
    wider: null,
    left: null,
    taken: [],
    besides: [],
  };
  for (const { fact } of said.facts) {
    if (fact.kind === "wide") work.width = fact.width;
    if (fact.kind === "left") work.left = fact.length;
    if (fact.kind === "in-hand") work.besides.push(fact);
  }
  const whereOf = (i: number): InFile => ({ path: nth(said.facts, i).path, at: nth(said.facts, i).at });
  const facts = said.facts.map(({ fact }, i) => ({ fact, where: whereOf(i) }));
  for (const { fact, where } of facts) markStrips(fabric, work, fact, where, diagnostics);
  takeThoseBefore(fabric, work);
  settleStrips(fabric, work);
  for (const { fact, where } of facts) countPieces(fabric, work, fact, where, diagnostics);
  takeThoseBefore(fabric, work);
  return { value: diagnostics.length > 0 ? null : work, diagnostics };
}

function markStrips(
  fabric: FabricPlan,
  work: Work,
  fact: Fact,
  where: InFile,
  diagnostics: Diagnostic[],
): void {
  if (fact.kind !== "cut" && fact.kind !== "cut-off" && fact.kind !== "spoiled") return;
  if (fact.what.of === "pieces") return;
  const found = findStrips(fabric, fact.what, where);
  if ("problem" in found) {
    diagnostics.push(found.problem);
    return;
  }
  for (const { lay, number } of found.value) {
    const strips = nth(work.strips, lay);
    // What is spoiled stays so, in whatever order it is said.
    if (strips.get(number) !== "spoiled") strips.set(number, fact.kind);
  }
}

/**
 * Strips come off a cloth in their order. Those before one that is told of are off as well: where only a spoiled one is told of,
 * cut as planned; else cut off and not cut up.
 */
function takeThoseBefore({ lays }: FabricPlan, work: Work): void {
  lays.forEach(({ root, name }, l) => {
    const states = nth(work.strips, l);
    const last = Math.max(0, ...states.keys());
    const as = [...states.values()].every((state) => state === "spoiled") ? "cut" : "cut-off";
    const numbers = numberedParts(root).flatMap(({ number }) =>
      number < last && !states.has(number) ? [number] : [],
    );
    for (const number of numbers) states.set(number, as);
    if (numbers.length > 0) work.taken.push({ cloth: name, as, numbers });
  });
}

/** Pieces of the strips that are cut go into their bags; those of cloth that is not there do not. */
function settleStrips(fabric: FabricPlan, work: Work): void {
  fabric.lays.forEach((lay, l) => {
    const ends = widthOfLay(fabric, lay, work);
    for (const strip of numberedParts(lay.root)) {
      const state = nth(work.strips, l).get(strip.number);
      for (const leaf of pieceLeaves(strip)) {
        const there = leaf.x + leaf.across <= ends || nth(fabric.pieces, leaf.piece!).fullWidth;
        if (state === "cut" && there) take(work, leaf);
        else if (state === "spoiled" || (state === "cut" && !there))
          work.lost[leaf.piece!]! += piecesIn(leaf);
      }
    }
  });
}

function take(work: Work, leaf: Part, count = piecesIn(leaf)): void {
  work.told.add(leaf);
  work.bags[leaf.piece!]! += count;
}

function countPieces(
  fabric: FabricPlan,
  work: Work,
  fact: Fact,
  where: InFile,
  diagnostics: Diagnostic[],
): void {
  if (fact.kind !== "cut" && fact.kind !== "spoiled" && fact.kind !== "in-bag") return;
  const what: What = fact.what;
  if (what.of !== "pieces") return;
  const { letter, count } = what;
  const piece = fabric.pieces.findIndex((one) => one.letter === letter);
  if (piece < 0) {
    diagnostics.push(
      workLetterUnknown(
        where,
        letter,
        fabric.pieces.map((one) => one.letter),
      ),
    );
    return;
  }
  const cut = nth(work.bags, piece);
  if (fact.kind === "spoiled") {
    if (count > cut) {
      diagnostics.push(workNoneToSpoil(where, letter, count, cut));
      return;
    }
    work.bags[piece] = cut - count;
    work.lost[piece]! += count;
    return;
  }
  if (count < cut) {
    if (fact.kind === "cut") diagnostics.push(workTooFew(where, letter, count, cut));
    work.bags[piece] = count;
    work.lost[piece]! += cut - count;
    return;
  }
  takeInOrder(fabric, work, piece, count - cut);
  const most = nth(work.bags, piece);
  if (most < count) diagnostics.push(workTooMany(where, letter, count, most));
}

/** More of a bag than the strips told of give: from the next strips that hold it, in cutting order. */
function takeInOrder(fabric: FabricPlan, work: Work, piece: number, count: number): void {
  let open = count;
  fabric.lays.forEach((lay, l) => {
    const ends = widthOfLay(fabric, lay, work);
    for (const strip of numberedParts(lay.root)) {
      const state = nth(work.strips, l).get(strip.number);
      if (open === 0 || state === "cut" || state === "spoiled") continue;
      for (const leaf of pieceLeaves(strip)) {
        const there = leaf.x + leaf.across <= ends || nth(fabric.pieces, piece).fullWidth;
        if (open === 0 || leaf.piece !== piece || !there || work.told.has(leaf)) continue;
        // Of a run that is begun the shapes still to cut are planned anew.
        const count = Math.min(open, piecesIn(leaf));
        take(work, leaf, count);
        nth(work.strips, l).set(strip.number, "begun");
        open -= count;
      }
    }
  });
}
