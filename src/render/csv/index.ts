import { stringify } from "csv-stringify/sync";
import type { CutPiece, NestedCut } from "../../cutlist/types.ts";
import { formatLength } from "../../length/index.ts";
import type { FabricPlan, Plan } from "../../plan/types.ts";

/**
 * RFC 4180: comma, CRLF, quotes where needed. A cell that a spreadsheet would run as a formula gets an
 * apostrophe before it, since names in it are the maker's own.
 */
export function csv(header: readonly string[], rows: readonly (readonly (string | number)[])[]): string {
  return stringify([[...header], ...rows.map((row) => [...row])], {
    record_delimiter: "\r\n",
    escape_formulas: true,
  });
}

/** What the columns of the cut list say of a bag besides its size. The diagonal lies as the cloth does. */
const csvWords = {
  print: {
    none: () => "no direction",
    "one-way": (axis: "along" | "across") => (axis === "along" ? "heads up" : "heads to the right"),
    "two-way": (axis: "along" | "across") => (axis === "along" ? "runs along" : "runs across"),
  },
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

/** One line per size to cut. Sizes are in the ruler's measure, without it; full-width pieces say WOF. */
export function cutsCsv(plan: Plan): string {
  const { unit } = plan.ruler;
  // Programs read it: a point, whatever the maker writes.
  const bare = { unit: false, decimal: undefined } as const;
  const header = [
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
  ];
  const rows = plan.fabrics.flatMap((fabric) =>
    fabric.pieces.map((piece) => [
      fabric.name,
      piece.letter,
      piece.label,
      piece.count,
      piece.fullWidth ? "WOF" : piece.nest?.spec != null ? "" : formatLength(piece.across, plan.ruler, bare),
      formatLength(piece.along, plan.ruler, bare),
      piece.turnable ? "free" : "fixed",
      csvWords.print[fabric.print.kind](fabric.print.axis),
      csvWords.cut[piece.cut],
      cutFurther(piece, plan),
      csvWords.diagonal(piece),
      piece.note,
    ]),
  );
  return csv(header, rows);
}

/** What is done with a piece, or a strip of shapes, once it is off the cloth. */
function cutFurther({ subcut, along, nest }: CutPiece, { ruler }: Plan): string {
  if (nest === undefined) return csvWords.subcut[subcut];
  const { angle, by, step } = nest.setting;
  const bare = { unit: false, decimal: undefined } as const;
  return csvWords.aslant(angle, by, formatLength(step, ruler, bare), formatLength(along, ruler, bare));
}

function inMoney(hundredths: number | null): string {
  return hundredths === null ? "" : (hundredths / 100).toFixed(2);
}

/** Pieces bought ready cut: `2 fat quarter; 4 10 in square`. */
function readyCutOf({ stock = [] }: FabricPlan): string {
  return stock
    .filter(({ from, used }) => from === "shop" && used > 0)
    .map(({ name, used }) => `${used} ${name.replace(/^bought /, "")}`)
    .join("; ");
}

/** One line per fabric: what to buy, what the cuts use and the price in hundredths of the currency. */
export function buyCsv(plan: Plan): string {
  const readyCut = plan.fabrics.some(({ mix }) => mix !== undefined);
  const { unit } = plan.ruler;
  // Programs read it: a point, whatever the maker writes.
  const bare = { unit: false, decimal: undefined } as const;
  const header = [
    "fabric",
    "buy",
    ...(readyCut ? ["ready cut"] : []),
    `cut length (${unit})`,
    `usable width (${unit})`,
    "price",
    "currency",
    "proven",
  ];
  const rows = plan.fabrics.map((fabric) => [
    fabric.name,
    fabric.purchase?.text ?? "",
    ...(readyCut ? [readyCutOf(fabric)] : []),
    formatLength(fabric.bound.used, plan.ruler, bare),
    formatLength(fabric.usable, plan.ruler, bare),
    inMoney(fabric.mix === undefined ? (fabric.purchase?.cost ?? null) : fabric.mix.cost),
    fabric.mix?.currency || fabric.price?.currency || "",
    (fabric.mix?.proven ?? fabric.bound.purchaseProven) ? "yes" : "no",
  ]);
  return csv(header, rows);
}
