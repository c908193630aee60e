import { expect } from "vitest";
import { fromInteger, type Rational, rational } from "../../../../src/length/rational.ts";
import { plainDesign } from "../../../../src/quilt/units/design.ts";
import { findUnitKind } from "../../../../src/quilt/units/registry.ts";
import type { HowMade, Recipe, UnitDesign, UnitKind } from "../../../../src/quilt/units/types.ts";

/** Ticks in an inch and in a centimetre. */
export const INCH = 16256;
export const CM = 6400;

/** Inches as ticks; eighths and quarters are whole, so nothing is rounded. */
export function inches(value: number): Rational {
  return rational(BigInt(Math.round(value * 128)) * 127n);
}

export function centimetres(value: number): Rational {
  return fromInteger(Math.round(value * CM));
}

export const QUARTER: HowMade = {
  seam: inches(0.25),
  mark: INCH / 8,
  rounding: "exact",
  oversize: fromInteger(0),
};
export const TRADE: HowMade = { ...QUARTER, rounding: "trade" };

export function kindOf(name: string): UnitKind {
  const kind = findUnitKind(name);
  if (kind === null) throw new Error(`no unit kind ${name}`);
  return kind;
}

/** Recipe of a kind and method, expected to be possible. */
export function recipeOf(kind: string, method: string, design: UnitDesign, how: HowMade): Recipe {
  const found = kindOf(kind);
  expect(found.check(design)).toBeNull();
  const made = found.methods.find((each) => each.name === method)?.recipe(design, how);
  if (made === undefined || !made.ok) throw new Error(`no recipe: ${kind}, ${method}`);
  return made.recipe;
}

/** Cut size of the first piece of a role, in inches, along. */
export function cutInches(recipe: Recipe, role: string): number {
  const piece = recipe.pieces.find((each) => each.role === role);
  if (piece === undefined) throw new Error(`no piece for ${role}`);
  return piece.along / INCH;
}

/** A unit in inches. */
export function unit(across: number, along: number): UnitDesign {
  return plainDesign(inches(across), inches(along));
}
