import type { CutPiece } from "../cutlist/types.ts";
import type { Plan } from "../plan/types.ts";

interface Spot {
  x: number;
  y: number;
}

/** Ticks by which corners in whole ticks may miss what they stand for. */
const NEAR = 3;

const minus = (a: Spot, b: Spot): Spot => ({ x: a.x - b.x, y: a.y - b.y });
const dot = (a: Spot, b: Spot): number => a.x * b.x + a.y * b.y;

/** Edges of an outline whose corners stand clockwise, with the direction straight out of each. */
function edgesOf(outline: readonly Spot[]): { from: Spot; out: Spot; length: number }[] {
  return outline.map((from, i) => {
    const run = minus(outline[(i + 1) % outline.length] ?? from, from);
    const length = Math.hypot(run.x, run.y);
    return { from, out: { x: run.y / length, y: -run.x / length }, length };
  });
}

/**
 * How far a place reaches in a direction with its seam allowance on: to the full points of its corners where they
 * reach no more than three seams, else a seam beyond the corner.
 */
function reach(place: readonly Spot[], seam: number, way: Spot): number {
  const edges = edgesOf(place);
  const reaches = place.map((corner, i) => {
    const before = edges[(i + edges.length - 1) % edges.length]?.out ?? way;
    const after = edges[i]?.out ?? way;
    const both = { x: before.x + after.x, y: before.y + after.y };
    const stretch = seam / (1 + dot(before, after));
    const point = { x: corner.x + both.x * stretch, y: corner.y + both.y * stretch };
    const sharp = Math.hypot(point.x - corner.x, point.y - corner.y) > 3 * seam - NEAR;
    return sharp ? dot(corner, way) + seam : dot(point, way);
  });
  return Math.max(...reaches);
}

/** The piece as it is once it is cut up by hand: side lengths of a rectangle, or the two legs of a triangle. */
function shapesOf({ across, along, subcut }: CutPiece): { corners: number; sides: [number, number] }[] {
  const short = Math.min(across, along);
  const long = Math.max(across, along);
  if (subcut === "none") return [{ corners: 4, sides: [short, long] }];
  if (subcut === "once-diagonal") return [{ corners: 3, sides: [short, long] }];
  if (subcut === "twice-diagonal" && short === long)
    return [{ corners: 3, sides: [short / Math.SQRT2, short / Math.SQRT2] }];
  return [];
}

function isCutSo(laid: readonly Spot[], pieces: readonly CutPiece[]): boolean {
  const lengths = edgesOf(laid)
    .map(({ length }) => length)
    .sort((a, b) => a - b);
  const [short = 0, second = 0, third = 0] = lengths;
  const sides: [number, number] = laid.length === 3 ? [short, second] : [short, third];
  return pieces
    .flatMap(shapesOf)
    .some(
      (shape) =>
        shape.corners === laid.length &&
        shape.sides.every((side, i) => Math.abs(side - (sides[i] ?? 0)) <= NEAR),
    );
}

/**
 * Patches on foundation are laid as they are told: the cloth as cut must cover its place and the seam allowance all
 * round it, and where it is laid by an edge that edge must lie one seam allowance beyond its line.
 */
export function checkLaid(plan: Plan): string[] {
  const { making } = plan;
  const foundation = making?.foundation ?? null;
  if (making === undefined || foundation === null) return [];
  const faults: string[] = [];
  for (const part of foundation.parts) {
    if (part.kind !== "pieced") continue;
    for (const { number, fabric, corners, laid, lay } of part.patches) {
      const say = (fault: string): number => faults.push(`patch ${number} of ${part.letter} ${fault}`);
      const short = edgesOf(laid).some(
        ({ from, out }) => reach(corners, making.seam, out) > dot(from, out) + NEAR,
      );
      if (laid.length < 3 || short)
        say("does not cover its place and its seam allowance, laid as it is told");
      // Some of the fabrics may be planned without the others.
      const pieces = plan.fabrics.find(({ name }) => name === fabric)?.pieces;
      if (pieces !== undefined && !isCutSo(laid, pieces))
        say(`is laid in a size that is not cut from ${fabric}`);
      const line = part.seams.find(({ adds }) => adds === number);
      if ((line === undefined) !== (lay === "first")) say("is laid first, or added by a line, but not both");
      if (line === undefined || lay !== "edge") continue;
      const ends = [
        { x: line.x1, y: line.y1 },
        { x: line.x2, y: line.y2 },
      ];
      const beyond = edgesOf(laid).some(({ from, out }) =>
        ends.every((end) => Math.abs(dot(minus(from, end), out) - making.seam) <= NEAR),
      );
      if (!beyond) say("has no edge one seam allowance beyond its line");
    }
  }
  return faults;
}
