import type { PackingItem, PackingProblem } from "../../../src/engine/types.ts";
import { type Extent, liesOf } from "./strip-subsets.ts";
import { type Term, WholeNumberProgram } from "./whole-number-program.ts";

/*
 * Level packing as one whole-number program, after A. Lodi, S. Martello, D. Vigo, "Models and bounds for
 * two-dimensional level packing problems", Journal of Combinatorial Optimization 8 (2004): a level is
 * opened by its tallest piece, and every other piece either opens a level or goes into one that is open.
 * Turning is added by letting either lie of a piece open a level; a piece that joins one lies the
 * narrowest way that is no taller than the level.
 */

interface Level {
  opener: number;
  extent: Extent;
  open: number;
  /** Variable per item: how many join; undefined where none can. */
  joins: (number | undefined)[];
}

/** Smallest size along the strip of a piece in a strip of the given height; null when it is too tall. */
export function narrowest(item: PackingItem, height: number): number | null {
  const fitting = liesOf(item).filter((lie) => lie.along <= height);
  return fitting.length === 0 ? null : Math.min(...fitting.map((lie) => lie.across));
}

/** Adds every level that could lie on a stock of `width`, opened at most once each. */
function addLevels(
  program: WholeNumberProgram,
  items: readonly PackingItem[],
  width: number,
  costOfHeight: number,
): Level[] {
  const levels: Level[] = [];
  items.forEach((item, opener) => {
    for (const extent of liesOf(item)) {
      if (extent.across > width) continue;
      let before: Level | undefined;
      for (let copy = 0; copy < item.demand; copy++) {
        const open = program.variable(extent.along * costOfHeight, 1);
        const joins = items.map((other) => {
          const across = narrowest(other, extent.along);
          if (across === null || extent.across + across > width) return undefined;
          return program.variable(0, other.demand);
        });
        const level = { opener, extent, open, joins };
        const room: Term[] = [[-(width - extent.across), open]];
        joins.forEach((join, other) => {
          if (join !== undefined) room.push([narrowest(items[other]!, extent.along)!, join]);
        });
        program.row(room, "<=", 0);
        // Equal levels are opened in order: the first closed one closes those after it.
        if (before !== undefined) {
          program.row(
            [
              [1, before.open],
              [-1, open],
            ],
            ">=",
            0,
          );
        }
        levels.push(level);
        before = level;
      }
    }
  });
  return levels;
}

function addDemand(
  program: WholeNumberProgram,
  items: readonly PackingItem[],
  levels: readonly Level[],
): void {
  items.forEach((item, number) => {
    const terms: Term[] = [];
    for (const level of levels) {
      if (level.opener === number) terms.push([1, level.open]);
      const join = level.joins[number];
      if (join !== undefined) terms.push([1, join]);
    }
    program.row(terms, ">=", item.demand);
  });
}

/** Least cost in strips-2 from a roll alone (its `available` length is respected). */
export async function leastCostByLevels(problem: PackingProblem, seconds = 20): Promise<number> {
  const roll = problem.roll;
  if (roll === null || problem.style !== "strips-2") throw new Error("levels: a roll cut in strips-2 only");
  const program = new WholeNumberProgram();
  const levels = addLevels(program, problem.items, roll.width, roll.costPerLength);
  addDemand(program, problem.items, levels);
  if (roll.available !== null) {
    program.row(
      levels.map((level): Term => [level.extent.along, level.open]),
      "<=",
      roll.available,
    );
  }
  return program.least(seconds);
}

/** Least cost in strips-2 from sheets alone, each sheet's first cut either way where that is allowed. */
export async function leastCostBySheetLevels(problem: PackingProblem, seconds = 20): Promise<number> {
  if (problem.roll !== null || problem.style !== "strips-2") {
    throw new Error("levels: sheets cut in strips-2 only");
  }
  const program = new WholeNumberProgram();
  const all: Level[] = [];
  const pieces = problem.items.reduce((sum, item) => sum + item.demand, 0);
  for (const sheet of problem.sheets) {
    const frames = [{ width: sheet.across, length: sheet.along, items: problem.items }];
    if (sheet.firstCut === "either") {
      // The turned sheet, with every piece turned along with it.
      const items = problem.items.map((item) => ({ ...item, across: item.along, along: item.across }));
      frames.push({ width: sheet.along, length: sheet.across, items });
    }
    for (let copy = 0; copy < Math.min(sheet.available ?? pieces, pieces); copy++) {
      const uses = frames.map((frame) => {
        const used = program.variable(sheet.cost, 1);
        const levels = addLevels(program, frame.items, frame.width, 0);
        program.row(
          [...levels.map((level): Term => [level.extent.along, level.open]), [-frame.length, used]],
          "<=",
          0,
        );
        all.push(...levels);
        return used;
      });
      program.row(
        uses.map((used): Term => [1, used]),
        "<=",
        1,
      );
    }
  }
  addDemand(program, problem.items, all);
  return program.least(seconds);
}
