import { findUnitKind } from "../quilt/index.ts";
import { blockNamed, type Square, unitOn } from "./block-edits.ts";
import { readModel, ticksOf } from "./model.ts";
import { readText, valueAt, withoutValue, withValue } from "./text-edit.ts";
import type { Value } from "./values.ts";

/** What a kind of unit can be told beside its fabrics. */
export type UnitField = "corner" | "strips" | "count" | "centre" | "leaning";

/** Fields of the kind that lies on a square, in the order they are shown. */
export function fieldsOf(kind: string): UnitField[] {
  const reads = findUnitKind(kind)?.reads ?? [];
  return (["count", "strips", "corner", "centre", "leaning"] as const).filter((field) =>
    reads.includes(field),
  );
}

/** The value of a field as it is written; empty where the usual holds. */
export function fieldNow(written: Readonly<Record<string, unknown>>, field: UnitField): string {
  const value = written[field];
  return Array.isArray(value) ? value.join(", ") : value === undefined ? "" : String(value);
}

/**
 * Another corner, centre, number or widths of strips for the unit on a square and all like it; empty for the usual. A
 * list of fabrics that names the strips grows or shrinks with their number. What is no length changes nothing.
 */
export function setUnitField(
  text: string,
  key: string,
  square: Square,
  field: UnitField,
  wish: string,
): string {
  const model = readModel(text);
  const block = blockNamed(model, key);
  const unit = block === null ? null : unitOn(block, square);
  if (block === null || unit === null || !fieldsOf(unit.cell.kind).includes(field)) return text;
  const path = block.form === "cell" ? ["blocks", key, "cell"] : ["blocks", key, "cells", unit.cell.code];
  const value = wish.trim();
  if (value === "" && field !== "count") return withoutValue(text, [...path, field]);
  const lengths = value.split(/\s*,\s*/);
  const measured = lengths.every((one) => ticksOf(one, model.unit) !== null);
  switch (field) {
    case "count":
      return withCount(text, path, unit.cell.kind, unit.cell.words, Number(value));
    case "leaning":
      return value === "rising" || value === "falling" ? withValue(text, [...path, field], value) : text;
    case "strips":
      return measured
        ? withValue(
            withCount(text, path, unit.cell.kind, unit.cell.words, lengths.length),
            [...path, field],
            lengths,
          )
        : text;
    default:
      return measured && lengths.length === 1 ? withValue(text, [...path, field], value) : text;
  }
}

function withCount(
  text: string,
  path: readonly string[],
  kind: string,
  words: string[] | Record<string, string>,
  count: number,
): string {
  if (!Number.isInteger(count) || count < 1 || count > 40) return text;
  const reads = findUnitKind(kind)?.reads ?? [];
  if (!reads.includes("strips") || !Array.isArray(words)) return withValue(text, [...path, "count"], count);
  const cell = valueAt(readText(text), path) as Readonly<Record<string, Value>> | undefined;
  const [name] = Object.keys(cell ?? {}).filter((one) => findUnitKind(one) !== null);
  if (name === undefined) return text;
  // Strips are told by their fabrics: more of them go on as the last two do.
  const all = Array.from(
    { length: count },
    (_, i) =>
      words[i] ?? words[(i - words.length) % 2 === 0 ? words.length - 2 : words.length - 1] ?? words[0] ?? "",
  );
  let made = withoutValue(withoutValue(text, [...path, "count"]), [...path, "strips"]);
  made =
    words.length === 1 ? withValue(made, [...path, "count"], count) : withValue(made, [...path, name], all);
  return made;
}

/** Widths of a block's columns, or heights of its lines, of their own; null for even ones. */
export function setColumns(
  text: string,
  key: string,
  which: "columns" | "lines",
  sizes: readonly string[],
): string {
  const model = readModel(text);
  const block = blockNamed(model, key);
  const count = which === "columns" ? block?.columns : block?.rows;
  if (block === null || block.form === "cell" || sizes.length !== count) return text;
  if (sizes.some((size) => ticksOf(size, model.unit) === null)) return text;
  // Lines of a square block follow its columns; a block whose columns add up needs no size beside them.
  const made = withValue(text, ["blocks", key, which], [...sizes], "name");
  const both = valueAt(readText(made), ["blocks", key, "columns"]) !== undefined;
  const square =
    block.columns === block.rows || valueAt(readText(made), ["blocks", key, "lines"]) !== undefined;
  return both && square ? withoutValue(made, ["blocks", key, "size"]) : made;
}
