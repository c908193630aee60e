import type { ShapeFault, ShapesFacts } from "../../../diagnostics/shapes.ts";
import type { WordsOf } from "../../diagnostics.ts";
import { list } from "../language.ts";

/** A field with a value that fits, by the kind of shape that needs it. */
const EXAMPLES: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  "right triangle": { height: "height: 6" },
  parallelogram: { angle: "angle: 45", height: "height: 2" },
  trapezoid: { angle: "height: 2", height: "height: 2" },
  diamond: { angle: "angle: 45" },
};

const ticked = (fields: readonly string[]): string[] => fields.map((field) => `\`${field}\``);

/** What was found, what is expected, and an example. */
function parts(fault: ShapeFault): [why: string, expected: string, example: string] {
  switch (fault.is) {
    case "angle":
      return [
        `ihr Winkel ist \`${fault.found}\``,
        `er ist eine Gradzahl von ${fault.least} bis ${fault.most}`,
        "angle: 60",
      ];
    case "odd":
      return [
        `\`${fault.field}\` gibt es bei \`${fault.kind}\` nicht`,
        `möglich ist ${ticked(fault.takes).join(", ")}`,
        `shape: ${fault.kind}`,
      ];
    case "missing":
      return [
        `\`${fault.field}\` fehlt`,
        `\`${fault.kind}\` braucht ${list(ticked(fault.needs))}`,
        EXAMPLES[fault.kind]?.[fault.field] ?? "angle: 60",
      ];
    case "both":
      return ["`height` und `angle` sind beide genannt", "eins ergibt sich aus dem anderen", "angle: 60"];
    case "sides-meet":
      return [
        "ihre schrägen Seiten treffen sich unterhalb ihrer Höhe",
        "beim Trapez bleibt oben eine kürzere Seite",
        "shape: triangle",
      ];
  }
}

export const shapes: WordsOf<ShapesFacts> = {
  shapeUnfit: (fault) => {
    const [why, expected, example] = parts(fault);
    return {
      message: `Diese Form lässt sich so nicht schneiden: ${why}; ${expected}.`,
      hint: `Zum Beispiel \`${example}\`.`,
    };
  },
};
