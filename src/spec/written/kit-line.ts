import type { KitFault } from "../../diagnostics/quilts/class.ts";
import type { KitSpec } from "../class-types.ts";

/** More kits are a factory. */
export const MOST_KITS = 1000;

/** A word after `in` that neither a number nor what is said of a drop may be. */
const UNKNOWN_COLOURWAY = /(?:^| )in (?!(?:at|on|to|drop|tuck|x|by)\b)([^\d\s].*)$/i;

export type KitRead = { ok: true; kit: Omit<KitSpec, "path" | "at"> } | { ok: false; fault: KitFault };

/**
 * Reads kits that are alike from one line: `4 of 3x3`, `5 of lap in evening`, `6 in evening`, `12`. A length may end in
 * `in` too, so that only a known colourway after the last `in` is one, or what follows no number.
 */
export function readKitLine(line: string, colourways: readonly string[]): KitRead {
  const text = line.trim().replace(/\s+/g, " ");
  const [, number, rest = ""] = /^([+-]?[\d.,]+)(?: (?=(?:of|in)\b)(.*))?$/i.exec(text) ?? [];
  if (number === undefined) return { ok: false, fault: { is: "no-count" } };
  const count = Number(number);
  if (!Number.isInteger(count) || count < 1 || count > MOST_KITS)
    return { ok: false, fault: { is: "count", found: number, most: MOST_KITS } };
  const folded = rest.toLowerCase();
  const known = colourways.find(
    (name) => folded === `in ${name.toLowerCase()}` || folded.endsWith(` in ${name.toLowerCase()}`),
  );
  const before = known === undefined ? rest : rest.slice(0, rest.length - known.length - 3).trim();
  const unknown = known === undefined ? UNKNOWN_COLOURWAY.exec(before)?.[1] : undefined;
  if (unknown !== undefined)
    return { ok: false, fault: { is: "colourway", found: unknown, known: colourways } };
  const size = before.replace(/^of\b/i, "").trim();
  if (before !== "" && size === "") return { ok: false, fault: { is: "no-size" } };
  return { ok: true, kit: { count, size, colourway: known ?? "" } };
}
