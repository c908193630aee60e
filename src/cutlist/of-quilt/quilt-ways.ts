import type { Ticks } from "../../length/types.ts";
import { waysToCut } from "../../quilt/index.ts";
import type { Diagonal, Lie, PatchShape, Quarter, Recipe, RecipePiece } from "../../quilt/units/types.ts";
import type { SpotFacts, UnitDemand, UnitWant } from "../../quilt/work-types.ts";
import {
  type Cloths,
  type Cover,
  type CoverBatch,
  type CoverPiece,
  made,
  type NextMark,
  sameness,
  sizedCover,
} from "../cover.ts";
import { coverSets } from "./quilt-sets.ts";

/** A piece laid one way on its cloth. */
interface Column {
  piece: RecipePiece;
  /** Index of the piece in the recipe, and which of its lists. */
  index: number;
  list: number;
  turn: Quarter | null;
  lies: readonly Lie[];
  across: Ticks;
  along: Ticks;
  diagonal: Diagonal;
  roundedUp: boolean;
  template: PatchShape | null;
}

/**
 * The pieces a recipe takes for the units wanted, with prints pointing as wanted.
 * @returns null when the recipe cannot keep the direction, or its segments do not fit the cloth
 */
export function coverDemand(
  recipe: Recipe,
  demand: UnitDemand,
  wants: readonly UnitWant[],
  cloths: Cloths,
  next: NextMark,
): Cover | null {
  const parts: (Cover | null)[] = [];
  if (recipe.stripSets.length > 0)
    parts.push(...wants.map((want, index) => coverSets(recipe, want, index, cloths, next)));
  if (recipe.pieces.length > 0) {
    if (recipe.loose) {
      const roles = [...new Set(recipe.pieces.map((piece) => piece.role))];
      parts.push(
        ...roles.map((role) => {
          return coverLoose(recipe, { role, spots: demand.spots }, wants, cloths, next);
        }),
      );
    } else parts.push(coverBound(recipe, wants, cloths, next));
  }
  const covers = parts.filter((part) => part !== null);
  if (covers.length < parts.length) return null;
  return {
    pieces: covers.flatMap((cover) => cover.pieces),
    batches: covers.flatMap((cover) => cover.batches),
    spare: covers.reduce((sum, cover) => sum + cover.spare, 0),
    cloth: covers.reduce((sum, cover) => sum + cover.cloth, 0),
  };
}

function pieceOf(column: Column, count: number, mark: number): CoverPiece {
  const { piece } = column;
  return {
    role: piece.role,
    across: column.across,
    along: column.along,
    fullWidth: false,
    count,
    subcut: piece.subcut,
    diagonal: piece.subcut === "once-diagonal" ? column.diagonal : "any",
    roundedUp: column.roundedUp,
    shape: column.template === null ? null : { ...column.template, asDrawn: count, reversed: 0 },
    made: made(column.lies, count),
    marks: [mark],
  };
}

/** The ways one list of a piece's patches may lie: four on a directional print, else one. */
function columnsOf(piece: RecipePiece, index: number, list: number, directional: boolean): Column[] {
  const ways = waysToCut(piece);
  return (directional ? ways : ways.slice(0, 1)).map((way) => ({
    piece,
    index,
    list,
    turn: directional ? way.turn : null,
    lies: way.lies[list] ?? [],
    across: way.across,
    along: way.along,
    diagonal: way.diagonal,
    roundedUp: piece.roundedUp,
    template: way.template,
    ...(directional ? null : piece.freeLay),
  }));
}

/**
 * Patches cut to shape before sewing: any piece may serve any unit. A greedy cover, best filled first; where
 * a piece gives each wanted direction once (squares halved or quartered) that is the least there is.
 */
function coverLoose(
  recipe: Recipe,
  { role, spots }: { role: string; spots: readonly SpotFacts[] },
  wants: readonly UnitWant[],
  cloths: Cloths,
  next: NextMark,
): Cover | null {
  const direction = cloths.direction(role);
  const facts = new Map(spots.map((spot) => [spot.spot, spot]));
  const classOf = (spot: string, print: number): string => {
    const fact = facts.get(spot);
    if (direction === undefined) return fact?.shape ?? spot;
    const turns = sameness(direction);
    return `${fact?.shape ?? spot} ${(((print - (fact?.facing ?? 0)) % turns) + turns) % turns}`;
  };
  const need = new Map<string, number>();
  for (const want of wants) {
    for (const spot of spots.filter((each) => each.role === role)) {
      const key = classOf(spot.spot, want.prints[role] ?? 0);
      need.set(key, (need.get(key) ?? 0) + want.count);
    }
  }
  const columns = recipe.pieces
    .map((piece, index) => ({ piece, index }))
    .filter(({ piece }) => piece.role === role)
    .flatMap(({ piece, index }) =>
      piece.lies.flatMap((_, list) => columnsOf(piece, index, list, direction !== undefined)),
    );
  const yields = distinct(
    columns.map((column) => ({
      column,
      gives: tally(column.lies.map((lie) => classOf(lie.spot, lie.print))),
    })),
  );
  const pieces: CoverPiece[] = [];
  const batches: CoverBatch[] = [];
  while ([...need.values()].some((count) => count > 0)) {
    const best = bestYield(yields, need);
    if (best === null) return null;
    const useful = [...best.gives].filter(([key]) => (need.get(key) ?? 0) > 0);
    const times = Math.max(
      1,
      Math.min(...useful.map(([key, count]) => Math.floor((need.get(key) ?? 0) / count))),
    );
    const mark = next();
    pieces.push(pieceOf(best.column, times, mark));
    const { index, list, turn } = best.column;
    batches.push({ kind: "loose", count: times, laid: { piece: index, list, turn, mark } });
    for (const [key, count] of useful) need.set(key, Math.max(0, (need.get(key) ?? 0) - count * times));
  }
  return sizedCover(pieces, batches, 0);
}

interface Yield {
  column: Column;
  gives: Map<string, number>;
}

function tally(keys: readonly string[]): Map<string, number> {
  const counts = new Map<string, number>();
  for (const key of keys) counts.set(key, (counts.get(key) ?? 0) + 1);
  return counts;
}

function distinct(yields: readonly Yield[]): Yield[] {
  const seen = new Set<string>();
  return yields.filter(({ column, gives }) => {
    const key = JSON.stringify([
      column.across,
      column.along,
      column.diagonal,
      column.piece.subcut,
      [...gives].sort(),
    ]);
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}

/** The piece that meets most of what is still needed for its cloth; the first listed among equals. */
function bestYield(yields: readonly Yield[], need: ReadonlyMap<string, number>): Yield | null {
  let best: Yield | null = null;
  let bestWorth = 0;
  for (const one of yields) {
    const useful = [...one.gives].reduce((sum, [key, count]) => sum + Math.min(count, need.get(key) ?? 0), 0);
    const worth = useful / (one.column.across * one.column.along);
    if (worth > bestWorth) [best, bestWorth] = [one, worth];
  }
  return best;
}

/** Copies of directional pieces beyond this many are laid alike, or the ways to try would be too many. */
const MOST_FREE = 5;

interface SetWay {
  /** One column for every list of every piece, in order. */
  columns: Column[];
  /** Units of one set by the directions they come out with. */
  gives: Map<string, number>;
}

/** Sets sewn before they are cut: the units of a set come out together. */
function coverBound(
  recipe: Recipe,
  wants: readonly UnitWant[],
  cloths: Cloths,
  next: NextMark,
): Cover | null {
  const need = new Map<string, number>();
  for (const want of wants) {
    const key = vectorKey(want.prints);
    need.set(key, (need.get(key) ?? 0) + want.count);
  }
  const ways = setWays(recipe, cloths);
  const pieces: CoverPiece[] = [];
  const batches: CoverBatch[] = [];
  let sewn = 0;
  const wanted = [...need.values()].reduce((sum, count) => sum + count, 0);
  while ([...need.values()].some((count) => count > 0)) {
    let best: SetWay | null = null;
    let bestUseful = 0;
    for (const way of ways) {
      const useful = [...way.gives].reduce(
        (sum, [key, count]) => sum + Math.min(count, need.get(key) ?? 0),
        0,
      );
      if (useful > bestUseful) [best, bestUseful] = [way, useful];
    }
    if (best === null) return null;
    const useful = [...best.gives].filter(([key]) => (need.get(key) ?? 0) > 0);
    const times = Math.max(
      1,
      Math.min(...useful.map(([key, count]) => Math.floor((need.get(key) ?? 0) / count))),
    );
    const laid = best.columns.map((column) => ({ column, mark: next() }));
    pieces.push(...laid.map(({ column, mark }) => pieceOf(column, times, mark)));
    batches.push({
      kind: "sets",
      sets: times,
      laid: laid.map(({ column: { index, list, turn }, mark }) => ({ piece: index, list, turn, mark })),
    });
    for (const [key, count] of useful) need.set(key, Math.max(0, (need.get(key) ?? 0) - count * times));
    sewn += times * recipe.unitsPerSet;
  }
  // What rounding up to a whole set leaves is no loss of direction.
  const rounding = Math.ceil(wanted / recipe.unitsPerSet) * recipe.unitsPerSet;
  return sizedCover(pieces, batches, sewn - rounding);
}

function vectorKey(prints: Readonly<Record<string, number>>): string {
  return JSON.stringify(Object.entries(prints).sort(([a], [b]) => (a < b ? -1 : 1)));
}

function setWays(recipe: Recipe, cloths: Cloths): SetWay[] {
  const lists = recipe.pieces.flatMap((piece, index) =>
    piece.lies.map((_, list) => ({ piece, index, list })),
  );
  const free = lists.filter(({ piece }) => cloths.direction(piece.role) !== undefined);
  const together = free.length > MOST_FREE;
  // A choice of turn for each list, or for each kind of piece when there are many.
  const chosen: number[] = lists.map(({ piece, index }, i) => {
    if (cloths.direction(piece.role) === undefined) return -1;
    return together ? index : i;
  });
  const choices = [...new Set(chosen.filter((choice) => choice >= 0))];
  const found: SetWay[] = [];
  const seen = new Set<string>();
  for (let code = 0; code < 4 ** choices.length; code += 1) {
    const columns = lists.flatMap(({ piece, index, list }, i): Column[] => {
      const choice = chosen[i] ?? -1;
      const turn = choice < 0 ? 0 : Math.floor(code / 4 ** choices.indexOf(choice)) % 4;
      const column = columnsOf(piece, index, list, choice >= 0)[turn];
      return column === undefined ? [] : [column];
    });
    const gives = unitsGiven(recipe, columns, cloths);
    const key = JSON.stringify([...gives].sort());
    if (gives.size > 0 && !seen.has(key)) found.push({ columns, gives });
    seen.add(key);
  }
  return found;
}

/** Units of a set by direction; one whose part would point two ways at once counts for nothing. */
function unitsGiven(recipe: Recipe, columns: readonly Column[], cloths: Cloths): Map<string, number> {
  const gives = new Map<string, number>();
  for (let unit = 0; unit < recipe.unitsPerSet; unit += 1) {
    const prints: Record<string, number> = {};
    let whole = true;
    for (const { piece, lies } of columns) {
      const direction = cloths.direction(piece.role);
      if (direction === undefined) continue;
      for (const lie of lies.filter((each) => each.unit === unit)) {
        const print = lie.print % sameness(direction);
        if (prints[piece.role] !== undefined && prints[piece.role] !== print) whole = false;
        prints[piece.role] = print;
      }
    }
    if (!whole) continue;
    const key = vectorKey(prints);
    gives.set(key, (gives.get(key) ?? 0) + 1);
  }
  return gives;
}
