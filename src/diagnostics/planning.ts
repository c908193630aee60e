import type { Ruler, Ticks } from "../length/types.ts";
import type { PieceTold } from "./purposes.ts";
import { NOWHERE, tell } from "./tell.ts";

import type { Diagnostic, Place } from "./types.ts";

/** Codes that mean: the file is right, but no plan can be made from it. That is proved. */
export const NO_PLAN_CODES: readonly string[] = ["PIECE-TOO-WIDE", "STOCK-SHORT", "PIECE-LONGER-THAN-BOLT"];

/** The file is right, and no plan was found: there may be one all the same. */
export const NONE_FOUND_CODE = "NONE-FOUND";

interface PieceAt {
  piece: PieceTold;
  ruler: Ruler;
  fabric: string;
  path: string;
  at: Place | null;
}

const of = ({ piece, ruler, fabric }: PieceAt) => ({ piece, ruler, fabric });

/** How many more pieces of one kind of cloth would hold everything. */
export interface Wanting {
  /** In trade words: `fat quarter`. */
  cloth: string;
  more: number;
  toHand: number;
  /** One fewer is proved not to be enough. */
  proven: boolean;
}

/** How long pieces are cut: each in one piece, all joined from strips, or some of each. */
type JoinWay = "whole" | "joined" | "mixed";

/** Pieces that no cloth was left for. */
export interface Missing {
  count: number;
  /** As the ruler reads it. */
  size: string;
  letter: string;
}

/** Lengths cut from one run, alike. */
export interface LengthsCut {
  count: number;
  length: Ticks;
}

/** What is told of each, to be put in words. */
export interface PlanningFacts {
  pieceTooWide: {
    piece: PieceTold;
    ruler: Ruler;
    fabric: string;
    found: { size: string; usable: string; over: string; turnHelps: boolean; lengthwiseHelps: boolean };
  };
  pieceLongerThanBolt: {
    piece: PieceTold;
    ruler: Ruler;
    fabric: string;
    found: { size: string; bolt: string };
  };
  pieceJoined: { piece: PieceTold; ruler: Ruler; fabric: string; lengths: readonly LengthsCut[] };
  joinCompared: {
    fabric: string;
    chosen: "joined" | "whole" | "mixed";
    costs: readonly { way: JoinWay; buy: string; used: string }[];
  };
  noneFound: { fabric: string; missing: readonly Missing[]; wanting: Wanting | null };
  stockShort: { fabric: string; missing: readonly Missing[]; wanting: Wanting | null; stacked: boolean };
  searchCutShort: { fabrics: readonly string[] };
  notProven: { fabric: string; used: string; least: string };
}

/** A piece that fits the fabric in no turn it is allowed. Lengths come printed as the maker's ruler reads. */
export function pieceTooWide(
  where: PieceAt,
  found: { size: string; usable: string; over: string; turnHelps: boolean; lengthwiseHelps: boolean },
): Diagnostic {
  return tell("PIECE-TOO-WIDE", "error", where, "pieceTooWide", { ...of(where), found });
}

/** A piece that takes more of the bolt than there is on one. Lengths come printed. */
export function pieceLongerThanBolt(where: PieceAt, found: { size: string; bolt: string }): Diagnostic {
  return tell("PIECE-LONGER-THAN-BOLT", "error", where, "pieceLongerThanBolt", { ...of(where), found });
}

/** A long piece is cut from strips sewn end to end. */
export function pieceJoined(where: PieceAt, lengths: readonly LengthsCut[]): Diagnostic {
  return tell("PIECE-JOINED", "info", where, "pieceJoined", { ...of(where), lengths });
}

/** Joining and cutting lengthwise were both worked out; lengths come printed as the shop says them. */
export function joinCompared(
  fabric: string,
  chosen: "joined" | "whole" | "mixed",
  costs: readonly { way: JoinWay; buy: string; used: string }[],
): Diagnostic {
  return tell("JOIN-COMPARED", "info", NOWHERE, "joinCompared", { fabric, chosen, costs });
}

/** No way was found to cut everything from the cloth there is, and that there is none is not proved. */
export function noneFound(
  fabric: string,
  missing: readonly Missing[],
  wanting: Wanting | null,
  at: Place | null,
): Diagnostic {
  return tell(NONE_FOUND_CODE, "error", { path: "", at }, "noneFound", { fabric, missing, wanting });
}

/** There is not enough cloth to hand, and no bolt to take the rest from. */
export function stockShort(
  fabric: string,
  missing: readonly Missing[],
  wanting: Wanting | null,
  at: Place | null,
  stacked = false,
): Diagnostic {
  return tell("STOCK-SHORT", "error", { path: "", at }, "stockShort", { fabric, missing, wanting, stacked });
}

/** The search was ended before it could prove that nothing shorter exists. */
export function searchCutShort(fabrics: readonly string[]): Diagnostic {
  return tell("SEARCH-CUT-SHORT", "info", NOWHERE, "searchCutShort", { fabrics });
}

export function notProven(fabric: string, used: string, least: string): Diagnostic {
  return tell("NOT-PROVEN", "info", NOWHERE, "notProven", { fabric, used, least });
}
