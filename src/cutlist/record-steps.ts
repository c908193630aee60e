import type { Recipe, RecipePress, RecipeStep } from "../quilt/units/types.ts";
import type { Listed, RecordOf } from "./record-units.ts";
import type { StepRecord } from "./unit-record.ts";

/** Perceived lightness of a colour written as hex, 0 to 1; the middle when it cannot be read. Rec. 709 weights. */
function lightness(colour: string): number {
  const found = /^#?([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})/i.exec(colour);
  if (found === null) return 0.5;
  const [red = 0, green = 0, blue = 0] = found.slice(1).map((part) => Number.parseInt(part, 16) / 255);
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

interface Size {
  across: number;
  along: number;
}

/** Raw sizes of the patches that are upright rectangles, by spot, as they are cut. */
function spotSizes(recipe: Recipe): Map<string, Size> {
  const sizes = new Map<string, Size>();
  for (const { subcut, lies, across, along } of recipe.pieces) {
    if (subcut !== "none") continue;
    for (const { spot } of lies.flat()) sizes.set(spot, { across, along });
  }
  return sizes;
}

/** Size of parts joined in a row; null when they do not meet edge to edge. */
function joined(parts: readonly (Size | undefined)[], way: "across" | "down", seam: number): Size | null {
  const known = parts.filter((part) => part !== undefined);
  if (known.length < parts.length || known.length === 0) return null;
  const seams = 2 * seam * (known.length - 1);
  const [run, other] = way === "across" ? (["across", "along"] as const) : (["along", "across"] as const);
  const sides = known.map((part) => part[other]);
  if (sides.some((side) => side !== sides[0])) return null;
  const length = known.reduce((sum, part) => sum + part[run], 0) - seams;
  return run === "across"
    ? { across: length, along: sides[0] ?? 0 }
    : { across: sides[0] ?? 0, along: length };
}

/** The recipe's steps with the fabrics they are pressed to and the sizes they come to. */
export function recordSteps(listed: Listed, of: RecordOf): StepRecord[] {
  const { recipe, demand } = listed;
  const roles = new Map(demand.spots.map(({ spot, role }) => [spot, role]));
  const roleOf = (name: string): string | null =>
    roles.get(name) ?? (Object.hasOwn(demand.fabrics, name) ? name : null);
  const dark = (role: string): number => lightness(of.fabrics.get(demand.fabrics[role] ?? "")?.colour ?? "");
  const made = spotSizes(recipe);
  const pressTo = (press: RecipePress, between: readonly string[]): StepRecord["pressTo"] => {
    const to = (part: string, role: string | null) =>
      role === null ? null : { part, fabric: demand.fabrics[role] ?? "" };
    if (press.to === "part") return to(press.part, roleOf(press.part)) ?? { part: press.part, fabric: "" };
    if (press.to !== "darker") return null;
    const own = between.map(roleOf);
    if (own.length < 2 || own.some((role) => role === null)) return null;
    const ranked = own.filter((role) => role !== null).sort((a, b) => dark(a) - dark(b));
    const [first, last] = [ranked[0] ?? "", ranked.at(-1) ?? ""];
    return demand.fabrics[first] === demand.fabrics[last] ? null : to(first, first);
  };
  const pieceRole = (index: number): string => recipe.pieces[index]?.role ?? "";
  const said = (step: RecipeStep): Omit<StepRecord, keyof RecipeStep> => {
    switch (step.do) {
      case "pair":
        return { pressTo: pressTo(step.press, [pieceRole(step.under), pieceRole(step.over)]), size: null };
      case "cross-pair":
      case "small-on-large":
        return { pressTo: pressTo(step.press, []), size: null };
      case "flip": {
        const { across = 0, along = 0 } = recipe.pieces[step.base] ?? {};
        return { pressTo: pressTo(step.press, []), size: { across, along } };
      }
      case "strip-set": {
        const set = recipe.stripSets[step.set];
        if (set === undefined) return { pressTo: null, size: null };
        const along =
          set.strips.reduce((sum, { width }) => sum + width, 0) - 2 * of.seam * (set.strips.length - 1);
        const size = { across: set.segment, along };
        for (let i = 1; i <= set.segmentsPerUnit; i += 1) made.set(`${set.name}${i}`, size);
        return {
          pressTo: pressTo(
            step.press,
            set.strips.map(({ role }) => role),
          ),
          size,
        };
      }
      case "join": {
        const size =
          step.way === "edge"
            ? null
            : joined(
                step.parts.map((part) => made.get(part)),
                step.way,
                of.seam,
              );
        if (size !== null) made.set(step.makes, size);
        return { pressTo: pressTo(step.press, step.parts), size };
      }
      case "trim":
        return { pressTo: null, size: { across: recipe.trimTo.across, along: recipe.trimTo.along } };
      case "cut-triangles":
      case "cut-shapes":
        return { pressTo: null, size: null };
    }
  };
  const trimmed = recipe.trimTo.needed;
  return recipe.steps
    .filter((step) => step.do !== "trim" || trimmed || step.by === "ends")
    .map((step) => ({ ...step, ...said(step) }) as StepRecord);
}
