import { fromInteger, mul, type Rational, rational } from "../../length/rational.ts";
import type { FabricWord, QuiltSpec } from "../../spec/quilt-types.ts";
import {
  diagonalExact,
  exactOfRational,
  exactToNumber,
  point,
  scaleExact,
  subExact,
  ZERO_EXACT,
} from "../exact.ts";
import { asEighth } from "../turning/whole-turns.ts";
import type { Point } from "../types.ts";
import { settingPieces } from "../units/setting-triangles.ts";
import type { Eighth, HowMade, RecipePiece } from "../units/types.ts";
import type { TriangleDemand } from "../work-types.ts";
import type { Builder } from "./builder.ts";

/** How units are made, from the file's settings. */
export function howMade(spec: QuiltSpec): HowMade {
  return {
    seam: fromInteger(spec.seam),
    mark: spec.ruler.mark,
    rounding: spec.rounding,
    oversize: fromInteger(spec.oversize),
  };
}

interface LaidTriangle {
  outline: Point[];
  /** Where the right angle points. */
  facing: Eighth;
}

/*
 *     corner /\ side /\ side /\ corner        sides: long edge on the outside, from squares quartered,
 *           /  \    /  \    /  \              so that the outside lies on the straight grain
 *           \  /    \  /    \  /              corners: from squares halved, for the same reason
 */
function sides(across: number, down: number, side: Rational): LaidTriangle[] {
  const d = diagonalExact(exactOfRational(side));
  const at = (halvesX: number, halvesY: number): Point =>
    point(scaleExact(d, halvesX, 2), scaleExact(d, halvesY, 2));
  const found: LaidTriangle[] = [];
  const [w, h] = [2 * across, 2 * down];
  for (let x = 1; x < w - 1; x += 2) {
    found.push({ outline: [at(x, 0), at(x + 2, 0), at(x + 1, 1)], facing: 4 });
    found.push({
      outline: [at(x, h), at(x + 1, h - 1), at(x + 2, h)],
      facing: 0,
    });
  }
  for (let y = 1; y < h - 1; y += 2) {
    found.push({ outline: [at(0, y), at(1, y + 1), at(0, y + 2)], facing: 2 });
    found.push({
      outline: [at(w, y), at(w, y + 2), at(w - 1, y + 1)],
      facing: 6,
    });
  }
  return found;
}

function corners(across: number, down: number, side: Rational): LaidTriangle[] {
  const d = diagonalExact(exactOfRational(side));
  const half = scaleExact(d, 1, 2);
  const [w, h] = [scaleExact(d, across), scaleExact(d, down)];
  const [right, bottom] = [subExact(w, half), subExact(h, half)];
  const zero = ZERO_EXACT;
  return [
    {
      outline: [point(zero, zero), point(half, zero), point(zero, half)],
      facing: 7,
    },
    {
      outline: [point(right, zero), point(w, zero), point(w, half)],
      facing: 1,
    },
    { outline: [point(w, bottom), point(w, h), point(right, h)], facing: 3 },
    {
      outline: [point(zero, bottom), point(half, h), point(zero, h)],
      facing: 5,
    },
  ];
}

/**
 * Fills the edges of an on-point centre.
 * @param across blocks in a full row
 * @param down full rows
 */
export function placeTriangles(
  builder: Builder,
  across: number,
  down: number,
  side: Rational,
  carry: (p: Point) => Point,
): TriangleDemand[] {
  const { spec } = builder;
  const words = spec.setting.triangles;
  if (words === null) return [];
  const squares = settingPieces(side, howMade(spec));
  const square = mul(side, side);
  const ofSides = addTriangles(
    builder,
    { part: "side", word: words.sides, cut: squares.side, area: mul(square, rational(1n, 2n)) },
    sides(across, down, side),
    carry,
  );
  const ofCorners = addTriangles(
    builder,
    { part: "corner", word: words.corners, cut: squares.risingCorner, area: mul(square, rational(1n, 4n)) },
    corners(across, down, side),
    carry,
  );
  return [...ofSides, ...ofCorners];
}

/** One kind of setting triangle: its fabric, the square it is cut from, and its finished area. */
interface TriangleKind {
  part: "side" | "corner";
  word: FabricWord;
  cut: RecipePiece;
  area: Rational;
}

function addTriangles(
  builder: Builder,
  { part, word, cut, area }: TriangleKind,
  laid: readonly LaidTriangle[],
  carry: (p: Point) => Point,
): TriangleDemand[] {
  const fabric = builder.find(word, null, "");
  if (fabric === null || laid.length === 0) return [];
  const directional = builder.directions.has(fabric);
  const facing = new Map<Eighth, number>();
  const origin = { place: "setting-triangle", block: null, unit: null, part, border: null } as const;
  for (const triangle of laid) {
    builder.patches.push({
      outline: triangle.outline.map(carry),
      fabric,
      up: directional ? 0 : null,
      origin,
    });
    const key = directional ? asEighth(triangle.facing + builder.spec.setting.turn / 45) : 0;
    facing.set(key, (facing.get(key) ?? 0) + 1);
  }
  return [
    {
      part,
      fabric,
      subcut: part === "side" ? "twice-diagonal" : "once-diagonal",
      square: cut.across,
      roundedUp: cut.roundedUp,
      otherRounding: cut.otherRounding?.across ?? null,
      tradeShort: cut.tradeShort,
      facing: [...facing].map(([eighth, count]) => ({ eighth, count })).sort((a, b) => a.eighth - b.eighth),
      finished: Math.round(exactToNumber(exactOfRational(area)) * laid.length),
      path: word.path,
      at: word.at,
    },
  ];
}
