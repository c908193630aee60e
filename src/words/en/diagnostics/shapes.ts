import type { ShapeFault, ShapesFacts } from "../../../diagnostics/shapes.ts";
import type { WordsOf } from "../../diagnostics.ts";

/** A field with a value that fits, by the kind of shape that needs it. */
const EXAMPLES: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  "right triangle": { height: "height: 6" },
  parallelogram: { angle: "angle: 45", height: "height: 2" },
  trapezoid: { angle: "height: 2", height: "height: 2" },
  diamond: { angle: "angle: 45" },
};

const ticked = (fields: readonly string[], between: string): string =>
  fields.map((field) => `\`${field}\``).join(between);

/** What was found, what is expected, and an example. */
function parts(fault: ShapeFault): [why: string, expected: string, example: string] {
  switch (fault.is) {
    case "angle":
      return [
        `its angle is \`${fault.found}\``,
        `it is a number of degrees from ${fault.least} to ${fault.most}`,
        "angle: 60",
      ];
    case "odd":
      return [
        `a ${fault.kind} has no \`${fault.field}\``,
        `it can say ${ticked(fault.takes, ", ")}`,
        `shape: ${fault.kind}`,
      ];
    case "missing":
      return [
        `its \`${fault.field}\` is missing`,
        `a ${fault.kind} needs ${ticked(fault.needs, " and ")}`,
        EXAMPLES[fault.kind]?.[fault.field] ?? "angle: 60",
      ];
    case "both":
      return ["it says both `height` and `angle`", "one of them says the other", "angle: 60"];
    case "sides-meet":
      return [
        "its slanting sides meet below its height",
        "a trapezoid has a shorter side left at the top",
        "shape: triangle",
      ];
  }
}

export const shapes: WordsOf<ShapesFacts> = {
  shapeUnfit: (fault) => {
    const [why, expected, example] = parts(fault);
    return {
      message: `This shape cannot be cut as written: ${why}; ${expected}.`,
      hint: `For example \`${example}\`.`,
    };
  },
};
