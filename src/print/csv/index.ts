import { stringify } from "csv-stringify/sync";
import type { CutPiece } from "../../cutlist/types.ts";
import { formatLength } from "../../length/index.ts";
import { leastBought } from "../../plan/proved/index.ts";
import type { FabricPlan, Plan } from "../../plan/types.ts";
import type { Words } from "../../words/index.ts";

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

/** One line per size to cut. Sizes are in the ruler's measure, without it; full-width pieces say WOF. */
export function cutsCsv(plan: Plan, words: Words): string {
  const { unit } = plan.ruler;
  // Programs read it: a point, whatever the maker writes.
  const bare = { unit: false, decimal: undefined } as const;
  const rows = plan.fabrics.flatMap((fabric) =>
    fabric.pieces.map((piece) => [
      fabric.name,
      piece.letter,
      piece.label,
      piece.count,
      piece.fullWidth ? "WOF" : piece.nest?.spec != null ? "" : formatLength(piece.across, plan.ruler, bare),
      formatLength(piece.along, plan.ruler, bare),
      words.tables.cuts.turn[piece.turnable ? "free" : "fixed"],
      words.tables.cuts.print[fabric.print.kind](fabric.print.axis),
      words.tables.cuts.cut[piece.cut],
      cutFurther(piece, plan, words),
      words.tables.cuts.diagonal(piece),
      words.purposes.notes(piece, plan.ruler),
    ]),
  );
  return csv(words.tables.cuts.headings(unit), rows);
}

/** What is done with a piece, or a strip of shapes, once it is off the cloth. */
function cutFurther({ subcut, along, nest }: CutPiece, { ruler }: Plan, words: Words): string {
  if (nest === undefined) return words.tables.cuts.subcut[subcut];
  const { angle, by, step } = nest.setting;
  const bare = { unit: false, decimal: undefined } as const;
  return words.tables.cuts.aslant(
    angle,
    by,
    formatLength(step, ruler, bare),
    formatLength(along, ruler, bare),
  );
}

function inMoney(hundredths: number | null): string {
  return hundredths === null ? "" : (hundredths / 100).toFixed(2);
}

/** Pieces bought ready cut: `2 fat quarter; 4 10 in square`. */
function readyCutOf({ stock = [] }: FabricPlan, words: Words): string {
  return stock
    .filter(({ from, used }) => from === "shop" && used > 0)
    .map(({ name, used }) => `${used} ${words.cutting.cloth(name)}`)
    .join("; ");
}

/** One line per fabric: what to buy, what the cuts use and the price in hundredths of the currency. */
export function buyCsv(plan: Plan, words: Words): string {
  const readyCut = plan.fabrics.some(({ mix }) => mix !== undefined);
  const bolts = plan.fabrics.some(({ purchase }) => purchase?.lengths !== undefined);
  const { unit } = plan.ruler;
  // Programs read it: a point, whatever the maker writes.
  const bare = { unit: false, decimal: undefined } as const;
  const rows = plan.fabrics.map((fabric) => [
    fabric.name,
    fabric.purchase?.text ?? "",
    ...(bolts ? [(fabric.purchase?.lengths ?? []).map(({ text }) => text).join("; ")] : []),
    ...(readyCut ? [readyCutOf(fabric, words)] : []),
    formatLength(fabric.bound.used, plan.ruler, bare),
    formatLength(fabric.usable, plan.ruler, bare),
    inMoney(fabric.mix === undefined ? (fabric.purchase?.cost ?? null) : fabric.mix.cost),
    fabric.mix?.currency || fabric.price?.currency || "",
    leastBought(fabric) ? words.tables.buy.yes : words.tables.buy.no,
  ]);
  return csv(words.tables.buy.headings(unit, readyCut, bolts), rows);
}
