import { TRADE_SIZES } from "./trade-sizes.ts";

/*
 * Names by which a plan tells cloth of fixed sizes apart: lays are found by them. They are keys, made and taken apart
 * here and nowhere else; what a maker reads is for the words to say.
 */

const BOLT = "bolt";
/** A length of the bolt that is there already. */
export const LENGTH_IN_HAND = "rest of the bolt";
/** Another such length, beside the longest. */
export const SHORTER_LENGTH = "shorter length";

/** To tell cloth that is bought ready cut from the same cloth in hand. */
const BOUGHT = "bought ";
const STASH = "stash ";
const REST = "rest of ";
const KINDS = ["square", "strip", "piece"] as const;

/** The name of cloth that is bought ready cut. */
export function boughtName(cloth: string): string {
  return `${BOUGHT}${cloth}`;
}

/** The name of a piece from the table of cloth. */
export function stashName(size: string): string {
  return `${STASH}piece ${size}`;
}

/** The name of what is left of cloth that is cut into. */
export function restName(size: string): string {
  return `${REST}${size}`;
}

/** The name of a piece or strip of no size of the trade. */
export function pieceName(is: "piece" | "strip", size: string): string {
  return `${is} ${size}`;
}

/** What a cloth of a plan is called by itself, bought or in hand. */
export function clothName(name: string): string {
  return name.startsWith(BOUGHT) ? name.slice(BOUGHT.length) : name;
}

/** What a name tells of its cloth. */
export interface ClothFacts {
  from: "shop" | "stash" | null;
  is: "bolt" | "length" | "shorter-length" | "rest" | (typeof KINDS)[number] | "trade";
  /** As it is printed, or the name of a size of the trade; empty where there is none. */
  size: string;
  /** The second, third of one name; 1 for the first. */
  number: number;
}

/** What a name tells. A name that was not made here is taken for one of the trade. */
export function clothFacts(name: string): ClothFacts {
  const [, bare = name, number = "1"] = /^(.*) \((\d+)\)$/.exec(name) ?? [];
  const from = bare.startsWith(BOUGHT) ? "shop" : bare.startsWith(STASH) ? "stash" : null;
  const own = from === null ? bare : bare.slice((from === "shop" ? BOUGHT : STASH).length);
  const told: Pick<ClothFacts, "from" | "number"> = { from, number: Number(number) };
  if (own === BOLT || own.startsWith(`${BOLT} `))
    return { ...told, is: "bolt", size: own.slice(BOLT.length + 1) };
  if (own === LENGTH_IN_HAND) return { ...told, is: "length", size: "" };
  if (own === SHORTER_LENGTH) return { ...told, is: "shorter-length", size: "" };
  if (own.startsWith(REST)) return { ...told, is: "rest", size: own.slice(REST.length) };
  for (const kind of KINDS) {
    if (own.startsWith(`${kind} `)) return { ...told, is: kind, size: own.slice(kind.length + 1) };
    if (own.endsWith(` ${kind}`)) return { ...told, is: kind, size: own.slice(0, -kind.length - 1) };
  }
  return { ...told, is: "trade", size: own };
}

const FAT_QUARTERS: readonly string[] = TRADE_SIZES.slice(0, 2).map(({ name }) => name);

/** Whether a cloth is a fat quarter, of either measure. */
export function isFatQuarter(name: string): boolean {
  return FAT_QUARTERS.includes(clothFacts(name).size);
}
