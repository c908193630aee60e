import { formatExact, formatExactSize, formatLength } from "../../length/index.ts";
import type { Words } from "../types.ts";

type Nested = Parameters<Words["shapes"]["shapeFacts"]>[0];
type Ruler = Parameters<Words["shapes"]["shapeFacts"]>[1];
type ShapeKind = NonNullable<Nested["spec"]>["kind"];

const NOUNS: Readonly<Record<ShapeKind, readonly [one: string, many: string]>> = {
  triangle: ["Dreieck", "Dreiecke"],
  "right triangle": ["rechtwinkliges Dreieck", "rechtwinklige Dreiecke"],
  diamond: ["Raute", "Rauten"],
  parallelogram: ["Parallelogramm", "Parallelogramme"],
  trapezoid: ["Trapez", "Trapeze"],
  "half hexagon": ["halbes Sechseck", "halbe Sechsecke"],
};

const TURNING = "das Lineal bei jedem Schnitt nach der anderen Seite geneigt";
const LEAN = { right: ", nach rechts geneigt", left: ", nach links geneigt" } as const;
const CORNERS = {
  right: "jedes von der linken oberen zur rechten unteren Ecke durchschneiden",
  left: "jedes von der rechten oberen zur linken unteren Ecke durchschneiden",
} as const;

const byTemplate = ({ name, faceDown }: { name: string; faceDown: boolean }, alternate: boolean): string =>
  `Schablone ${name}${faceDown ? " mit der Schrift nach unten" : ""} wie im Schnittplan auflegen, ${
    alternate ? "jedes zweite Mal halb gedreht" : "jedes Mal gleich herum"
  }, und an ihrer Kante am Lineal entlang schneiden`;

/** `60 Grad, fertige Seite 4 Zoll`: what is told of a shape cut by a ruler. */
function shapeFacts({ spec }: Nested, ruler: Ruler): string[] {
  if (spec === null) return [];
  const { kind, side, height, angle, tips } = spec;
  const degrees = angle ?? (height === null ? 60 : null);
  return [
    `${NOUNS[kind][1]}, ${[
      ...(degrees === null || kind === "half hexagon" ? [] : [`${degrees} Grad`]),
      `fertige Seite ${formatLength(side, ruler)}`,
      ...(height === null ? [] : [`${formatLength(height, ruler)} hoch`]),
      ...(tips === "blunt" ? ["Spitze abgeschnitten"] : []),
    ].join(", ")}`,
  ];
}

/** How a strip is cut up into shapes: the first slanting cut, then what the ruler is set to. */
const slantPhrases: Words["shapes"]["slantPhrases"] = ({ along, nest }, template, ruler) => {
  if (nest === undefined) return [];
  const { setting, spec, halfTurns } = nest;
  const { angle, by, step } = setting;
  const say = (size: number): string => formatExact(size, ruler);
  const slant = `die ${angle}-Grad-Linie des Lineals an die Unterkante legen und das Ende schräg anschneiden`;
  const first = angle === null ? [] : [`${slant}${by === "square" ? LEAN[spec?.lean ?? "right"] : ""}`];
  switch (by) {
    case "points":
      return [...first, `dann von Spitze zu Spitze schneiden, ${TURNING}`];
    case "edge":
      return [
        ...first,
        `dann alle ${say(step)} schneiden, an der Kante gemessen, an der das Teil länger ist, abwechselnd oben und unten, ${TURNING}`,
      ];
    case "square":
      return [
        ...first,
        `dann alle ${say(step)} schneiden, rechtwinklig zum vorigen Schnitt gemessen, alle in derselben Neigung`,
      ];
    case "marks":
      return [
        `die Unterkante alle ${say(step)} markieren, die Oberkante um ${say(step / 2)} versetzt, und von Markierung zu Markierung schneiden`,
      ];
    case "rectangles":
      return [`Rechtecke ${formatExactSize(step, along, ruler)} schneiden`, CORNERS[spec?.lean ?? "right"]];
    case "template":
      return [byTemplate(template, halfTurns && nest.across.some(({ alternates }) => alternates))];
  }
};

/** What is said of pieces cut aslant and of shapes in strips. */
export const shapes: Words["shapes"] = {
  shapeNoun: ({ spec }) => (spec === null ? ["Teil", "Teile"] : NOUNS[spec.kind]),
  shapeFacts,
  shapeSize: (along, ruler) => `Streifen ${formatExact(along, ruler)}`,
  shapeStanding: ({ halfTurns, setting, across }) => {
    if (across.some(({ alternates }) => alternates)) return "abwechselnd gestellt";
    return halfTurns || setting.by === "square" ? "" : "alle gleich herum";
  },
  shownInTemplate: ({ name, reversed }) =>
    `in Originalgröße in Schablone ${name}${reversed > 0 ? ", mit der Schrift nach unten" : ""}`,
  slantPhrases,
};
