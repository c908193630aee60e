import type { Diagnostic, Place } from "./types.ts";

/** Codes that mean: the file is right, but no plan can be made from it. That is proved. */
export const NO_PLAN_CODES: readonly string[] = ["PIECE-TOO-WIDE", "STOCK-SHORT"];

/** The file is right, and no plan was found: there may be one all the same. */
export const NONE_FOUND_CODE = "NONE-FOUND";

interface PieceAt {
  /** The maker's name of the piece, or its size. */
  piece: string;
  fabric: string;
  path: string;
  at: Place | null;
}

/** A piece that fits the fabric in no turn it is allowed. Lengths come printed as the maker's ruler reads. */
export function pieceTooWide(
  where: PieceAt,
  found: { size: string; usable: string; over: string; turnHelps: boolean; lengthwiseHelps: boolean },
): Diagnostic {
  const help = [
    found.turnHelps ? "let it turn, so that its long side lies along the selvage (`turn: free`)" : "",
    found.lengthwiseHelps ? "cut it along the selvage (`cut: lengthwise`)" : "",
    "join it from strips (`join: straight`)",
    "or use a wider fabric",
  ].filter((text) => text !== "");
  return {
    code: "PIECE-TOO-WIDE",
    severity: "error",
    message: `${where.piece} (${found.size}) does not fit ${where.fabric}: the usable width is ${found.usable}, ${found.over} too narrow.`,
    hint: `What would help: ${help.join(", ")}.`,
    path: where.path,
    at: where.at,
  };
}

/** A long piece is cut from strips sewn end to end; `lengths` says what is cut: `2 lengths of 44 1/2 in`. */
export function pieceJoined(where: PieceAt, lengths: string): Diagnostic {
  return {
    code: "PIECE-JOINED",
    severity: "info",
    message: `${where.piece} in ${where.fabric} is longer than the fabric is wide: ${lengths} ${/^1 length[^s]/.test(lengths) ? "is" : "are"} cut from strips joined end to end.`,
    hint: "",
    path: where.path,
    at: where.at,
  };
}

/** Joining and cutting lengthwise were both worked out; lengths come printed as the shop says them. */
export function joinCompared(
  fabric: string,
  chosen: "joined" | "whole" | "mixed",
  costs: readonly { way: string; buy: string; used: string }[],
): Diagnostic {
  const ways = costs.map(({ way, buy, used }) => `${way}: buy ${buy} (${used} used)`).join("; ");
  const taken = { joined: "joined from strips", whole: "cut in one piece", mixed: "partly joined" }[chosen];
  return {
    code: "JOIN-COMPARED",
    severity: "info",
    message: `${fabric}: the long pieces are ${taken}. ${ways}.`,
    hint: "",
    path: "",
    at: null,
  };
}

/** How many more pieces of one kind of cloth would hold everything. */
export interface Wanting {
  /** In trade words: `fat quarter`. */
  cloth: string;
  more: number;
  toHand: number;
  /** One fewer is proved not to be enough. */
  proven: boolean;
}

/** No way was found to cut everything from the cloth there is, and that there is none is not proved. */
export function noneFound(
  fabric: string,
  missing: readonly string[],
  wanting: Wanting | null,
  at: Place | null,
): Diagnostic {
  const left = missing.length === 0 ? "" : ` The fullest attempt leaves ${missing.join(", ")}.`;
  const enough =
    wanting === null
      ? ""
      : ` With ${wanting.more} more ${wanting.cloth}${wanting.more === 1 ? "" : "s"} it can be done.`;
  return {
    code: NONE_FOUND_CODE,
    severity: "error",
    message: `${fabric}: no way was found to cut everything from this cloth, and it is not proved that there is none.${left}${enough}`,
    hint: "Search longer (`--thorough`), let more pieces turn, add cloth, or let the rest be bought from the bolt.",
    path: "",
    at,
  };
}

/** There is not enough cloth to hand, and no bolt to take the rest from. */
export function stockShort(
  fabric: string,
  missing: readonly string[],
  wanting: Wanting | null,
  at: Place | null,
  stacked = false,
): Diagnostic {
  const plural = ({ cloth, more }: Wanting) => `${more} more ${cloth}${more === 1 ? "" : "s"}`;
  const short =
    wanting === null
      ? "the cloth to hand does not hold everything"
      : `${wanting.proven ? "" : "at most "}${plural(wanting)} ${
          wanting.more === 1 ? "is" : "are"
        } needed: ${wanting.toHand} to hand, ${wanting.toHand + wanting.more} hold everything`;
  return {
    code: "STOCK-SHORT",
    severity: "error",
    message: `${fabric}: ${short}. Still to cut: ${missing.join(", ")}.`,
    hint: stacked
      ? "With stacked subcuts (`--style strips-3`) all of it comes from this cloth. Or add cloth, or let the rest be bought from the bolt."
      : "Add cloth, or let the rest be bought from the bolt.",
    path: "",
    at,
  };
}

/** The search was ended before it could prove that nothing shorter exists. */
export function searchCutShort(fabrics: readonly string[]): Diagnostic {
  return {
    code: "SEARCH-CUT-SHORT",
    severity: "info",
    message: `The search for ${fabrics.join(", ")} was ended by the clock: on another machine, or a less busy one, this plan may come out otherwise.`,
    hint: "Plan it again without --budget: the search is then counted instead of timed, and gives the same plan everywhere.",
    path: "",
    at: null,
  };
}

export function notProven(fabric: string, used: string, least: string): Diagnostic {
  return {
    code: "NOT-PROVEN",
    severity: "info",
    message: `${fabric}: the plan uses ${used}; it is proved only that nothing under ${least} can do.`,
    hint: "Allow more time to look further.",
    path: "",
    at: null,
  };
}
