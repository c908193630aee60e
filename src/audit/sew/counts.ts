import type { CutPiece } from "../../cutlist/types.ts";
import type { Patch } from "../../quilt/types.ts";
import { partOf } from "./cloth.ts";
import { said } from "./compare.ts";
import { outlineOf } from "./designed.ts";
import { layBest, placeOf } from "./place.ts";
import { between, boxOf, edgesOf, moved, NEAR, turnedBy } from "./polygon.ts";
import { type Bag, squaresFor, use, type Workroom } from "./types.ts";

/*
 * What is cut besides units: borders, long sashes and their squares, setting triangles, binding, backing, foundation.
 * Every patch of the top has its piece; then no bag may hold fewer than are used, nor more than its uses name.
 */

const free = (bag: Bag, room: Workroom): number =>
  bag.piece.count / room.kits - (room.used.get(bag.piece.letter)?.least ?? 0);

const bagsOf = (fabric: string, room: Workroom): Bag[] =>
  [...room.bags.values()].filter((bag) => bag.fabric === fabric);

/** The bags whose strips are sewn end to end with this one's: strips of several lengths may make one run. */
function runOf(bag: Bag, room: Workroom): Bag[] {
  const { joined } = bag.piece;
  if (joined?.run === undefined) return [bag];
  return bagsOf(bag.fabric, room).filter(({ piece }) => piece.joined?.run === joined.run);
}

/** One bag for each run: the first of those that feed it. */
function runsOf(fabric: string, room: Workroom): Bag[] {
  return bagsOf(fabric, room).filter((bag) => bag.piece.joined !== undefined && runOf(bag, room)[0] === bag);
}

/** Takes whatever is still in the bags of a run. */
function useRun(bag: Bag, room: Workroom): void {
  for (const each of runOf(bag, room)) use(room, each.piece.letter, free(each, room));
}

/** A strip of a border or a sash as it must be cut: raw, its run along it. */
interface WantedStrip {
  run: number;
  width: number;
  /** It runs from left to right. */
  level: boolean;
}

/** What the strip of a patch must measure, from the top as designed and how its border is sewn on. */
function stripWanted(patch: Patch, room: Workroom): WantedStrip {
  const { top, making, seam } = room;
  const { border } = patch.origin;
  const round = border === null ? undefined : making.borders[border];
  const boxed = (each: Patch): ReturnType<typeof boxOf> => boxOf([leveled(each, room)]);
  const box = boxed(patch);
  const mitred = round?.kind === "mitred";
  const reach = mitred ? 2 * Math.SQRT2 * seam : 0;
  const level = box.across >= box.along;
  // A border that is to fit is cut in one width, the widest it has anywhere, and trimmed once it is sewn on.
  const alike =
    round?.fit === true ? top.patches.filter(({ origin }) => origin.border === border).map(boxed) : [];
  const wide = Math.max(...[box, ...alike].map((each) => Math.min(each.across, each.along)));
  const square = Math.abs(box.across - box.along) <= NEAR;
  // The pair sewn on last crosses the other while that is as wide as it was cut.
  const crossed = alike.filter((each) => !(level === each.across >= each.along));
  const crosses =
    crossed.length > 0 && crossed.every((each) => (level ? box.x <= each.x + NEAR : box.y <= each.y + NEAR));
  const beyond =
    !crosses || mitred
      ? 0
      : 2 * (wide - Math.min(...crossed.map((each) => Math.min(each.across, each.along))));
  const ends = square && round?.kind === "cornerstones" ? 0 : reach + (round?.extra ?? 0);
  return {
    run: beyond + Math.max(box.across, box.along) + 2 * seam + ends,
    width: wide + 2 * seam,
    level,
  };
}

/** The bag whose pieces are such strips in one length, with the print as designed. */
function wholeStrip(patch: Patch, { run, width, level }: WantedStrip, room: Workroom): Bag | undefined {
  const same = room.same.get(patch.fabric) ?? 0;
  // Rounding up to the ruler's marks is trimmed when a border is measured.
  const fits = (a: number, b: number): boolean =>
    a >= run - NEAR && a < run + room.mark + NEAR && b >= width - NEAR && b < width + room.mark + NEAR;
  const points = (bag: Bag, turn: number): boolean =>
    same === 0 || patch.up === null || between(bag.boltUp + turn, patch.up, same) < 0.5;
  const serving = bagsOf(patch.fabric, room).filter((bag) => {
    const { piece } = bag;
    if (piece.subcut !== "none" || piece.joined !== undefined || free(bag, room) < 1) return false;
    return [0, 90, 180, 270].some((turn) => {
      const [x, y] = turn % 180 === 0 ? [piece.across, piece.along] : [piece.along, piece.across];
      return points(bag, turn) && (level ? fits(x, y) : fits(y, x));
    });
  });
  // Where a border is no wider than what rounding adds, its long strips would do for its short sides as well.
  return serving.sort((a, b) => a.piece.across * a.piece.along - b.piece.across * b.piece.along)[0];
}

/** The run of joined strips that still holds such a strip. */
function joinedStrip(
  { fabric }: Patch,
  { run, width }: WantedStrip,
  joinedFor: ReadonlyMap<Bag, number>,
  room: Workroom,
): Bag | undefined {
  return (
    runsOf(fabric, room)
      .filter((bag) => {
        const { piece } = bag;
        const wide = piece.along >= width - NEAR && piece.along < width + room.mark + NEAR;
        return (
          piece.joined !== undefined && wide && piece.joined.length - (joinedFor.get(bag) ?? 0) >= run - NEAR
        );
      })
      // Of two runs the one that holds whole lengths of this strip is the one joined for it.
      .sort((a, b) => rest(a, run) - rest(b, run))[0]
  );
}

/** Strips of borders and long sashes, with the squares between them. */
export function takeStrips(room: Workroom): void {
  const joinedFor = new Map<Bag, number>();
  for (const patch of room.top.patches) {
    const { unit, place, part } = patch.origin;
    if (unit !== null || place === "setting-triangle" || place === "block") continue;
    const wanted = stripWanted(patch, room);
    const { run, width } = wanted;
    const whole = wholeStrip(patch, wanted, room);
    if (whole !== undefined) {
      use(room, whole.piece.letter, 1);
      continue;
    }
    const joined = joinedStrip(patch, wanted, joinedFor, room);
    if (joined === undefined)
      room.faults.push(
        `${part}: a strip of ${patch.fabric} of ${said(run)} x ${said(width)} that nobody cuts as it must lie`,
      );
    else joinedFor.set(joined, (joinedFor.get(joined) ?? 0) + run);
  }
  for (const bag of joinedFor.keys()) useRun(bag, room);
}

const rest = ({ piece }: Bag, run: number): number => {
  const left = (piece.joined?.length ?? 0) % run;
  return Math.min(left, run - left);
};

function leveled(patch: Patch, room: Workroom): ReturnType<typeof outlineOf> {
  const outline = outlineOf(patch);
  return room.top.centre.onPoint && patch.origin.place !== "border" ? turnedBy(outline, -45) : outline;
}

/** Strips that are joined must make the length they are for. */
export function checkJoined(room: Workroom): void {
  for (const bag of room.bags.values()) {
    const { piece } = bag;
    const run = runOf(bag, room);
    if (piece.joined === undefined || run[0] !== bag) continue;
    const strips = run.reduce((sum, each) => sum + each.piece.count / room.kits, 0);
    const cloth = run.reduce((sum, each) => sum + (each.piece.count / room.kits) * each.piece.across, 0);
    const makes = cloth - (strips - 1) * piece.joined.loss;
    if (makes < piece.joined.length - NEAR)
      room.faults.push(
        `strips ${piece.letter} make ${said(makes)} once joined, and ${said(piece.joined.length)} is needed`,
      );
  }
}

/** Setting triangles: halves and quarters of squares, each side and corner covered with its print as designed. */
export function takeTriangles(room: Workroom): void {
  const parts = new Map<string, { bag: Bag; counts: Map<string, number> }>();
  const seen = new Map<string, { bag: Bag; part: string } | null>();
  for (const patch of room.top.patches) {
    if (patch.origin.place !== "setting-triangle") continue;
    const outline = outlineOf(patch);
    const box = boxOf([outline]);
    const flat = moved(outline, { x: -box.x, y: -box.y });
    const key = `${patch.fabric} ${patch.up} ${patch.origin.part} ${flat
      .map(({ x, y }) => `${Math.round(x / 8)},${Math.round(y / 8)}`)
      .sort()
      .join(" ")}`;
    if (!seen.has(key)) seen.set(key, triangleFor(patch, flat, box, room));
    const found = seen.get(key) ?? null;
    if (found === null) {
      room.faults.push(
        `a ${patch.origin.part} setting triangle of ${patch.fabric} that no square gives with its print as designed`,
      );
      continue;
    }
    const own = parts.get(found.bag.piece.letter) ?? { bag: found.bag, counts: new Map<string, number>() };
    own.counts.set(found.part, (own.counts.get(found.part) ?? 0) + 1);
    parts.set(found.bag.piece.letter, own);
  }
  for (const { bag, counts } of parts.values()) use(room, bag.piece.letter, squaresFor(bag, counts));
}

const HALVES = ["top-left", "top-right", "bottom-right", "bottom-left"] as const;
const QUARTERS = ["top", "right", "bottom", "left"] as const;

function triangleFor(
  patch: Patch,
  flat: ReturnType<typeof outlineOf>,
  box: { across: number; along: number },
  room: Workroom,
): { bag: Bag; part: string } | null {
  const place = placeOf(flat, box.across, box.along, room.seam);
  // Only the slanting edges are sewn to blocks; what lies beyond the others is trimmed with the quilt.
  place.rim = edgesOf(flat).map(({ line: { out } }) => Math.abs(out.x) < 0.01 || Math.abs(out.y) < 0.01);
  // Squares that units have taken come last, though both may lie in one bag.
  const taken = ({ piece }: Bag): number =>
    room.used.has(piece.letter) || room.parts.has(piece.letter) ? 1 : 0;
  for (const bag of bagsOf(patch.fabric, room).sort(
    (a, b) => taken(a) - taken(b) || a.piece.across - b.piece.across,
  )) {
    const { subcut } = bag.piece;
    if (subcut !== "once-diagonal" && subcut !== "twice-diagonal") continue;
    if ((subcut === "twice-diagonal") !== (patch.origin.part === "side")) continue;
    for (const part of subcut === "once-diagonal" ? HALVES : QUARTERS) {
      const cut = partOf(bag, part);
      if (typeof cut === "string") continue;
      const turns = [0, 90, 180, 270].filter(
        (turn) => bag.same === 0 || patch.up === null || between(bag.boltUp + turn, patch.up, bag.same) < 0.5,
      );
      const laid = layBest(cut, place, turns, room.seam);
      const slack = bag.piece.roundedUp ? room.mark * 2 : 0;
      if (
        turns.length > 0 &&
        laid.enough &&
        laid.beside <= NEAR + slack &&
        laid.beyond <= 4 * room.mark + slack
      )
        return { bag, part };
    }
  }
  return null;
}

/** Binding, backing, wadding and foundation, by their sizes. */
export function takeFinishing(room: Workroom): void {
  const { finishing, foundation } = room.making;
  const { binding, backing } = finishing;
  const take = (what: string, fabric: string, count: number, fits: (piece: CutPiece) => boolean): void => {
    const bag = bagsOf(fabric, room).find((one) => fits(one.piece) && free(one, room) >= count);
    if (bag === undefined) room.faults.push(`${what}: ${count} pieces of ${fabric} that nobody cuts`);
    else use(room, bag.piece.letter, count);
  };
  const near = (a: number, b: number): boolean => Math.abs(a - b) <= NEAR;
  if (binding !== null) {
    const { square, width } = binding;
    if (square === null) {
      const strips = (bag: Bag): number => runOf(bag, room).reduce((sum, each) => sum + free(each, room), 0);
      const run = runsOf(binding.fabric, room).find(
        (bag) => near(bag.piece.along, width) && strips(bag) >= binding.count,
      );
      if (run === undefined)
        room.faults.push(`binding: ${binding.count} strips of ${binding.fabric} that nobody cuts`);
      else useRun(run, room);
    } else
      take(
        "binding",
        binding.fabric,
        binding.count,
        (piece) => near(piece.across, square) && near(piece.along, square),
      );
  }
  if (backing !== null)
    take("backing", backing.fabric, backing.panels, ({ across, along }) => {
      const { panel } = backing;
      return (
        (near(across, panel.across) && near(along, panel.along)) ||
        (near(along, panel.across) && near(across, panel.along))
      );
    });
  for (const { letter, count, cut } of foundation?.parts ?? []) {
    if (foundation === null) break;
    const [across, along] = [cut.across * foundation.grid, cut.down * foundation.grid];
    take(
      `foundation ${letter}`,
      foundation.fabric,
      count,
      (piece) =>
        (near(piece.across, across) && near(piece.along, along)) ||
        (near(piece.along, across) && near(piece.across, along)),
    );
  }
}

/** Every bag: enough for what is taken from it, and nothing in it that no use names. */
export function checkBags(room: Workroom): void {
  for (const bag of room.bags.values()) {
    const { piece } = bag;
    const { letter, uses } = piece;
    const count = piece.count / room.kits;
    const squares = squaresFor(bag, room.parts.get(letter) ?? new Map());
    if (squares > 0) use(room, letter, squares);
    if (!Number.isInteger(count)) {
      room.faults.push(
        `bag ${letter}: ${piece.count} pieces are no whole number for each of ${room.kits} quilts`,
      );
      continue;
    }
    const { least, most } = room.used.get(letter) ?? { least: 0, most: 0 };
    if (count < least - 1e-6)
      room.faults.push(`bag ${letter}: ${Math.ceil(least)} pieces are used, and ${count} are cut`);
    const over = count - Math.max(Math.ceil(least - 1e-6), most);
    const named = uses.map((each) => each.count / room.kits);
    if (over > 0 && !isSum(over, named))
      room.faults.push(`bag ${letter}: ${over} of ${count} pieces are left over, and nobody names them`);
  }
}

/** Whether some of the counts add up to a number: uses that nothing here speaks of, such as pieces the file adds. */
function isSum(wanted: number, counts: readonly number[]): boolean {
  let sums = new Set([0]);
  for (const count of counts) {
    sums = new Set([...sums, ...[...sums].map((sum) => sum + count)].filter((sum) => sum <= wanted));
    if (sums.has(wanted)) return true;
  }
  return false;
}
