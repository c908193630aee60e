import { type FabricModel, fabricFor, type QuiltModel, readModel } from "./model.ts";
import type { Place } from "./quilt-edits.ts";
import { withPlaced } from "./quilt-edits.ts";
import { withValue } from "./text-edit.ts";
import { patchesOf } from "./unit-patches.ts";

/** Words of a block with the fabric each stands for in one placing, in the order they are first met. */
export function wordsOfPlaced(model: QuiltModel, at: Place): { word: string; fabric: FabricModel | null }[] {
  const placed = model.setting.rows[at.row]?.[at.column];
  const block = model.blocks.find(({ key }) => key === placed?.block);
  if (placed === undefined || block === undefined) return [];
  const words = block.units.flatMap((unit) => (patchesOf(unit, block, model) ?? []).map(({ word }) => word));
  return [...new Set(words)].map((word) => ({
    word,
    fabric: fabricFor(word, block, model, placed.colourway),
  }));
}

function freeName(model: QuiltModel): string {
  for (let n = 1; ; n++) if (model.colourways[`way-${n}`] === undefined) return `way-${n}`;
}

/**
 * Gives one word of one placed block another fabric, as a colourway of that placing: the block elsewhere stays as it
 * is. A colourway that other blocks have too is not changed; the new one starts from it.
 */
export function colourPlaced(text: string, at: Place, word: string, fabric: string): string {
  const model = readModel(text);
  const placed = model.setting.rows[at.row]?.[at.column];
  if (placed === undefined) return text;
  const { colourway } = placed;
  const alone = model.setting.rows.flat().filter((one) => one.colourway === colourway).length === 1;
  if (colourway !== "" && alone) return withValue(text, ["colourways", colourway, word], fabric);
  const name = freeName(model);
  const roles = colourway === "" ? { [word]: fabric } : { like: colourway, [word]: fabric };
  const written = withValue(text, ["colourways", name], roles, "blocks");
  const coloured =
    model.colourways[name] === undefined && Object.keys(model.colourways).length === 0
      ? withValue(text, ["colourways"], { [name]: roles }, "blocks")
      : written;
  return withPlaced(coloured, [{ at, placed: { ...placed, colourway: name } }]);
}

/** Another colourway of the file for one placed block; empty for the block's own colours. */
export function setColourway(text: string, at: Place, colourway: string): string {
  const placed = readModel(text).setting.rows[at.row]?.[at.column];
  return placed === undefined ? text : withPlaced(text, [{ at, placed: { ...placed, colourway } }]);
}
