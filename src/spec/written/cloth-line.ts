import * as z from "zod";
import { type ClothFault, clothUnreadable } from "../../diagnostics/cloth.ts";
import { formatMeasure } from "../../length/format.ts";
import { parseLength } from "../../length/parse.ts";
import { ceil, floor, type Rational } from "../../length/rational.ts";
import type { LengthUnit, Ticks } from "../../length/types.ts";
import { pieceName } from "../../stock/cloth-names.ts";
import { tradeSize } from "../../stock/trade-sizes.ts";
import { readSize } from "./piece-line.ts";
import { readPrice, type WrittenPrice } from "./sold.ts";
import { describes, leaf, refuse } from "./written.ts";

/** Cloth of a fixed size as written. `across` is null when it runs the whole usable width. */
export interface WrittenCut {
  name: string;
  across: Ticks | null;
  along: Ticks;
  strip: boolean;
  /** It can be used as it is: cut to size by machine, or said to be the usable size. */
  square: boolean;
  trim: Ticks;
  /** How many there are, or the most that may be bought; null when that is not said. */
  count: number | null;
  price: WrittenPrice | null;
}

type Read<T> = { value: T } | { why: ClothFault };

const MOST = 9999;
const LONGEST = 160;

function ticks(value: Rational): Ticks {
  return Number(floor(value));
}

/** `fat quarters`, `10 in squares`, `2 1/2 in strips`, `2 1/2 x 20 in strips`, `21 x 18 in`, `WOF x 20 in`. */
function readKind(text: string, unit: LengthUnit): Read<Omit<WrittenCut, "trim" | "count" | "price">> {
  const trade = tradeSize(text, unit);
  // Tenths are told with the sign they were written with.
  const comma = /\d,\d/.test(text);
  const signed = (name: string) => (comma ? name.replace(/(\d)\.(?=\d)/g, "$1,") : name);
  if (trade !== null) {
    const { name, across, along, strip } = trade;
    // Squares and strips are sold cut to size.
    return { value: { name: signed(name), across, along, strip, square: strip || across === along } };
  }
  const [, inner] = /^(.*\S)\s+strips?$/i.exec(text) ?? [];
  const size = readSize(inner ?? text, unit);
  if (!size.ok) return { why: { is: "no-size-sold", text } };
  const { across, along, fullWidth } = size.value;
  const [wide, long] = [ticks(across), ticks(along)];
  if (long <= 0 || (!fullWidth && wide <= 0)) return { why: { is: "no-cloth", text } };
  // A strip cut along the selvage is a piece like any other: its first cuts go across it anyway.
  const strip = inner !== undefined && (fullWidth || wide >= long);
  const said = formatMeasure(long, unit);
  const name = pieceName(
    strip ? "strip" : "piece",
    `${fullWidth ? "WOF" : formatMeasure(wide, unit)} x ${said}`,
  );
  return {
    value: { name: signed(name), across: fullWidth ? null : wide, along: long, strip, square: strip },
  };
}

function readTrim(text: string, unit: LengthUnit): Read<Ticks> {
  const read = parseLength(text, unit);
  if (!read.ok) return { why: { is: "trim", text, fault: read.problem.fault } };
  const trim = Number(ceil(read.value));
  return trim < 0 ? { why: { is: "trim-below-nothing" } } : { value: trim };
}

function readLine(text: string, key: "have" | "ready-cut", unit: LengthUnit): Read<WrittenCut> {
  if (text.length > LONGEST) return { why: { is: "too-long" } };
  const [kind = "", ...words] = text.split(/[,;](?=\s|$)/).map((part) => part.trim());
  const read = readKind(kind, unit);
  if ("why" in read) return read;
  const cloth: WrittenCut = { ...read.value, trim: 0, count: null, price: null };
  for (const word of words) {
    const [, trimmed] = /^trim\s+(.+)$/i.exec(word) ?? [];
    const [, most] = /^at most\s+(\d+)$/i.exec(word) ?? [];
    const count = most ?? (key === "have" ? /^\d+$/.exec(word)?.[0] : undefined);
    const price = key === "ready-cut" ? readPrice(word.replace(/\s+(?:each|a piece)$/i, "")) : null;
    if (trimmed !== undefined) {
      const trim = readTrim(trimmed, unit);
      if ("why" in trim) return trim;
      cloth.trim = trim.value;
    } else if (/^usable(?: size)?$/i.test(word)) {
      cloth.square = true;
    } else if (count !== undefined) {
      cloth.count = Number(count);
      if (cloth.count < 1 || cloth.count > MOST) return { why: { is: "count", most: MOST } };
    } else if (price !== null && price.per === null) cloth.price = price;
    else return { why: { is: "word", word } };
  }
  if (key === "have" && cloth.count === null) return { why: { is: "no-count" } };
  const narrowest = Math.min(cloth.across ?? cloth.along, cloth.along);
  if (narrowest <= 2 * cloth.trim) return { why: { is: "all-trimmed" } };
  return { value: cloth };
}

/** A number or a price alone is what a comma between [ ] leaves of a line. */
function isTorn(written: string, key: "have" | "ready-cut"): boolean {
  return /^\d+$/.test(written) || (key === "ready-cut" && readPrice(written) !== null);
}

/** The line that commas between [ ] have torn to several entries, put together again; null where none has. */
function tornLine(entries: unknown, key: "have" | "ready-cut"): string | null {
  if (!Array.isArray(entries)) return null;
  const written = entries.map((entry) => String(entry).trim());
  const at = written.findIndex((entry, i) => i > 0 && isTorn(entry, key));
  return at < 0 ? null : `${written[at - 1]}, ${written[at]}`;
}

function lines(key: "have" | "ready-cut", unit: LengthUnit) {
  const line = leaf({ about: `fabric.${key}.line` }, (written, context): WrittenCut => {
    const read = readLine(written, key, unit);
    if ("value" in read) return read.value;
    return refuse(context, (where) => clothUnreadable(where, key, written, read.why, isTorn(written, key)));
  });
  return z
    .preprocess((entries, context) => {
      const torn = tornLine(entries, key);
      if (torn === null) return entries;
      // Told once, at the list: its two halves are no faults of their own.
      const why: ClothFault = { is: "torn" };
      return refuse(context, (where) => clothUnreadable(where, key, torn, why, true));
    }, z.array(line).min(1))
    .meta(describes(`fabric.${key}`, { written: {} }));
}

/** `have:` what is there already, one kind to a line with how many. */
export function have(unit: LengthUnit) {
  return lines("have", unit);
}

/** `ready-cut:` what the shop sells of it in fixed sizes, one kind to a line with its price. */
export function readyCut(unit: LengthUnit) {
  return lines("ready-cut", unit);
}

/** `yardage: no` where nothing can be bought from the bolt. */
export function yardage() {
  const word = z.enum(["yes", "no"]).transform((said) => said === "yes");
  return z.union([z.boolean(), word]).meta(describes("fabric.yardage", { written: { enum: ["yes", "no"] } }));
}
