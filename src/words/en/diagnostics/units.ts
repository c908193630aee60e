import type { UnitFault } from "../../../diagnostics/quilts/design-faults.ts";
import type { UnitName } from "../../../quilt/terms/names.ts";
import type { Said } from "../../diagnostics.ts";

const DRAWN = "Use `drawn patches` for a rectangle.";

/** Kinds that are square, as a sentence begins with them, and what to do instead. */
const SQUARE: Partial<Record<UnitName, readonly [name: string, instead: string]>> = {
  square: ["A square", "Use `rectangle`, or make both sides alike."],
  "half-square triangle": [
    "A half-square triangle",
    "Use `half-rectangle triangle` for a rectangle halved on its diagonal.",
  ],
  "quarter-square triangle": ["A quarter-square triangle unit", DRAWN],
  "three-patch square": ["A three-patch square", DRAWN],
  "four-triangle square": ["A four-triangle square", DRAWN],
  "square-in-a-square": ["A square-in-a-square", DRAWN],
  "log cabin": ["A log cabin", "Make both sides alike, or use `drawn patches`."],
  "courthouse steps": ["A log cabin", "Make both sides alike, or use `drawn patches`."],
  "eight-pointed star": ["An eight-pointed star", "Make both sides alike."],
};

function said(message: string, hint: string): Said {
  return { message, hint };
}

/**
 * Why a unit of that size cannot be made, or a drawing of patches is none.
 * @param unit code of its kind
 */
export function unitFault(fault: UnitFault, unit: string): Said {
  switch (fault.why) {
    case "not-square": {
      const [name, instead] = SQUARE[unit as UnitName] ?? [unit, ""];
      return said(`${name} is square, but the size asked is not.`, instead);
    }
    case "goose-not-twice-as-wide":
      return said(
        "A flying goose is twice as wide as it is high, with the goose flying up.",
        "Make the unit 2 cells wide and 1 high, for example 4 in x 2 in, and turn it; or use `drawn patches`.",
      );
    case "patches-count":
      return said(`A drawn unit has from 1 to ${fault.most} patches.`, "List each patch by its corners.");
    case "patches-gap":
      return said(
        "The patches do not fill the unit: there is a gap.",
        "Neighbouring patches share their corners; together they cover the whole unit.",
      );
    case "patches-overlap":
      return said(
        `The patches ${fault.first} and ${fault.second} overlap.`,
        "Neighbouring patches share their corners, and no patch lies on another.",
      );
    case "patch-corners":
      return said(
        `The patch for ${fault.role} (${fault.spot}) needs from 3 to ${fault.most} corners.`,
        "List the corners in order round the patch.",
      );
    case "patch-outside":
      return said(
        `The patch for ${fault.role} (${fault.spot}) reaches outside the unit.`,
        "Corners are measured from the unit's top left corner, finished.",
      );
    case "patch-crossed":
      return said(
        `The patch for ${fault.role} (${fault.spot}) crosses itself or has no area.`,
        "List the corners in order round the patch.",
      );
    case "patch-too-sharp":
      return said(
        `The patch ${fault.spot} has edges too near each other: with a seam allowance on they would cross.`,
        "Draw the patch wider there, or divide it in two.",
      );
    case "triangles-too-many":
      return said(
        `The row would hold more than ${fault.most} triangles.`,
        "Make the row higher or shorter: a triangle's base is a little over its height.",
      );
    default:
      return stripFault(fault);
  }
}

type InRows = Exclude<
  UnitFault,
  {
    why:
      | "not-square"
      | "goose-not-twice-as-wide"
      | "patches-count"
      | "patches-gap"
      | "patches-overlap"
      | "patch-corners"
      | "patch-outside"
      | "patch-crossed"
      | "patch-too-sharp"
      | "triangles-too-many";
  }
>;

/** Of log cabins, rails and snowballs. */
function stripFault(fault: InRows): Said {
  switch (fault.why) {
    case "rounds":
      return said(
        `A log cabin has from 1 to ${fault.most} rounds.`,
        "Give the number of rounds, for example 3.",
      );
    case "centre-size":
      return said(
        "The centre must be larger than nothing and smaller than the unit.",
        "Give the finished side of the centre, for example 2 in in a 12 in block.",
      );
    case "rails-count":
      return said(
        `A rail unit has from 2 to ${fault.most} rails.`,
        "Give the number of rails, for example 3.",
      );
    case "rails-too-many":
      return said(`A rail unit has at most ${fault.most} rails.`, "Divide it into two units.");
    case "rail-width":
      return said(
        "Every rail needs a width above zero.",
        "Give finished widths, for example 1 in, 2 in, 1 in.",
      );
    case "rails-sum":
      return said(
        "The rails do not add up to the height of the unit.",
        "Finished rail widths are without seams; leave them out for equal rails.",
      );
    case "rails-outgrow":
      return said(
        "Cut to the marks of this ruler, the rails grow so much that trimming takes the outer ones.",
        "Use a ruler with finer marks, or fewer and wider rails.",
      );
    case "no-corner":
      return said("A snowball needs at least one corner.", "Name the corners, for example `top-left`.");
    case "corner-twice":
      return said("A corner of the snowball is named twice.", "Name each corner once.");
    case "corner-size":
      return said("A snowball's corners need a size above zero.", "Give the finished size of the corner.");
    case "corners-overlap":
      return said(
        "The snowball's corners overlap or reach beyond the unit.",
        "Corners that share a side can each be at most half of it.",
      );
  }
}
