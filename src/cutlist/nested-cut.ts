import type { Ruler, Ticks } from "../length/types.ts";
import { hullOf, nestRun } from "../quilt/units/outlines/nest.ts";
import { turnedShape } from "../quilt/units/outlines/shapes.ts";
import type { PatchShape, ShapePoint } from "../quilt/units/types.ts";
import type { Print, ShapeSpec } from "../spec/types.ts";
import { stripShape } from "./strip-shape.ts";
import type { CutPiece, NestedCut, NestedLie, SlantSetting } from "./types.ts";

/** Every second shape of a run may be turned half round. */
function mayHalfTurn(print: Print, turn: "free" | "fixed"): boolean {
  return turn === "free" || print.kind !== "one-way";
}

/** As a run sees a shape when its strip runs along the cloth. */
function transposed(line: readonly ShapePoint[]): ShapePoint[] {
  return line.map(({ x, y }) => ({ x: y, y: x }));
}

/** Equal lies are one. */
function different(lies: readonly NestedLie[]): NestedLie[] {
  const key = ({ height, first, advances }: NestedLie) => JSON.stringify([height, first, advances]);
  return lies.filter((lie, i) => lies.findIndex((other) => key(other) === key(lie)) === i);
}

/** What a cut list says of a shape that is cut aslant from strips by a ruler. */
export function shapePiece(
  spec: ShapeSpec,
  { count, turn }: { count: number; turn: "free" | "fixed" },
  print: Print,
  ruler: Ruler,
): Pick<CutPiece, "across" | "along" | "turnable" | "shape" | "nest"> {
  const { height, setting, ...shape } = stripShape(spec, ruler);
  const halfTurns = mayHalfTurn(print, turn);
  const run = nestRun(shape.cut, halfTurns);
  const lengthwise = nestRun(transposed(turnedShape(shape, 1).cut), halfTurns);
  const turnable = turn === "free";
  const told: SlantSetting = halfTurns || setting.by === "square" ? setting : { ...setting, by: "template" };
  const nest: NestedCut = {
    spec,
    setting: told,
    halfTurns,
    // The edge that lies on the strip is set: where the strip runs along the cloth, the shape lies turned.
    across: [{ ...run, turned: false }],
    along: turnable ? [{ ...lengthwise, turned: true }] : [],
  };
  const upright = { ...shape, asDrawn: count, reversed: 0 };
  return { across: upToMark(run.first, ruler), along: height, turnable, shape: upright, nest };
}

/** The rectangle of a shape is one that a ruler could cut. */
function upToMark(size: Ticks, { mark }: Ruler): Ticks {
  return Math.ceil(size / mark) * mark;
}

/** The same bag, told to stand in strips where that is closer than one rectangle for each. */
export function standingInStrips(piece: CutPiece, print: Print, ruler: Ruler): CutPiece {
  const nest = nestByTemplate(piece, print, ruler);
  if (nest === null || piece.shape === undefined) return piece;
  // What the rectangles lost beside the shapes is no longer in the pieces.
  const beside = Math.round(piece.count * (piece.across * piece.along - areaOfShape(piece)));
  if (piece.corners === undefined || piece.seams === undefined) return { ...piece, nest };
  // Blunted tips and roots rounded outwards: what they take more than the corners comes off the allowances.
  const corners = Math.max(0, piece.corners - beside);
  return { ...piece, corners, seams: piece.seams + Math.min(0, piece.corners - beside), nest };
}

/** Square ticks of one piece: within its outline where it is cut to one, else of its rectangle. */
export function areaOfShape({ across, along, shape }: CutPiece): number {
  const line = shape?.cut ?? [];
  if (line.length === 0) return across * along;
  const twice = line.reduce((sum, a, i) => {
    const b = line[(i + 1) % line.length] ?? a;
    return sum + a.x * b.y - b.x * a.y;
  }, 0);
  return Math.abs(twice) / 2;
}

/**
 * How pieces that are cut by one template stand in strips, laid in every way their print allows.
 * Null where they stand no closer than their rectangles. Those cut with the template turned face down are a bag of their own.
 */
function nestByTemplate(piece: CutPiece, print: Print, ruler: Ruler): NestedCut | null {
  const { shape, subcut, turnable, cut, fullWidth, count } = piece;
  if (subcut !== "template" || shape === undefined || cut !== "strips" || fullWidth || count < 2) return null;
  if (shape.asDrawn > 0 && shape.reversed > 0) return null;
  const halfTurns = mayHalfTurn(print, turnable ? "free" : "fixed");
  if (hullOf(shape.cut).length < shape.cut.length) return null;
  const lie = (outline: readonly ShapePoint[], turned: boolean): NestedLie => {
    const run = nestRun(outline, halfTurns);
    // The strip is cut on the marks; the template lies at its upper edge.
    return { ...run, height: upToMark(run.height, ruler), turned };
  };
  const upright = shape.cut;
  const turned = turnable ? turnedShape(shape as PatchShape, 1).cut : null;
  const across = [lie(upright, false), ...(turned === null ? [] : [lie(turned, true)])];
  const along = [
    lie(transposed(upright), false),
    ...(turned === null ? [] : [lie(transposed(turned), true)]),
  ];
  const saves = [...across, ...along].some(({ first, advances }) => advances.some((step) => step < first));
  if (!saves) return null;
  const setting: SlantSetting = { angle: null, by: "template", step: 0 };
  return { spec: null, setting, halfTurns, across: different(across), along: different(along) };
}
