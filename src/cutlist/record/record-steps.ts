import { sewnSizes } from "../../quilt/index.ts";
import type { RecipePress, RecipeStep } from "../../quilt/units/types.ts";
import type { Listed, RecordOf } from "./record-units.ts";
import type { StepRecord } from "./unit-record.ts";

/** Perceived lightness of a colour written as hex, 0 to 1; the middle when it cannot be read. Rec. 709 weights. */
function lightness(colour: string): number {
  const found = /^#?([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})/i.exec(colour);
  if (found === null) return 0.5;
  const [red = 0, green = 0, blue = 0] = found.slice(1).map((part) => Number.parseInt(part, 16) / 255);
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

/** The recipe's steps with the fabrics they are pressed to and the sizes they come to. */
export function recordSteps(listed: Listed, of: RecordOf): StepRecord[] {
  const { recipe, demand } = listed;
  const roles = new Map(demand.spots.map(({ spot, role }) => [spot, role]));
  const roleOf = (name: string): string | null =>
    roles.get(name) ?? (Object.hasOwn(demand.fabrics, name) ? name : null);
  const dark = (role: string): number => lightness(of.fabrics.get(demand.fabrics[role] ?? "")?.colour ?? "");
  const sizes = sewnSizes(recipe, of.seam);
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
  const pressedTo = (step: RecipeStep): StepRecord["pressTo"] => {
    switch (step.do) {
      case "pair":
        return pressTo(step.press, [pieceRole(step.under), pieceRole(step.over)]);
      case "strip-set": {
        const strips = recipe.stripSets[step.set]?.strips ?? [];
        return pressTo(
          step.press,
          strips.map(({ role }) => role),
        );
      }
      case "join":
        return pressTo(step.press, step.parts);
      case "cross-pair":
      case "small-on-large":
      case "flip":
        return pressTo(step.press, []);
      case "trim":
      case "cut-triangles":
      case "cut-shapes":
        return null;
    }
  };
  const isDone = (step: RecipeStep): boolean =>
    step.do !== "trim" || step.to !== undefined || recipe.trimTo.needed || step.by === "ends";
  return recipe.steps.flatMap((step, i) =>
    isDone(step) ? [{ ...step, pressTo: pressedTo(step), size: sizes[i] ?? null } as StepRecord] : [],
  );
}
