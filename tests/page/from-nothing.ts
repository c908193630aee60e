import * as block from "../../src/edits/block-edits.ts";
import { colourPlaced } from "../../src/edits/colourway-edits.ts";
import * as fabric from "../../src/edits/fabric-edits.ts";
import { freePatches, type Ring } from "../../src/edits/free-patches.ts";
import {
  type BlockModel,
  fabricFor,
  type QuiltModel,
  readModel,
  type UnitModel,
} from "../../src/edits/model.ts";
import * as quilt from "../../src/edits/quilt-edits.ts";
import * as ring from "../../src/edits/ring-edits.ts";
import * as rows from "../../src/edits/row-edits.ts";
import { fieldNow, fieldsOf, setColumns, setUnitField } from "../../src/edits/unit-edits.ts";
import { outlinesOf, patchesOf, wordOf } from "../../src/edits/unit-patches.ts";
import { EMPTY_SHEET } from "../../src/page/starts.ts";
import { layOutQuilt, readSpecFile } from "../../src/planning.ts";
import { allSaid } from "../support/in-words.ts";

/*
 * A quilt drawn again on the empty sheet, by nothing but the edits that gestures on the page make: what a maker's hand
 * could do, without a letter of YAML.
 */

type Names = ReadonlyMap<string, string>;

/** Finished length as it would be typed, from ticks. */
const typed = (ticks: number, model: QuiltModel): string => block.lengthText(ticks, model);

function drawFabrics(text: string, { fabrics }: QuiltModel): string {
  let made = text;
  // The sheet's own three are out of the way first, so that no name is taken.
  for (let i = 0; i < 3; i++) made = fabric.renameFabric(made, i, `sheet ${i}`);
  fabrics.forEach(({ name, colour, print, width }, i) => {
    made = i < 3 ? fabric.renameFabric(made, i, name) : fabric.addFabric(made, name, colour);
    made = fabric.setColour(made, i, colour);
    if (print !== "none") made = fabric.setPrint(made, i, print);
    if (width !== "") made = fabric.setOwnCloth(made, i, "width", width);
  });
  for (let i = 2; i >= fabrics.length; i--) made = fabric.removeFabric(made, i);
  return made;
}

/** A unit laid as the hand does: with two fabrics, then patch by patch. */
function drawUnit(text: string, key: string, unit: UnitModel, own: BlockModel, model: QuiltModel): string {
  const square = { column: unit.column, row: unit.row };
  const across = own.xs[unit.column + unit.columns]! - own.xs[unit.column]!;
  const down = own.ys[unit.row + unit.rows]! - own.ys[unit.row]!;
  const [wide, high] = unit.turn % 180 === 0 ? [across, down] : [down, across];
  if (unit.cell.kind === "drawn patches") return drawCorners(text, key, unit, own, model, [across, down]);
  const shape = outlinesOf(unit.cell, wide, high, model.unit);
  const cloths = (shape?.parts ?? []).map(
    (part) => fabricFor(wordOf(unit.cell, shape?.parts ?? [], part), own, model)?.name ?? "",
  );
  const plain = unit.cell.kind === "square" && across !== down ? "rectangle" : unit.cell.kind;
  const usual = outlinesOf({ ...unit.cell, written: {}, words: ["x"] }, wide, high, model.unit)?.parts ?? [];
  const words = usual.map((_, i) => (i % 2 === 0 ? (cloths[0] ?? "") : (cloths[1] ?? cloths[0] ?? "")));
  let made = block.layUnit(text, key, unit, { kind: plain, words, turn: unit.turn });
  for (const field of fieldsOf(unit.cell.kind)) {
    const wish =
      field === "count" &&
      unit.cell.written.strips === undefined &&
      (shape?.parts.length ?? 0) > 0 &&
      unit.cell.kind === "rails"
        ? String(shape?.parts.length)
        : fieldNow(unit.cell.written, field);
    if (wish !== "") made = setUnitField(made, key, square, field, wish);
  }
  const now = (): UnitModel | null => block.unitOn(block.blockNamed(readModel(made), key)!, square);
  for (const [i, part] of (shape?.parts ?? []).entries()) {
    if (now() === null) return made;
    made = block.colourPatch(made, key, { ...square, part }, cloths[i] ?? "", "patch");
  }
  return made;
}

/** Patches by their corners on points half a square apart, the rest in the cloth of one of them. */
function drawCorners(
  text: string,
  key: string,
  unit: UnitModel,
  own: BlockModel,
  model: QuiltModel,
  [across, down]: readonly [number, number],
): string {
  const [columns, rows] = [2 * unit.columns, 2 * unit.rows];
  const all = (patchesOf(unit, own, model) ?? []).map(({ corners, fabric: cloth }) => ({
    ring: corners.map(([x, y]) => [
      ((x - own.xs[unit.column]!) / across) * columns,
      ((y - own.ys[unit.row]!) / down) * rows,
    ]) as unknown as Ring,
    fabric: cloth?.name ?? "",
  }));
  if (all.some((one) => one.ring.flat().some((at) => !Number.isInteger(at)))) return text;
  const laid = freePatches(all, all[0]!.fabric, columns, rows);
  return laid === null
    ? text
    : block.layUnit(text, key, unit, {
        kind: "drawn patches",
        words: [],
        turn: 0,
        drawn: { ...laid, on: `${columns} x ${rows}` },
      });
}

/** A block of one unit drawn by its corners is drawn on as many squares as its corners need: two points to a square. */
export function onSquares(own: BlockModel): BlockModel {
  const [unit] = own.units;
  const points = Number(/^(\d+)/.exec(String(unit?.cell.written["drawn-on"] ?? ""))?.[1] ?? 0);
  if (unit === undefined || own.units.length > 1 || points < 4) return own;
  const count = points / 2;
  const starts = (end: number) => Array.from({ length: count + 1 }, (_, i) => (end * i) / count);
  const units = [{ ...unit, columns: count, rows: count }];
  return {
    ...own,
    units,
    columns: count,
    rows: count,
    xs: starts(own.xs.at(-1)!),
    ys: starts(own.ys.at(-1)!),
  };
}

function drawBlock(text: string, key: string, given: BlockModel, model: QuiltModel): string {
  const own = onSquares(given);
  let made = block.resizeGrid(text, key, own.columns, own.rows);
  const size = (ticks: number | null): string => typed(ticks ?? 0, model);
  made = block.sizeBlock(
    made,
    key,
    own.across === own.down ? size(own.across) : `${size(own.across)} x ${size(own.down)}`,
  );
  const even = (all: readonly number[]): boolean =>
    all.slice(1).every((end, i) => Math.abs(end - all[i]! - all[1]!) < 1);
  const sizes = (all: readonly number[]): string[] =>
    all.slice(1).map((end, i) => typed(end - all[i]!, model));
  if (!even(own.xs)) made = setColumns(made, key, "columns", sizes(own.xs));
  if (!even(own.ys)) made = setColumns(made, key, "lines", sizes(own.ys));
  for (const unit of own.units) made = drawUnit(made, key, unit, own, model);
  return own.name === own.key ? made : block.nameBlock(made, key, own.name);
}

function drawRows(text: string, names: Names, { setting }: QuiltModel): string {
  const onPoint = setting.layout === "on point";
  const uneven = !onPoint && setting.rows.some((row) => row.length !== setting.rows[0]?.length);
  const across = uneven ? 1 : Math.max(...setting.rows.map((row) => row.length));
  const down = onPoint ? (setting.rows.length + 1) / 2 : setting.rows.length;
  let made = onPoint ? quilt.setLayout(text, "on point", setting.triangles) : text;
  made = quilt.sizeQuilt(made, across, down);
  if (setting.turn % 180 !== 0) made = rows.standOnEnd(made, true);
  // Rows of their own length grow block by block, from the first.
  if (uneven)
    setting.rows.forEach((row, r) => {
      for (let c = 1; c < row.length; c++)
        made = rows.insertPlaced(made, { row: r, column: c - 1 }, readModel(made).setting.rows[r]![c - 1]!);
    });
  return quilt.withPlaced(
    made,
    setting.rows.flatMap((row, r) =>
      row.map((placed, c) => ({
        at: { row: r, column: c },
        placed: { block: names.get(placed.block) ?? "", turn: placed.turn, colourway: "" },
      })),
    ),
  );
}

/** Placed blocks in other colours, word by word. */
function drawColourways(text: string, model: QuiltModel): string {
  let made = text;
  model.setting.rows.forEach((row, r) => {
    row.forEach((placed, c) => {
      const own = block.blockNamed(model, placed.block);
      if (placed.colourway === "" || own === null) return;
      for (const unit of own.units)
        for (const { word, fabric: as } of patchesOf(unit, own, model) ?? []) {
          const there = fabricFor(word, own, model, placed.colourway);
          if (as !== null && there !== null && there.name !== as.name)
            made = colourPlaced(made, { row: r, column: c }, as.name, there.name);
        }
    });
  });
  return made;
}

function drawSashing(text: string, model: QuiltModel): string {
  const { sashing } = model.setting;
  if (sashing === null) return text;
  const first = model.fabrics[0]!.name;
  let made = quilt.setSashing(text, { width: sashing.width, fabric: sashing.fabric || first });
  if (sashing.ring) made = quilt.setSashRing(made, true);
  if (sashing.cornerstones !== "") made = quilt.setCornerstones(made, sashing.cornerstones);
  if (sashing.block !== "") {
    const pieced = ring.pieceSashes(made);
    made = drawBlock(pieced.text, pieced.key, block.blockNamed(model, sashing.block)!, model);
  }
  if (sashing.stoneBlock === "") return made;
  const stones = ring.pieceSashStones(quilt.setCornerstones(made, first));
  return drawBlock(stones.text, stones.key, block.blockNamed(model, sashing.stoneBlock)!, model);
}

function drawBorders(text: string, model: QuiltModel): string {
  let made = text;
  const first = model.fabrics[0]!.name;
  model.borders.forEach((border, i) => {
    made = quilt.addBorder(made, border.fabric || first, border.width);
    if (border.corners !== "") made = quilt.setBorder(made, i, "corners", border.corners);
    if (border.block !== "") {
      const own = block.blockNamed(model, border.block)!;
      // Ten blocks go round inside, as a hand finds it whose border comes out.
      const whole = { across: 10 * (own.down ?? 1), down: 10 * (own.down ?? 1) };
      const pieced = ring.pieceBorder(made, i, whole, border.stones || first, first);
      made = drawBlock(pieced.text, pieced.key, own, model);
    }
    made = ring.setBorderStones(made, i, border.stones === "" ? null : border.stones);
  });
  return made;
}

/** The quilt of a text, drawn from the empty sheet. */
export function drawnFromNothing(text: string): string {
  const model = readModel(text);
  let made = drawFabrics(fabric.setName(EMPTY_SHEET, model.name), model);
  const names = new Map<string, string>();
  const inRows = new Set(model.setting.rows.flat().map((placed) => placed.block));
  for (const own of model.blocks.filter(({ key }) => inRows.has(key))) {
    const added = names.size === 0 ? { text: made, key: "A" } : block.addBlock(made, own.columns, own.rows);
    names.set(own.key, added.key);
    made = drawBlock(added.text, added.key, own, model);
  }
  made = drawColourways(drawRows(made, names, model), model);
  made = drawBorders(drawSashing(made, model), model);
  for (const what of ["binding", "backing"] as const)
    if (model[what] !== "") made = quilt.setFinishing(made, what, model[what]);
  return model.wadding ? quilt.setFinishing(made, "wadding", "") : made;
}

/** Every patch of a top with its fabric, in an order and from a corner that do not depend on how it was drawn. */
export function patchesOfTop(text: string): string[] | string {
  const spec = readSpecFile(text, "q");
  const laid = spec.value?.kind === "quilt" ? layOutQuilt(spec.value) : null;
  const top = laid?.value?.top;
  if (top === undefined)
    return allSaid([...spec.diagnostics, ...(laid?.diagnostics ?? [])])
      .filter(({ severity }) => severity === "error")
      .map(({ message }) => message)
      .join(" ");
  return top.patches
    .map(({ fabric: cloth, outline }) => {
      const corners = outline.map(({ x, y }) =>
        [x, y].map(({ n, r, d, root }) => Math.round((n + r * Math.sqrt(root ?? 2)) / d)).join(","),
      );
      return `${cloth}: ${corners.sort().join(" ")}`;
    })
    .sort();
}
