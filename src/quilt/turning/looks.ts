import { toNumber } from "../../length/rational.ts";
import type { PrintsFollow, QuarterTurn, QuiltSpec } from "../../spec/quilt-types.ts";
import { exactOfRational, exactOfSurd, exactToNumber, point, turnPoint } from "../exact.ts";
import type { LaidBlock, LaidUnit } from "../laid-types.ts";
import { wordsByRole } from "../layout/unit-of-cell.ts";
import { asQuarterTurn } from "./whole-turns.ts";

/** The four quarter-turns, least first. */
export const QUARTERS: readonly QuarterTurn[] = [0, 90, 180, 270];

/** A turn in degrees, from 0 up to a whole turn. */
export const wholeTurn = (turn: number): QuarterTurn => asQuarterTurn(turn);

/** One patch as seen from the middle of the part it belongs to, in ticks. */
interface Stroke {
  /** The word for its fabric, and what tells its unit from one that only looks like it. */
  of: string;
  corners: [number, number][];
  /** Where its print points, when that turns with the part; else null. */
  up: number | null;
  /** The print reads the same upside down. */
  twoWay: boolean;
}

/** Units drawn for comparing; fabrics by their words, so that what is alike is so in every colourway. */
export type Sketch = readonly Stroke[];

/** Whether a word may stand for a fabric with a direction, and whether that reads the same upside down. */
function directionOf(spec: QuiltSpec, block: LaidBlock, word: string): { known: boolean; twoWay: boolean } {
  const isRole = [block.spec, ...spec.colourways].some(({ roles }) => Object.hasOwn(roles, word));
  const fabric = isRole ? undefined : spec.fabrics.find(({ name }) => name === word);
  if (fabric !== undefined)
    return { known: fabric.print.kind !== "none", twoWay: fabric.print.kind === "two-way" };
  return { known: spec.fabrics.some(({ print }) => print.kind !== "none"), twoWay: false };
}

/**
 * Draws units of a block about a point.
 * @param turnsWith which prints turn with what is drawn: `unit` for a part turned inside its block, `block` too for a
 *   whole block
 */
export function sketchOf(
  units: readonly LaidUnit[],
  middle: { x: number; y: number },
  block: LaidBlock,
  spec: QuiltSpec,
  turnsWith: readonly PrintsFollow[],
): Sketch {
  return units.flatMap((unit) => {
    const { cell, kind, design, turn, method } = unit;
    const follow = cell.prints ?? spec.prints;
    const words = wordsByRole(cell, kind.roles(design));
    const [across, along] = [exactOfRational(design.across), exactOfRational(design.along)];
    const [left, upper] = [unit.x, unit.y].map((place) => exactToNumber(exactOfRational(place)));
    return kind.patches(design).map(({ role, outline }): Stroke => {
      const word = words[role]?.word ?? "";
      const { known, twoWay } = directionOf(spec, block, word);
      const corners = outline.map(({ x, y }): [number, number] => {
        const at = turnPoint(point(exactOfSurd(x), exactOfSurd(y)), turn, across, along);
        return [exactToNumber(at.x) + (left ?? 0) - middle.x, exactToNumber(at.y) + (upper ?? 0) - middle.y];
      });
      const up = !known || !turnsWith.includes(follow) ? null : follow === "unit" ? turn : 0;
      return { of: JSON.stringify([word, kind.name, method, follow]), corners, up, twoWay };
    });
  });
}

const TURNED: Readonly<Record<QuarterTurn, (x: number, y: number) => [number, number]>> = {
  0: (x, y) => [x, y],
  90: (x, y) => [-y, x],
  180: (x, y) => [-x, -y],
  270: (x, y) => [y, -x],
};

/** To the nearest quarter of a tick, the same on both sides of nought; adding 0 makes nought of minus nought. */
const near = (place: number): number => Math.sign(place) * Math.round(4 * Math.abs(place)) + 0;

/** What a sketch looks like, turned: the same words for the same look. */
export function lookOf(sketch: Sketch, turn: QuarterTurn, mirrored = false): string {
  return sketch
    .map(({ of, corners, up, twoWay }) => {
      const seen = corners.map(([x, y]) => {
        const at = TURNED[turn](mirrored ? -x : x, y);
        return at.map(near).join();
      });
      const points = up === null ? "" : ((mirrored ? -up : up) + turn + 720) % (twoWay ? 180 : 360);
      return `${of} ${points} ${seen.sort().join(" ")}`;
    })
    .sort()
    .join("; ");
}

/** The least turn after which a sketch looks as it does now: 90, 180, or 360 when none before that does. */
export function alikeAfter(sketch: Sketch): 90 | 180 | 360 {
  const now = lookOf(sketch, 0);
  if (lookOf(sketch, 90) === now) return 90;
  return lookOf(sketch, 180) === now ? 180 : 360;
}

/** The least turn after which a laid block looks as it does. */
export function laidAlikeAfter(block: LaidBlock, spec: QuiltSpec): 90 | 180 | 360 {
  const middle = { x: toNumber(block.across) / 2, y: toNumber(block.down) / 2 };
  return alikeAfter(sketchOf(block.units, middle, block, spec, ["unit", "block"]));
}
