import type { UnitTold } from "../../../diagnostics/quilts/quilt.ts";
import type { MethodName, UnitName } from "../../../quilt/terms/names.ts";
import { spoken } from "./spoken.ts";
import { methodTold } from "./unit-methods.ts";

/** Kinds of units. */
const UNITS: Readonly<Record<UnitName, string>> = {
  square: "square",
  rectangle: "rectangle",
  "half-square triangle": "half-square triangle",
  "quarter-square triangle": "quarter-square triangle",
  "three-patch square": "three-patch square",
  "four-triangle square": "four-triangle square",
  "flying geese": "flying geese",
  "square-in-a-square": "square-in-a-square",
  snowball: "snowball",
  "half-rectangle triangle": "half-rectangle triangle",
  "four-patch": "four-patch",
  "nine-patch": "nine-patch",
  rails: "rails",
  "log cabin": "log cabin",
  "courthouse steps": "courthouse steps",
  "eight-pointed star": "eight-pointed star",
  "sixty-degree triangles": "sixty-degree triangles",
  "drawn patches": "drawn patches",
};

/** Ways of making them, as they follow "made". */
const METHODS: Readonly<Record<MethodName, string>> = {
  "two at a time": "two at a time",
  "four at a time": "four at a time",
  "eight at a time": "eight at a time",
  "single triangles": "single triangles",
  "corner triangles": "corner triangles",
  "stitch-and-flip": "stitch-and-flip",
  "strip sets": "strip sets",
  "two strip sets": "two strip sets",
  "single pieces": "single pieces",
  "cut logs": "cut logs",
  "from strips": "from strips",
  templates: "templates",
  "on the foundation": "on the foundation",
  "on the foundation, from rectangles": "on the foundation, from rectangles",
};

/** Patches by their place, and what is made on the way to a unit; others are called as they are. */
const PARTS: Readonly<Record<string, string>> = {
  "sky-left": "sky left",
  "sky-right": "sky right",
  "top-left": "top left",
  "top-right": "top right",
  "bottom-left": "bottom left",
  "bottom-right": "bottom right",
  "upper-row": "upper row",
  "middle-row": "middle row",
  "lower-row": "lower row",
  "upper-pair": "upper pair",
  "lower-pair": "lower pair",
  "left-half": "left half",
  "right-half": "right half",
  "goose-and-sky": "goose with one sky",
  "centre-and-two": "centre with two corners",
};

/** Rows and rounds by the last patch that is in them: `up-to/3 top`. */
const MADE_WITH: Readonly<Record<string, (patch: string) => string>> = {
  "up-to": (patch) => `up to ${patch}`,
  "star-with": (patch) => `star with ${patch}`,
  "row-to": (patch) => `row up to ${patch}`,
};

/** A patch of a unit, or what is made on the way to it, by its code. */
export function partName(code: string): string {
  const [made = "", patch] = code.split("/");
  const named = patch === undefined ? undefined : MADE_WITH[made]?.(partName(patch));
  return named ?? PARTS[code] ?? code;
}

/** A kind of unit by its code; any other name as it stands. */
export function unitName(code: string): string {
  return UNITS[code as UnitName] ?? code;
}

/** A way of making a unit by its code. */
export function methodName(code: string): string {
  return METHODS[code as MethodName] ?? code;
}

/** A unit by its kind and its finished size. */
export function unitTold({ kind, finished }: UnitTold): string {
  return `${unitName(kind)} finishing ${spoken.size(finished)}`;
}

/** Units and ways of making them. */
export const unitNames = {
  unit: unitName,
  method: methodName,
  part: partName,
  told: unitTold,
  /** One line for a maker choosing between methods. */
  summary: (unit: string, method: string): string => methodTold(unit, method)?.summary ?? "",
  /** Where the sizes of a method are printed, or `derived geometry`, or `common practice`. */
  sources: (unit: string, method: string): readonly string[] => methodTold(unit, method)?.sources ?? [],
};
