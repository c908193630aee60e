import {
  type Area,
  blockNamed,
  colourPatch,
  emptySquare,
  layUnit,
  type Square,
  turnUnit,
  unitOn,
} from "../../../edits/block-edits.ts";
import type { BlockModel, UnitModel } from "../../../edits/model.ts";
import { type PaperPatch, patchesOf } from "../../../edits/unit-patches.ts";
import { words } from "../../words/index.ts";
import { edit } from "../actions.ts";
import * as state from "../state.ts";
import { partSaid, unitSaid } from "../unit-said.ts";
import { comesIn, looksTurned, usualSpan, wordsInHand } from "./tray.tsx";

/** `b4`: lines by letter, squares by number, so that a square has a name that can be said. */
export function squareName({ column, row }: Square): string {
  const letters =
    row < 26
      ? String.fromCharCode(97 + row)
      : `${String.fromCharCode(96 + Math.floor(row / 26))}${String.fromCharCode(97 + (row % 26))}`;
  return `${letters}${column + 1}`;
}

const squaresOf = (area: Area): string => {
  const first = squareName(area);
  const last = squareName({ column: area.column + area.columns - 1, row: area.row + area.rows - 1 });
  return first === last ? first : words.squares(first, last);
};

export const blockOnPaper = (): BlockModel | null => {
  const sheet = state.sheet.value;
  return sheet === "quilt" ? null : blockNamed(state.model.value, sheet.block);
};

const sizeOf = (block: BlockModel, area: Area): { across: number; down: number } => ({
  across: (block.xs[area.column + area.columns] ?? 0) - (block.xs[area.column] ?? 0),
  down: (block.ys[area.row + area.rows] ?? 0) - (block.ys[area.row] ?? 0),
});

/** Where one tap lays a unit: about the square, on free squares if it can, turned as in hand if it can. */
function areaFor(
  block: BlockModel,
  kind: string,
  turn: number,
  at: Square,
): { area: Area; turn: number } | null {
  // A square of the very shape is filled by itself, as in a block of one square.
  const one = { column: at.column, row: at.row, columns: 1, rows: 1 };
  const fits = [0, 90, 180, 270].find((by) => comesIn(kind, one, sizeOf(block, one), (turn + by) % 360));
  if (fits !== undefined) return { area: one, turn: (turn + fits) % 360 };
  const { columns, rows } = usualSpan(kind);
  const within = (area: Area): boolean =>
    area.column >= 0 &&
    area.row >= 0 &&
    area.column + area.columns <= block.columns &&
    area.row + area.rows <= block.rows;
  const free = (area: Area): boolean =>
    block.units.every(
      (unit) =>
        unit.column >= area.column + area.columns ||
        area.column >= unit.column + unit.columns ||
        unit.row >= area.row + area.rows ||
        area.row >= unit.row + unit.rows,
    );
  const candidates: { area: Area; turn: number }[] = [];
  for (const quarter of [0, 90, 180, 270]) {
    const turned = (turn + quarter) % 360;
    const [wide, high] = turned % 180 === 0 ? [columns, rows] : [rows, columns];
    for (let r = 0; r < high; r++)
      for (let c = 0; c < wide; c++)
        candidates.push({
          area: { column: at.column - c, row: at.row - r, columns: wide, rows: high },
          turn: turned,
        });
  }
  const good = candidates.filter(({ area }) => within(area));
  const straight = good.filter((one) => one.turn === turn);
  return (
    straight.find(({ area }) => free(area)) ??
    good.find(({ area }) => free(area)) ??
    straight[0] ??
    good[0] ??
    null
  );
}

/** The kind that fills a shape: a long square is a rectangle, a long half-square triangle its long cousin. */
function kindFor(kind: string, columns: number, rows: number, square: boolean): string {
  if (kind === "square" && !square) return "rectangle";
  if (kind === "half-square triangle" && !square && columns !== rows) return "half-rectangle triangle";
  return kind;
}

function lay(block: BlockModel, area: Area, wished: string, turn: number): boolean {
  const size = sizeOf(block, area);
  const kind = kindFor(wished, area.columns, area.rows, size.across === size.down);
  if (!comesIn(kind, area, size, turn)) {
    state.said.value = words.doesNotFit(kind, unitSaid(kind));
    return false;
  }
  return edit(
    (text) => layUnit(text, block.key, area, { kind, words: wordsInHand(kind), turn }),
    words.laid(unitSaid(kind), looksTurned(kind) ? turn : null, squaresOf(area)),
  );
}

/** Lays the unit in hand over an area that was dragged or chosen; a long unit is turned to lie along it. */
export function layOver(block: BlockModel, a: Square, b: Square): void {
  const area = {
    column: Math.min(a.column, b.column),
    row: Math.min(a.row, b.row),
    columns: Math.abs(a.column - b.column) + 1,
    rows: Math.abs(a.row - b.row) + 1,
  };
  if (area.columns === 1 && area.rows === 1) {
    layAt(block, a);
    return;
  }
  const kind = state.unitInHand.value;
  const turn = state.turnInHand.value;
  const size = sizeOf(block, area);
  const better = [turn, turn + 90, turn + 180]
    .map((one) => one % 360)
    .find((one) => comesIn(kind, area, size, one));
  lay(block, area, kind, better ?? turn);
}

/**
 * One tap on a square with what is in hand.
 * @param goesOn the tap belongs to a hand drawn over several patches, which is one gesture
 * @returns whether anything changed
 */
export function layAt(
  block: BlockModel,
  at: Square,
  patch: PaperPatch | null = null,
  goesOn = false,
): boolean {
  state.square.value = at;
  const unit = unitOn(block, at);
  switch (state.tool.value) {
    case "off":
      return (
        unit !== null &&
        edit((text) => emptySquare(text, block.key, at), words.tookOff(squareName(at)), goesOn)
      );
    case "colour": {
      if (unit === null) {
        state.said.value = words.nothingThere;
        return false;
      }
      const chosen = patch ?? (patchesOf(unit, block, state.model.value) ?? [])[0];
      return chosen !== undefined && colour(block, unit, at, chosen.part, goesOn);
    }
    default: {
      const kind = state.unitInHand.value;
      const same =
        unit !== null && (unit.cell.kind === kind || (kind === "square" && unit.cell.kind === "rectangle"));
      if (same && sameCloth(unit, block)) {
        return turn(block, at, 1);
      }
      // On another unit of the very shape in hand, the new one takes its place and its turn stays the hand's.
      const place = areaFor(block, kind, state.turnInHand.value, at);
      if (place !== null) return lay(block, place.area, kind, place.turn);
      state.said.value = words.noRoom;
      return false;
    }
  }
}

function sameCloth(unit: UnitModel, block: BlockModel): boolean {
  const wanted = wordsInHand(unit.cell.kind);
  const patches = patchesOf(unit, block, state.model.value) ?? [];
  const cloths = new Set(patches.map(({ fabric }) => fabric?.name ?? ""));
  return [...new Set(wanted)].every((name) => cloths.has(name)) && cloths.size === new Set(wanted).size;
}

export function colour(
  block: BlockModel,
  unit: UnitModel,
  at: Square,
  part: string,
  goesOn = false,
): boolean {
  const fabric = state.model.value.fabrics[state.firstFabric.value];
  if (fabric === undefined) return false;
  const alike = block.units.filter(({ cell }) => cell.code === unit.cell.code).length;
  const reach = state.reach.value;
  const together = (patchesOf(unit, block, state.model.value) ?? []).filter(
    (one) => one.part === part,
  ).length;
  const said = words.coloured(partSaid(part), fabric.name, reach === "alike" ? alike : 1);
  return edit(
    (text) => colourPatch(text, block.key, { ...at, part }, fabric.name, reach),
    reach === "patch" && together > 1 ? `${said} ${words.partsTogether(together)}` : said,
    goesOn,
  );
}

export function turn(block: BlockModel, at: Square, quarters: number): boolean {
  const unit = unitOn(block, at);
  if (unit === null) return false;
  return edit(
    (text) => turnUnit(text, block.key, at, quarters),
    () => {
      const now = blockOnPaper();
      const turned = now === null ? null : unitOn(now, at);
      return words.turnedTo(turned?.turn ?? 0);
    },
  );
}
