import type { z } from "zod";
import { shapeUnfit } from "../diagnostics/shapes.ts";
import { fromInteger, mul, type Rational, toNumber } from "../length/rational.ts";
import type { LengthUnit } from "../length/types.ts";
import type { ShapeKind, ShapeSpec } from "./types.ts";
import { choice, leaf, length, refuse, type WrittenLength } from "./written.ts";

/** A shape as written, its fields fit for its kind. */
export interface ReadShape {
  kind: ShapeKind;
  side: Rational;
  height: Rational | null;
  angle: number | null;
  seam: Rational | null;
  tips: ShapeSpec["tips"];
  lean: ShapeSpec["lean"];
  /** About how high it is, for counting cloth. */
  high: Rational;
}

const KINDS = [
  "triangle",
  "right triangle",
  "diamond",
  "parallelogram",
  "trapezoid",
  "half hexagon",
] as const;

type Field = "height" | "angle" | "tips" | "lean";

/** What a kind needs besides its side, in words and as an example, and what it may say. */
const FIELDS: Readonly<
  Record<ShapeKind, { takes: readonly Field[]; needs: readonly Field[]; example: string }>
> = {
  triangle: { takes: ["height", "angle", "tips"], needs: [], example: "angle: 60" },
  "right triangle": { takes: ["height", "lean"], needs: ["height"], example: "height: 6" },
  diamond: { takes: ["angle", "lean"], needs: ["angle"], example: "angle: 45" },
  parallelogram: { takes: ["height", "angle", "lean"], needs: ["height", "angle"], example: "angle: 45" },
  trapezoid: { takes: ["height", "angle"], needs: ["height", "angle"], example: "height: 2" },
  "half hexagon": { takes: [], needs: [], example: "" },
};

/** Steeper or flatter cuts than these leave points that cannot be held under a ruler. */
const LEAST_ANGLE = 15;
const MOST_ANGLE = 85;

function angle() {
  const help = { description: "degrees between the side and a slanting edge", example: 60 };
  return leaf(help, (written, context): number => {
    const value = Number(/^(\d{1,3}(?:\.\d)?)(?: ?(?:°|degrees?))?$/.exec(written)?.[1] ?? Number.NaN);
    if (value >= LEAST_ANGLE && value <= MOST_ANGLE) return value;
    const why = `its angle is \`${written}\``;
    const expected = `it is a number of degrees from ${LEAST_ANGLE} to ${MOST_ANGLE}`;
    return refuse(context, (where) => shapeUnfit(where, why, expected, "angle: 60"));
  });
}

/** The fields of a shape. Sizes are finished sizes: the allowance is added to them. */
export function shapeFields(unit: LengthUnit) {
  const pick = (inches: string, metric: string) => (unit === "in" || unit === "yd" ? inches : metric);
  return {
    shape: choice(KINDS, "a shape cut aslant from strips", "triangle"),
    side: length(
      unit,
      { description: "finished length of the side along the strip", example: pick("4", "10") },
      true,
    ),
    height: length(
      unit,
      { description: "finished height, square to that side", example: pick("3", "8") },
      true,
    ).optional(),
    angle: angle().optional(),
    seam: length(unit, {
      description: "seam allowance; 0 where sizes are as cut",
      example: pick("1/4", "0.75"),
    }).optional(),
    tips: choice(["sharp", "blunt"], "whether a triangle's point is cut off", "blunt").optional(),
    lean: choice(["right", "left"], "which way it leans", "left").optional(),
  };
}

interface Written {
  shape: ShapeKind;
  side: WrittenLength;
  height?: WrittenLength | undefined;
  angle?: number | undefined;
  seam?: WrittenLength | undefined;
  tips?: ShapeSpec["tips"] | undefined;
  lean?: ShapeSpec["lean"] | undefined;
}

/** The shape when its fields fit together; null when what does not has been told. */
export function shapeOf(written: Written, context: z.RefinementCtx): ReadShape | null {
  const { shape: kind, side } = written;
  const { takes, needs, example } = FIELDS[kind];
  const tell = (why: string, expected: string, shown: string): null => {
    refuse(context, (where) => shapeUnfit(where, why, expected, shown));
    return null;
  };
  const named = (["height", "angle", "tips", "lean"] as const).filter(
    (field) => written[field] !== undefined,
  );
  const odd = named.find((field) => !takes.includes(field));
  if (odd !== undefined) {
    const says = ["side", ...takes].map((field) => `\`${field}\``).join(", ");
    return tell(`a ${kind} has no \`${odd}\``, `it can say ${says}`, `shape: ${kind}`);
  }
  const missing = needs.find((field) => !named.includes(field));
  if (missing !== undefined)
    return tell(
      `its \`${missing}\` is missing`,
      `a ${kind} needs ${needs.map((f) => `\`${f}\``).join(" and ")}`,
      missing === "height" && example.startsWith("angle") ? "height: 2" : example,
    );
  if (kind === "triangle" && written.height !== undefined && written.angle !== undefined)
    return tell("it says both `height` and `angle`", "one of them says the other", "angle: 60");
  const long = toNumber(side.value);
  const tan = Math.tan(((written.angle ?? 60) * Math.PI) / 180);
  const high =
    written.height === undefined
      ? kind === "diamond"
        ? long
        : (long * tan) / 2
      : toNumber(written.height.value);
  if (kind === "trapezoid" && long - (2 * high) / tan <= 0)
    return tell(
      "its slanting sides meet below its height",
      "a trapezoid has a shorter side left at the top",
      "shape: triangle",
    );
  return {
    kind,
    side: side.value,
    height: written.height?.value ?? null,
    angle: written.angle ?? null,
    seam: written.seam?.value ?? null,
    tips: written.tips ?? "sharp",
    lean: written.lean ?? "right",
    high:
      written.height?.value ??
      (kind === "triangle" ? mul(side.value, fromInteger(Math.max(1, Math.ceil(tan / 2)))) : side.value),
  };
}
