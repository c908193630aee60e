import type { PatchPart } from "../../cutlist/record/unit-record.ts";
import type { CutPiece, NestedCut } from "../../cutlist/types.ts";

/** What the columns of the cut list say of a bag besides its size. The diagonal lies as the cloth does. */
export const cutsTable = {
  headings: (unit: string) => [
    "fabric",
    "letter",
    "label",
    "count",
    `across (${unit})`,
    `along (${unit})`,
    "turn",
    "print",
    "cut",
    "cut further",
    "diagonal",
    "note",
  ],

  print: {
    none: () => "no direction",
    "one-way": (axis: "along" | "across") => (axis === "along" ? "heads up" : "heads to the right"),
    "two-way": (axis: "along" | "across") => (axis === "along" ? "runs along" : "runs across"),
  },
  turn: { free: "free", fixed: "fixed" },
  cut: { strips: "strips", lengthwise: "lengthwise", either: "either way" },
  subcut: {
    none: "",
    "once-diagonal": "in half on the diagonal",
    "twice-diagonal": "in quarters on both diagonals",
    template: "along the template",
  },
  aslant: (angle: number | null, by: NestedCut["setting"]["by"], step: string, height: string) => {
    const from = `aslant from strips ${height}`;
    const at = angle === null ? from : `${from} at ${angle} degrees`;
    return {
      points: `${at}, from point to point`,
      edge: `${at}, at every ${step} along the longer edge`,
      square: `${at}, at every ${step} square to the cut`,
      marks: `${at}, marks at every ${step}`,
      rectangles: `${at}, rectangles ${step} long cut corner to corner`,
      template: `${at}, along the template`,
    }[by];
  },
  diagonal: ({ subcut, diagonal }: CutPiece) =>
    subcut !== "once-diagonal" || diagonal === "any"
      ? ""
      : diagonal === "rising"
        ? "lower left to upper right"
        : "upper left to lower right",
} as const;

/** How the cells of the table say what the record holds. */
export const unitsTable = {
  header: (unit: string) => [
    ...["unit", "what", "method", "make", "sets", "over", `raw across (${unit})`, `raw along (${unit})`],
    ...["heap", "in heap", "place", "fabric", "bag", "cut as", "pieces", "heads"],
  ],
  part: {
    whole: "whole",
    template: "along the template",
    "top-left": "half, right angle upper left",
    "top-right": "half, right angle upper right",
    "bottom-left": "half, right angle lower left",
    "bottom-right": "half, right angle lower right",
    top: "quarter, long side above",
    right: "quarter, long side right",
    bottom: "quarter, long side below",
    left: "quarter, long side left",
  } satisfies Record<PatchPart, string>,
  heads: ["up", "up right", "right", "down right", "down", "down left", "left", "up left"],
  faceDown: (heads: string) => `${heads}, seen on its wrong side`,
  inSet: (role: string) => `set: ${role}`,
  strip: (set: string, number: number) => `strip set ${set}, strip ${number}`,
  segments: (count: number, width: string, high: string) => `${count} segments of ${width}, ${high} high`,
} as const;

/** The shopping list. */
export const buyTable = {
  headings: (unit: string, readyCut: boolean, bolts: boolean) => [
    "fabric",
    "buy",
    ...(bolts ? ["of each bolt"] : []),
    ...(readyCut ? ["ready cut"] : []),
    `cut length (${unit})`,
    `usable width (${unit})`,
    "price",
    "currency",
    "proven",
  ],
  yes: "yes",
  no: "no",
};
