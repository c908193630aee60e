import {
  clothName,
  type FabricPlan,
  formatLength,
  numberedParts,
  type Plan,
  runOutlines,
  typeset,
} from "../../planning.ts";
import { pathOf, UNIT } from "./picture.ts";

type Lay = FabricPlan["lays"][number];
type Part = Lay["root"];

/** A rectangle of cloth on the mat, in millimetres of its lay. */
export interface MatPart {
  x: number;
  y: number;
  across: number;
  along: number;
  /** Index of its bag, and how many pieces it holds for it; null and 0 for cloth that goes into none. */
  bag: number | null;
  holds: number;
  /** How large what is kept or stays uncut is; empty elsewhere. */
  says: string;
  keep: boolean;
  /** Outlines of shapes that stand in it; empty for rectangles. */
  d: string;
}

/** A strip or lengthwise strip with what is cut from it. */
export interface MatStrip {
  lay: number;
  number: number;
  lengthwise: boolean;
  x: number;
  y: number;
  across: number;
  along: number;
  /** What the ruler is set to. */
  width: string;
  parts: MatPart[];
}

/** One cloth: its strips, and what lies beside them. */
export interface MatLay {
  name: string;
  bolt: boolean;
  across: number;
  along: number;
  strips: MatStrip[];
  /** Straightening, and what stays uncut. */
  beside: MatPart[];
}

const leaves = (part: Part): Part[] => (part.parts.length === 0 ? [part] : part.parts.flatMap(leaves));

function matPart(part: Part, fabric: FabricPlan, plan: Plan): MatPart {
  const { x, y, across, along, piece, cause, keep } = part;
  const whole = cause === "uncut-end" || keep;
  const length = cause === "uncut-end" ? along : Math.max(across, along);
  return {
    x: x / UNIT,
    y: y / UNIT,
    across: across / UNIT,
    along: along / UNIT,
    bag: piece,
    holds: piece === null ? 0 : (part.shapes?.length ?? 1),
    keep,
    says: whole && piece === null ? formatLength(length, plan.ruler, { typeset: true }) : "",
    d: runOutlines(part, fabric.pieces)
      .map((points) => pathOf(points, 1))
      .join(""),
  };
}

/** One cloth of a fabric as it is drawn on the mat. */
export function matLay(lay: Lay, index: number, fabric: FabricPlan, plan: Plan): MatLay {
  const strips = numberedParts(lay.root);
  const own = new Set(strips.flatMap(leaves));
  return {
    name: typeset(clothName(lay.name)),
    bolt: lay.source === "bolt",
    across: lay.across / UNIT,
    along: lay.along / UNIT,
    strips: strips.map((part): MatStrip => {
      // Its subcuts go square to its run, wherever it lies.
      const lengthwise = part.cut === null ? part.along > part.across : part.cut === "across";
      return {
        lay: index,
        number: part.number,
        lengthwise,
        x: part.x / UNIT,
        y: part.y / UNIT,
        across: part.across / UNIT,
        along: part.along / UNIT,
        width: formatLength(lengthwise ? part.across : part.along, plan.ruler, { typeset: true }),
        parts: leaves(part).map((leaf) => matPart(leaf, fabric, plan)),
      };
    }),
    beside: leaves(lay.root)
      .filter((leaf) => !own.has(leaf))
      .map((leaf) => matPart(leaf, fabric, plan)),
  };
}
