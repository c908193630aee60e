import type { Ticks } from "../../length/types.ts";
import type { Recipe, RecipeStep } from "./types.ts";

/** Raw size of something sewn, in ticks. */
export interface SewnSize {
  across: Ticks;
  along: Ticks;
}

type Sewn = Pick<Recipe, "pieces" | "stripSets" | "steps" | "trimTo">;

/** Raw sizes of the patches that are upright rectangles, by spot, as they are cut. */
function spotSizes(recipe: Sewn): Map<string, SewnSize> {
  const sizes = new Map<string, SewnSize>();
  for (const { subcut, lies, across, along } of recipe.pieces) {
    if (subcut !== "none") continue;
    for (const { spot } of lies.flat()) sizes.set(spot, { across, along });
  }
  return sizes;
}

/** Size of parts joined in a row; null when they do not meet edge to edge. */
function joined(
  parts: readonly (SewnSize | undefined)[],
  way: "across" | "down",
  seam: Ticks,
): SewnSize | null {
  const known = parts.filter((part) => part !== undefined);
  if (known.length < parts.length || known.length === 0) return null;
  const seams = 2 * seam * (known.length - 1);
  const [run, other] = way === "across" ? (["across", "along"] as const) : (["along", "across"] as const);
  const sides = known.map((part) => part[other]);
  // An edge that stands out by less than a seam allowance is trimmed level with the rest.
  const side = Math.min(...sides);
  if (Math.max(...sides) - side >= seam) return null;
  const length = known.reduce((sum, part) => sum + part[run], 0) - seams;
  return run === "across" ? { across: length, along: side } : { across: side, along: length };
}

/** A side that is no whole number of ticks is told short of it by less than one. */
function square(side: number): SewnSize {
  const down = Math.floor(side);
  return { across: down, along: down };
}

/**
 * Side of the units that a pair of squares gives. A diagonal sewn costs root 2 seams of the side, whatever the seam
 * opens to; round the edge the squares' own side less two seams becomes the units' diagonal. Derived geometry: the
 * cut sizes of half-square triangles, read backwards.
 */
function pairSide(side: Ticks, lines: "one" | "both" | "edges", seam: Ticks): number {
  switch (lines) {
    case "one":
      return side - Math.SQRT2 * seam;
    case "both":
      return side / 2 - Math.SQRT2 * seam;
    case "edges":
      return (side - 2 * seam) / Math.SQRT2;
  }
}

/**
 * Raw size of what each step of a recipe leaves, from the pieces as they are cut; null where it is no upright
 * rectangle or the step makes none.
 * @param seam allowance in ticks
 */
export function sewnSizes(recipe: Sewn, seam: Ticks): (SewnSize | null)[] {
  return sewnSteps(recipe, seam).sizes;
}

/** Ticks by which edges may differ and still be even: sums of lengths that were each rounded to a tick. */
const EVEN = 3;

/** The recipe's steps, with joins told to be cut level where a part as cut stands out beyond the others. */
export function levelledSteps(recipe: Sewn, seam: Ticks): RecipeStep[] {
  const { uneven } = sewnSteps(recipe, seam);
  return recipe.steps.map((step) =>
    step.do === "join" && uneven.has(step) ? { ...step, level: true as const } : step,
  );
}

function sewnSteps(
  recipe: Sewn,
  seam: Ticks,
): { sizes: (SewnSize | null)[]; uneven: ReadonlySet<RecipeStep> } {
  const made = spotSizes(recipe);
  const uneven = new Set<RecipeStep>();
  // What a pair leaves, before it is rounded: a second seam across it starts from there.
  let pairs = 0;
  const sizeAfter = (step: RecipeStep): SewnSize | null => {
    switch (step.do) {
      case "pair":
        pairs = pairSide(recipe.pieces[step.under]?.across ?? 0, step.lines, seam);
        return square(pairs);
      case "cross-pair":
        pairs -= Math.SQRT2 * seam;
        return square(pairs);
      case "small-on-large": {
        if (step.round === 1) return null;
        const [large, small] = [recipe.pieces[step.large], recipe.pieces[step.small]];
        return {
          across: Math.floor((large?.across ?? 0) - 2 * Math.SQRT2 * seam),
          along: Math.floor((small?.across ?? 0) - Math.SQRT2 * seam),
        };
      }
      case "flip": {
        const { across = 0, along = 0 } = recipe.pieces[step.base] ?? {};
        return { across, along };
      }
      case "strip-set": {
        const size = segmentSize(recipe, step.set, seam);
        const set = recipe.stripSets[step.set];
        for (let i = 1; set !== undefined && i <= set.segmentsPerUnit; i += 1)
          made.set(`${set.name}${i}`, size);
        return set === undefined ? null : size;
      }
      case "join": {
        const parts = step.parts.map((part) => made.get(part));
        const size = step.way === "edge" ? null : joined(parts, step.way, seam);
        if (size !== null) {
          made.set(step.makes, size);
          const other = step.way === "across" ? "along" : "across";
          if (parts.some((part) => part !== undefined && part[other] - size[other] > EVEN)) uneven.add(step);
        }
        return size;
      }
      case "trim": {
        const name = lastMade(recipe, step);
        const before = made.get(name ?? "");
        const kept = trimmed(step.to ?? recipe.trimTo, before);
        if (name !== null && before !== undefined) made.set(name, kept);
        return kept;
      }
      case "cut-triangles":
      case "cut-shapes":
        return null;
    }
  };
  return { sizes: recipe.steps.map(sizeAfter), uneven };
}

/** What a trim leaves: what is smaller already is not trimmed on that side. */
function trimmed({ across, along }: SewnSize, before: SewnSize | undefined): SewnSize {
  return before === undefined
    ? { across, along }
    : { across: Math.min(across, before.across), along: Math.min(along, before.along) };
}

function segmentSize(recipe: Sewn, index: number, seam: Ticks): SewnSize {
  const { segment = 0, strips = [] } = recipe.stripSets[index] ?? {};
  const along = strips.reduce((sum, { width }) => sum + width, 0) - 2 * seam * (strips.length - 1);
  return { across: segment, along };
}

/** What the step before a trim made, by name; null when it has none. */
function lastMade(recipe: Sewn, trim: RecipeStep): string | null {
  const before = recipe.steps[recipe.steps.indexOf(trim) - 1];
  return before?.do === "join" ? before.makes : null;
}

/**
 * Raw size of the unit as it is sewn, before its last trim; null where it cannot be told from upright rectangles.
 * @param seam allowance in ticks
 */
export function unitAsSewn(recipe: Sewn, seam: Ticks): SewnSize | null {
  const steps = recipe.steps.filter((step) => step.do !== "trim" || step.to !== undefined);
  const [only] = recipe.pieces;
  if (steps.length === 0) {
    const single = recipe.pieces.length === 1 && only !== undefined && only.subcut === "none";
    return single ? { across: only.across, along: only.along } : null;
  }
  return sewnSizes({ ...recipe, steps }, seam).at(-1) ?? null;
}
