import { type KitRead, readKitLine } from "../spec/index.ts";
import { readText, valueAt, withItem, withoutValue, withValue } from "./text-edit.ts";

/** Kits that are alike, as a gesture has them. */
export type KitWish = Extract<KitRead, { ok: true }>["kit"];

/** A line of kits as it is written, and what it says where it can be read. */
export interface KitLine {
  line: string;
  kit: KitWish | null;
}

/** A colourway of the whole quilt: which fabric stands for which. */
export interface Swaps {
  name: string;
  swaps: { from: string; to: string }[];
}

/** The same kits as a maker writes them: `4 of 3x3 in evening`. */
function kitWritten({ count, size, colourway }: KitWish): string | number {
  const line = `${count}${size === "" ? "" : ` of ${size}`}${colourway === "" ? "" : ` in ${colourway}`}`;
  return line === String(count) ? count : line;
}

function kitRead(written: unknown, colourways: readonly string[]): KitLine {
  if (typeof written === "object" && written !== null) {
    const { count, size = "", colourway = "" } = written as Record<string, unknown>;
    const [many, fit, way] = [Number(count), String(size), String(colourway)];
    const kit = Number.isInteger(many) ? { count: many, size: fit, colourway: way } : null;
    return { line: kit === null ? JSON.stringify(written) : String(kitWritten(kit)), kit };
  }
  const line = String(written ?? "");
  const read = readKitLine(line, colourways);
  return { line, kit: read.ok ? read.kit : null };
}

/** The class as far as the text tells it, whatever state the text is in. */
export function classOfText(text: string): { kits: KitLine[]; colourways: Swaps[] } {
  const doc = readText(text);
  const written = valueAt(doc, ["class", "colourways"]);
  const all = typeof written === "object" && written !== null ? Object.entries(written) : [];
  const colourways = all.map(([name, swaps]): Swaps => {
    const pairs = typeof swaps === "object" && swaps !== null ? Object.entries(swaps) : [];
    return { name, swaps: pairs.map(([from, to]) => ({ from, to: String(to) })) };
  });
  const kits = valueAt(doc, ["class", "kits"]);
  const names = colourways.map(({ name }) => name);
  return { kits: Array.isArray(kits) ? kits.map((one) => kitRead(one, names)) : [], colourways };
}

/** A line of kits set, or one more behind the last. */
export function setKits(text: string, at: number, kit: KitWish): string {
  const written = kitWritten(kit);
  const { kits } = classOfText(text);
  if (at < kits.length) return withValue(text, ["class", "kits", at], written);
  if (valueAt(readText(text), ["class"]) === undefined)
    return withValue(text, ["class"], { kits: [written] });
  return kits.length === 0
    ? withValue(text, ["class", "kits"], [written])
    : withItem(text, ["class", "kits"], kits.length, written);
}

/** A line of kits taken away; the class goes with its last. */
export function removeKits(text: string, at: number): string {
  return classOfText(text).kits.length > 1
    ? withoutValue(text, ["class", "kits", at])
    : withoutValue(text, ["class"]);
}

/** In a colourway one fabric stands for another; a new name is a new colourway. The fabric itself takes the swap away. */
export function setSwap(text: string, name: string, from: string, to: string): string {
  const { colourways } = classOfText(text);
  const own = colourways.find((one) => one.name === name);
  const path = ["class", "colourways", name, from];
  if (from === to) {
    if (own?.swaps.some((swap) => swap.from === from) !== true) return text;
    return own.swaps.length > 1 ? withoutValue(text, path) : text;
  }
  if (own !== undefined) return withValue(text, path, to);
  return colourways.length === 0
    ? withValue(text, ["class", "colourways"], { [name]: { [from]: to } })
    : withValue(text, ["class", "colourways", name], { [from]: to });
}
