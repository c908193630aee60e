import type { z } from "zod";
import { type ShapeFault, shapeUnfit } from "../../diagnostics/shapes.ts";
import { fromInteger, mul, type Rational, toNumber } from "../../length/rational.ts";
import type { LengthUnit } from "../../length/types.ts";
import { SHAPES } from "../key-words.ts";
import type { ShapeKind, ShapeSpec } from "../types.ts";
import { choice, leaf, length, refuse, type WrittenLength } from "../written/written.ts";

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

type Field = "height" | "angle" | "tips" | "lean";

interface Fields {
  takes: readonly Field[];
  needs: readonly Field[];
}

const SLANTED: Fields = { takes: ["height", "lean"], needs: ["height"] };
const PLAIN: Fields = { takes: [], needs: [] };

/** What a kind needs besides its side, and what it may say. */
const FIELDS: Readonly<Record<ShapeKind, Fields>> = {
  triangle: { takes: ["height", "angle", "tips"], needs: [] },
  [SHAPES[1]]: SLANTED,
  diamond: { takes: ["angle", "lean"], needs: ["angle"] },
  parallelogram: { takes: ["height", "angle", "lean"], needs: ["height", "angle"] },
  trapezoid: { takes: ["height", "angle"], needs: ["height", "angle"] },
  [SHAPES[5]]: PLAIN,
};

/** Steeper or flatter cuts than these leave points that cannot be held under a ruler. */
const LEAST_ANGLE = 15;
const MOST_ANGLE = 85;

function angle() {
  return leaf({ about: "shape.angle" }, (written, context): number => {
    const value = Number(/^(\d{1,3}(?:\.\d)?)(?: ?(?:°|degrees?))?$/.exec(written)?.[1] ?? Number.NaN);
    if (value >= LEAST_ANGLE && value <= MOST_ANGLE) return value;
    const fault = { is: "angle", found: written, least: LEAST_ANGLE, most: MOST_ANGLE } as const;
    return refuse(context, (where) => shapeUnfit(where, fault));
  });
}

/** The fields of a shape. Sizes are finished sizes: the allowance is added to them. */
export function shapeFields(unit: LengthUnit) {
  return {
    shape: choice(SHAPES, "shape.shape"),
    side: length(unit, "shape.side", true),
    height: length(unit, "shape.height", true).optional(),
    angle: angle().optional(),
    seam: length(unit, "shape.seam").optional(),
    tips: choice(["sharp", "blunt"], "shape.tips").optional(),
    lean: choice(["right", "left"], "shape.lean").optional(),
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
  const { takes, needs } = FIELDS[kind];
  const tell = (fault: ShapeFault): null => {
    refuse(context, (where) => shapeUnfit(where, fault));
    return null;
  };
  const named = (["height", "angle", "tips", "lean"] as const).filter(
    (field) => written[field] !== undefined,
  );
  const odd = named.find((field) => !takes.includes(field));
  if (odd !== undefined) return tell({ is: "odd", kind, field: odd, takes: ["side", ...takes] });
  const missing = needs.find((field) => !named.includes(field));
  if (missing !== undefined) return tell({ is: "missing", kind, field: missing, needs });
  if (kind === "triangle" && written.height !== undefined && written.angle !== undefined)
    return tell({ is: "both" });
  const long = toNumber(side.value);
  const tan = Math.tan(((written.angle ?? 60) * Math.PI) / 180);
  const high =
    written.height === undefined
      ? kind === "diamond"
        ? long
        : (long * tan) / 2
      : toNumber(written.height.value);
  if (kind === "trapezoid" && long - (2 * high) / tan <= 0) return tell({ is: "sides-meet" });
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
