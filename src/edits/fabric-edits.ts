import { fabricKey } from "../stock/index.ts";
import { readModel } from "./model.ts";
import { readText, valueAt, withItem, withoutValue, withValue, withValueAtAll } from "./text-edit.ts";
import type { Value } from "./values.ts";

/** A fabric more at the end of the list. */
export function addFabric(text: string, name: string, colour: string): string {
  const { fabrics } = readModel(text);
  return withItem(text, ["fabrics"], fabrics.length, { name, colour });
}

export function setColour(text: string, index: number, colour: string): string {
  return withValue(text, ["fabrics", index, "colour"], colour, "name");
}

/** Which way a print reads; `none` is what is meant when nothing is written. */
export function setPrint(text: string, index: number, print: string): string {
  const path = ["fabrics", index, "print"];
  const everywhere = valueAt(readText(text), ["all-fabrics", "print"]) !== undefined;
  return print === "none" && !everywhere ? withoutValue(text, path) : withValue(text, path, print);
}

/** How often its print comes again, `6 in x 8 in`; empty takes it away. */
export function setRepeat(text: string, index: number, repeat: string): string {
  const path = ["fabrics", index, "repeat"];
  return repeat === "" ? withoutValue(text, path) : withValue(text, path, repeat);
}

/** What holds for every fabric: `width`, `sold`, `price`. Empty takes it away. */
export function setCloth(text: string, field: "width" | "sold" | "price", value: string): string {
  return value === ""
    ? withoutValue(text, ["all-fabrics", field])
    : withValue(withCloth(text), ["all-fabrics", field], value);
}

/** What holds for one fabric where it differs from the others; empty takes it away. */
export function setOwnCloth(
  text: string,
  index: number,
  field: "width" | "sold" | "price",
  value: string,
): string {
  const path = ["fabrics", index, field];
  return value === "" ? withoutValue(text, path) : withValue(text, path, value);
}

function withCloth(text: string): string {
  const doc = readText(text);
  if (valueAt(doc, ["all-fabrics"]) !== undefined) return text;
  return withValue(text, ["all-fabrics"], {}, valueAt(doc, ["units"]) === undefined ? "name" : "units");
}

/** Places in the file whose value names a fabric outright. */
function placesNaming(value: unknown, name: string, path: (string | number)[]): (string | number)[][] {
  if (typeof value === "string") return fabricKey(value) === fabricKey(name) && naming(path) ? [path] : [];
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, one]) =>
    placesNaming(one, name, [...path, Array.isArray(value) ? Number(key) : key]),
  );
}

/** Fabric words stand in blocks, colourways, setting, borders and finishing; names, notes and drawings are no words. */
function naming(path: readonly (string | number)[]): boolean {
  const [section] = path;
  const last = path.at(-1);
  if (section === "fabrics") return path.length === 3 && last === "name";
  if (
    [
      "name",
      "grid",
      "rows",
      "method",
      "prints",
      "note",
      "size",
      "width",
      "block",
      "layout",
      "corners",
      "part",
    ].includes(String(last))
  )
    return section === "blocks" && path.includes("roles");
  return [
    "blocks",
    "colourways",
    "setting",
    "borders",
    "binding",
    "backing",
    "wadding",
    "foundation",
  ].includes(String(section));
}

/** Another name for a fabric, wherever the file names it. */
export function renameFabric(text: string, index: number, name: string): string {
  const model = readModel(text);
  const old = model.fabrics[index];
  if (old === undefined || name.trim() === "" || old.name === name) return text;
  if (model.fabrics.some((other) => other !== old && fabricKey(other.name) === fabricKey(name))) return text;
  const places = placesNaming(readText(text).plain(), old.name, []);
  return withValueAtAll(text, places, name);
}

/** Whether anything in the quilt is made of this fabric. */
export function fabricIsUsed(text: string, index: number): boolean {
  const { fabrics } = readModel(text);
  const name = fabrics[index]?.name ?? "";
  return placesNaming(readText(text).plain(), name, []).some(([section]) => section !== "fabrics");
}

/** Takes away a fabric nothing is made of; one in use stays. */
export function removeFabric(text: string, index: number): string {
  return fabricIsUsed(text, index) || readModel(text).fabrics.length < 2
    ? text
    : withoutValue(text, ["fabrics", index]);
}

/** How a kind of unit is made, unless a cell says otherwise. */
export function setMethod(text: string, kind: string, method: string): string {
  const there = valueAt(readText(text), ["methods"]) as Record<string, Value> | undefined;
  const key = Object.keys(there ?? {}).find(
    (name) => fabricKey(name.replaceAll("-", " ")) === fabricKey(kind.replaceAll("-", " ")),
  );
  return there === undefined
    ? withValue(text, ["methods"], { [kind]: method }, "fabrics")
    : withValue(text, ["methods", key ?? kind], method);
}

export function setName(text: string, name: string): string {
  return withValue(text, ["name"], name);
}

/** How strips may be cut: `strips-3` cuts some of them once more along their length. */
export function setStyle(text: string, style: string): string {
  return withValue(text, ["style"], style, "units");
}
