import type { CutPiece, NestedCut } from "../../cutlist/types.ts";
import { formatExact, formatExactSize, formatLength } from "../../length/index.ts";
import type { Ruler, Ticks } from "../../length/types.ts";

/** The words for shapes that stand alternately in strips. */
type ShapeKind = NonNullable<NestedCut["spec"]>["kind"];

const nouns: Readonly<Record<ShapeKind, readonly [one: string, many: string]>> = {
  triangle: ["triangle", "triangles"],
  "right triangle": ["right triangle", "right triangles"],
  diamond: ["diamond", "diamonds"],
  parallelogram: ["parallelogram", "parallelograms"],
  trapezoid: ["trapezoid", "trapezoids"],
  "half hexagon": ["half hexagon", "half hexagons"],
};

const words = {
  piece: ["piece", "pieces"] as const,
  strip: (height: string) => `strips ${height}`,
  finished: (side: string) => `${side} side finished`,
  angled: (degrees: number) => `${degrees} degrees`,
  high: (height: string) => `${height} high`,
  blunt: "point cut off",
  alternately: "standing alternately",
  sameWay: "all the same way up",
  reversed: ", turned face down",
  shown: (template: string) => `shown full size in template ${template}`,
  slant: (angle: number, edge: string) =>
    `lay the ${angle}-degree line of the ruler on its ${edge} and cut its end aslant`,
  lowerEdge: "lower edge",
  lean: { right: ", leaning to the right", left: ", leaning to the left" },
  points: "then cut from point to point, the ruler leaning the other way for every cut",
  edge: (step: string) =>
    `then cut at every ${step}, measured along the edge where the piece is longer, upper and lower edge in turn, the ruler leaning the other way for every cut`,
  square: (step: string) =>
    `then cut at every ${step}, measured square to the cut before, all leaning the same way`,
  marks: (step: string, half: string) =>
    `mark its lower edge at every ${step} and its upper edge ${half} further on, and cut from mark to mark`,
  rectangles: (size: string) => `cut rectangles ${size}`,
  corners: {
    right: "cut each from its upper left to its lower right corner",
    left: "cut each from its upper right to its lower left corner",
  },
  template: (name: string, faceDown: boolean, alternate: boolean) =>
    `lay template ${name}${faceDown ? " face down" : ""} as in the diagram, ${
      alternate ? "every second time half turned" : "the same way up every time"
    }, and cut along a ruler on its edge`,
} as const;

/** What shapes are called: the maker's shape, or pieces of a template. */
function shapeNoun({ spec }: NestedCut): readonly [one: string, many: string] {
  return spec === null ? words.piece : nouns[spec.kind];
}

/** `60 degrees, 4 in side finished`: what is told of a shape cut by a ruler. */
function shapeFacts({ spec }: NestedCut, ruler: Ruler): string[] {
  if (spec === null) return [];
  const { kind, side, height, angle, tips } = spec;
  const degrees = angle ?? (height === null ? 60 : null);
  return [
    `${nouns[kind][1]}, ${[
      ...(degrees === null || kind === "half hexagon" ? [] : [words.angled(degrees)]),
      words.finished(formatLength(side, ruler)),
      ...(height === null ? [] : [words.high(formatLength(height, ruler))]),
      ...(tips === "blunt" ? [words.blunt] : []),
    ].join(", ")}`,
  ];
}

/** What a bag of shapes is told with instead of a size: `strips 4 1/4 in`. */
function shapeSize(along: Ticks, ruler: Ruler): string {
  return words.strip(formatExact(along, ruler));
}

/** How shapes stand in the strip; empty where nothing need be said. */
function shapeStanding({ halfTurns, setting, across }: NestedCut): string {
  if (across.some(({ alternates }) => alternates)) return words.alternately;
  return halfTurns || setting.by === "square" ? "" : words.sameWay;
}

/** Where the outline is shown. */
function shownInTemplate({ name, reversed }: { name: string; reversed: number }): string {
  return `${words.shown(name)}${reversed > 0 ? words.reversed : ""}`;
}

/** How a strip is cut up into shapes: the first slanting cut, then what the ruler is set to. */
function slantPhrases(
  { along, nest }: CutPiece,
  template: { name: string; faceDown: boolean },
  ruler: Ruler,
): string[] {
  if (nest === undefined) return [];
  const { setting, spec, halfTurns } = nest;
  const { angle, by, step } = setting;
  const say = (size: Ticks) => formatExact(size, ruler);
  const lean = words.lean[spec?.lean ?? "right"];
  const first =
    angle === null ? [] : [`${words.slant(angle, words.lowerEdge)}${by === "square" ? lean : ""}`];
  switch (by) {
    case "points":
      return [...first, words.points];
    case "edge":
      return [...first, words.edge(say(step))];
    case "square":
      return [...first, words.square(say(step))];
    case "marks":
      return [words.marks(say(step), say(step / 2))];
    case "rectangles":
      return [words.rectangles(formatExactSize(step, along, ruler)), words.corners[spec?.lean ?? "right"]];
    case "template":
      return [
        words.template(
          template.name,
          template.faceDown,
          halfTurns && nest.across.some(({ alternates }) => alternates),
        ),
      ];
  }
}

/** What is said of pieces cut aslant and of shapes in strips. */
export const shapes = { shapeNoun, shapeFacts, shapeSize, shapeStanding, shownInTemplate, slantPhrases };
