import { motifsNotAlike, type NotMotifs } from "../../diagnostics/quilts/quilt.ts";
import type { Diagnostic } from "../../diagnostics/types.ts";
import { nth } from "../../length/nth.ts";
import {
  add,
  compare,
  div,
  equal,
  fromInteger,
  mul,
  type Rational,
  sub,
  toNumber,
} from "../../length/rational.ts";
import type { MotifsSpec, PrintsFollow, QuarterTurn, QuiltSpec } from "../../spec/quilt-types.ts";
import type { LaidBlock, LaidUnit } from "../laid-types.ts";
import { alikeAfter, lookOf, QUARTERS, type Sketch, sketchOf, wholeTurn } from "./looks.ts";

/** A part of a block that is turned by itself: a rectangle of whole units. */
export interface Part {
  x: Rational;
  y: Rational;
  across: Rational;
  down: Rational;
  units: LaidUnit[];
  /** How it lies in the file, against the way in which its first unit stands upright. */
  turn: QuarterTurn;
  sketch: Sketch;
}

/** The motifs of a block, in reading order. */
export interface MotifParts {
  parts: Part[];
  square: boolean;
  /** The quarter-turn that shows a motif's mirror image, left for right; null when none does. */
  mirror: QuarterTurn | null;
}

/** Blocks of more cells than this are only divided evenly: every rectangle of a larger one would be too many. */
const MOST_CELLS = 196;
/** Inside a block only these prints turn with a part of it. */
const TURNING: readonly PrintsFollow[] = ["unit"];

interface Box {
  x: Rational;
  y: Rational;
  across: Rational;
  down: Rational;
}

const isBefore = (a: Rational, b: Rational): boolean => compare(a, b) < 0;

function middleOf({ x, y, across, down }: Box): { x: number; y: number } {
  return { x: toNumber(x) + toNumber(across) / 2, y: toNumber(y) + toNumber(down) / 2 };
}

/** The units within a box; null when one lies across its edge. */
function unitsIn(box: Box, units: readonly LaidUnit[]): LaidUnit[] | null {
  const [right, lower] = [add(box.x, box.across), add(box.y, box.down)];
  const found: LaidUnit[] = [];
  for (const unit of units) {
    const [end, foot] = [add(unit.x, unit.across), add(unit.y, unit.down)];
    const apart =
      !isBefore(unit.x, right) || !isBefore(box.x, end) || !isBefore(unit.y, lower) || !isBefore(box.y, foot);
    if (apart) continue;
    const within =
      !isBefore(unit.x, box.x) && !isBefore(right, end) && !isBefore(unit.y, box.y) && !isBefore(lower, foot);
    if (!within) return null;
    found.push(unit);
  }
  return found;
}

function partOf(box: Box, block: LaidBlock, spec: QuiltSpec): Part | null {
  const units = unitsIn(box, block.units);
  if (units === null || units.length === 0) return null;
  const sketch = sketchOf(units, middleOf(box), block, spec, TURNING);
  return { ...box, units, turn: 0, sketch };
}

const turnsOf = (square: boolean): readonly QuarterTurn[] => (square ? QUARTERS : [0, 180]);

/** How a part is turned against another that is alike; null when it is not. */
function turnedFrom(first: Part, other: Part, square: boolean): QuarterTurn | null {
  const look = lookOf(other.sketch, 0);
  return turnsOf(square).find((turn) => lookOf(first.sketch, turn) === look) ?? null;
}

/** How the first part stands: as its first unit that has an up, so that a motif that points, points up at turn 0. */
function standing(first: Part, block: LaidBlock, spec: QuiltSpec): QuarterTurn {
  const ups = first.units.map((unit) => ({
    turn: unit.turn,
    alike: alikeAfter(sketchOf([unit], middleOf(unit), block, spec, TURNING)),
  }));
  const pointing = ups.find(({ alike }) => alike === 360) ?? ups.find(({ alike }) => alike === 180);
  return pointing?.turn ?? 0;
}

/** The parts as motifs; null when they are not all alike, or alike whichever way they are turned. */
function alikeParts(parts: readonly Part[], block: LaidBlock, spec: QuiltSpec): MotifParts | null {
  const [first] = parts;
  if (first === undefined || parts.length < 2) return null;
  const square = equal(first.across, first.down);
  const alike = alikeAfter(first.sketch);
  if (alike === 90 || (alike === 180 && !square)) return null;
  const stands = standing(first, block, spec);
  const turned: Part[] = [];
  for (const part of parts) {
    const turn = turnedFrom(first, part, square);
    if (turn === null) return null;
    turned.push({ ...part, turn: wholeTurn(turn + stands) });
  }
  return { parts: turned, square, mirror: mirrorOf(first, stands) };
}

function mirrorOf({ sketch }: Part, stands: QuarterTurn): QuarterTurn | null {
  const upright = wholeTurn(-stands);
  const mirrored = lookOf(sketch, wholeTurn(stands), true);
  return QUARTERS.find((turn) => lookOf(sketch, wholeTurn(upright + turn)) === mirrored) ?? null;
}

/** The block divided evenly; null when a unit lies across a line of division. */
function evenParts(block: LaidBlock, columns: number, rows: number, spec: QuiltSpec): Part[] | null {
  const [across, down] = [div(block.across, fromInteger(columns)), div(block.down, fromInteger(rows))];
  const parts: Part[] = [];
  for (let row = 0; row < rows; row += 1) {
    for (let column = 0; column < columns; column += 1) {
      const place = { x: mul(across, fromInteger(column)), y: mul(down, fromInteger(row)) };
      const part = partOf({ ...place, across, down }, block, spec);
      if (part === null) return null;
      parts.push(part);
    }
  }
  return parts;
}

/** Largest squares first: the block divided evenly into squares that are all alike. */
function inSquares(block: LaidBlock, spec: QuiltSpec): MotifParts | null {
  const most = new Set(block.units.map(({ x }) => toNumber(x))).size;
  for (let columns = 1; columns <= most; columns += 1) {
    const rows = div(mul(block.down, fromInteger(columns)), block.across);
    if (rows.d !== 1n || columns * Number(rows.n) < 2) continue;
    const parts = evenParts(block, columns, Number(rows.n), spec);
    const found = parts === null ? null : alikeParts(parts, block, spec);
    if (found !== null) return found;
  }
  return null;
}

/** Edges of units, from the left or from the top. */
function edgesOf(block: LaidBlock, axis: "x" | "y"): Rational[] {
  const all = block.units.map((unit) => unit[axis]);
  const sorted = all.sort((a, b) => compare(a, b));
  return sorted.filter((edge, i) => i === 0 || !equal(edge, sorted[i - 1] ?? edge));
}

/** Squares of whole units about a block's middle, the largest first, that come twice or more. */
function squaresAbout(block: LaidBlock, spec: QuiltSpec): MotifParts | null {
  if (block.columns * block.rows > MOST_CELLS) return null;
  const [xs, ys] = [edgesOf(block, "x"), edgesOf(block, "y")];
  const ends = [...xs.slice(1), block.across];
  const bySide = new Map<string, Box[]>();
  for (const y of ys) {
    for (const x of xs) {
      for (const end of ends) {
        const side = sub(end, x);
        const whole = equal(side, block.across) && equal(side, block.down);
        if (side.n <= 0n || whole || isBefore(block.down, add(y, side))) continue;
        const key = `${side.n}/${side.d}`;
        bySide.set(key, [...(bySide.get(key) ?? []), { x, y, across: side, down: side }]);
      }
    }
  }
  const sizes = [...bySide.values()].sort((a, b) =>
    compare(b[0]?.across ?? nth(b, 0).x, a[0]?.across ?? nth(a, 0).x),
  );
  for (const boxes of sizes) {
    const parts = boxes.flatMap((box) => partOf(box, block, spec) ?? []);
    const found = firstOfKinds(parts, block, spec);
    if (found !== null) return found;
  }
  return null;
}

const area = ({ across, down }: Box): Rational => mul(across, down);

const alikeKey = ({ sketch }: Part, square: boolean): string =>
  turnsOf(square)
    .map((turn) => lookOf(sketch, turn))
    .sort()[0] ?? "";

const meets = (a: Box, b: Box): boolean =>
  isBefore(a.x, add(b.x, b.across)) &&
  isBefore(b.x, add(a.x, a.across)) &&
  isBefore(a.y, add(b.y, b.down)) &&
  isBefore(b.y, add(a.y, a.down));

/**
 * Of parts of one size, the first that come twice or more and lie evenly about the middle. Where parts that are alike
 * overlap there is no telling which of them are meant.
 */
function firstOfKinds(parts: readonly Part[], block: LaidBlock, spec: QuiltSpec): MotifParts | null {
  const kinds = new Map<string, Part[]>();
  for (const part of parts) {
    const key = alikeKey(part, true);
    kinds.set(key, [...(kinds.get(key) ?? []), part]);
  }
  for (const own of kinds.values()) {
    const overlap = own.some((part, i) => own.slice(i + 1).some((other) => meets(other, part)));
    const found = !overlap && isEven(own, block) ? alikeParts(own, block, spec) : null;
    if (found !== null) return found;
  }
  return null;
}

/** Whether parts come to lie on one another when the block is turned a half. */
function isEven(parts: readonly Part[], block: LaidBlock): boolean {
  const at = (x: Rational, y: Rational): string => `${x.n}/${x.d} ${y.n}/${y.d}`;
  const places = new Set(parts.map(({ x, y }) => at(x, y)));
  return parts.every(({ x, y, across, down }) =>
    places.has(at(sub(sub(block.across, x), across), sub(sub(block.down, y), down))),
  );
}

/** The largest units that come twice or more and show when they are turned. */
function largestUnits(block: LaidBlock, spec: QuiltSpec): MotifParts | null {
  const units = [...block.units].sort((a, b) => compare(area(b), area(a)));
  const tried = new Set<string>();
  for (const { cell } of units) {
    if (tried.has(cell.code)) continue;
    tried.add(cell.code);
    const found = namedUnits(block, [cell.code], spec);
    if (found !== null) return found;
  }
  return null;
}

/** The units of these codes as motifs, each turned as itself; null when there are none to turn. */
function namedUnits(block: LaidBlock, codes: readonly string[], spec: QuiltSpec): MotifParts | null {
  const parts = block.units
    .filter(({ cell }) => codes.includes(cell.code))
    .flatMap((unit) => {
      const { x, y, across, down, turn } = unit;
      const part = partOf({ x, y, across, down }, block, spec);
      return part === null ? [] : [{ ...part, turn }];
    });
  const [first] = parts;
  if (first === undefined || parts.length < 2) return null;
  const square = parts.every(({ across, down }) => equal(across, down));
  const alike = Math.max(...parts.map(({ sketch }) => alikeAfter(sketch)));
  if (alike === 90 || (alike === 180 && !square)) return null;
  return { parts, square, mirror: mirrorOf(first, first.turn) };
}

/** The larger of two kinds of motif; of equals the first. */
function larger(a: MotifParts | null, b: MotifParts | null): MotifParts | null {
  const [one, other] = [a?.parts[0], b?.parts[0]];
  if (one === undefined || other === undefined) return a ?? b;
  return isBefore(area(one), area(other)) ? b : a;
}

/**
 * The motifs of a block: those its file names, else the largest parts of it that are alike but for a turn. First come
 * squares that divide the whole block evenly, then the larger of squares about its middle and of units, which need not
 * be square.
 * Parts that look the same whichever way they are turned are passed over for smaller ones.
 * @returns null when no part can be turned
 */
export function motifParts(block: LaidBlock, spec: QuiltSpec): MotifParts | null {
  const named = block.spec.motifs;
  if (named === null)
    return inSquares(block, spec) ?? larger(squaresAbout(block, spec), largestUnits(block, spec));
  if (named.codes.length > 0) return namedUnits(block, named.codes, spec);
  const parts = evenParts(block, named.columns, named.rows, spec);
  return parts === null ? null : alikeParts(parts, block, spec);
}

/** Tells of motifs a file names that are none: parts that units lie across, or that are not alike. */
export function checkMotifs(block: LaidBlock, spec: QuiltSpec, diagnostics: Diagnostic[]): void {
  const named = block.spec.motifs;
  if (named === null || motifParts(block, spec) !== null) return;
  diagnostics.push(motifsNotAlike(named, block.spec.name, whyNot(block, named, spec)));
}

function whyNot(block: LaidBlock, named: MotifsSpec, spec: QuiltSpec): NotMotifs {
  const { codes, columns, rows } = named;
  const known = block.spec.cells.map(({ code }) => code);
  const unknown = codes.find((code) => !known.includes(code));
  if (unknown !== undefined) return { why: "no-code", code: unknown, known };
  const count =
    codes.length > 0 ? block.units.filter(({ cell }) => codes.includes(cell.code)).length : columns * rows;
  if (count < 2) return { why: "one-only" };
  if (codes.length > 0) return { why: "same-all-round" };
  const parts = evenParts(block, columns, rows, spec);
  if (parts === null) return { why: "units-across" };
  const [first] = parts;
  const square = first !== undefined && equal(first.across, first.down);
  const alike = parts.every((part) => first !== undefined && turnedFrom(first, part, square) !== null);
  return { why: alike ? "same-all-round" : "not-alike" };
}
