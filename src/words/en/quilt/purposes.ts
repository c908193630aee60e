import type { CutPiece, PieceNote } from "../../../cutlist/types.ts";
import type { PieceTold, PlaceTold, Purpose } from "../../../diagnostics/purposes.ts";
import { formatLength, formatSize } from "../../../length/format.ts";
import type { Ruler } from "../../../length/types.ts";
import { capital, counted, list } from "../language.ts";
import { borderName } from "./border-name.ts";
import { methodName, unitName, unitTold } from "./unit-names.ts";

function place(at: PlaceTold): string {
  switch (at.in) {
    case "block":
      return `block ${at.block}`;
    case "sashes":
    case "cornerstones":
      return at.block === null ? at.in : `${at.in}, block ${at.block}`;
    case "border":
      return `${borderName(at.border)}, block ${at.block}`;
    case "corners":
      return `corners of ${borderName(at.border)}`;
  }
}

/** `rails 1, 3, 5` rather than `rail 1, rail 3, rail 5`. */
function parts(codes: readonly string[]): string {
  const numbers = codes.map((code) => /^rail (\d+)$/.exec(code)?.[1]);
  if (codes.length > 1 && numbers.every((number) => number !== undefined))
    return `rails ${numbers.join(", ")}`;
  return codes.join(", ");
}

/** What a piece is cut for. `trimmed`: with what the sewn unit is trimmed to. */
function purpose(of: Purpose, ruler: Ruler, trimmed = true): string {
  switch (of.for) {
    case "label":
      return of.label;
    case "number":
      return `Piece ${of.number}`;
    case "size":
      return formatSize(of.across, of.along, ruler);
    case "unit": {
      const where = of.places.map(place).join(", ");
      if (of.made === null) return where;
      const { kind, method, parts: codes, trimTo } = of.made;
      const trim =
        trimTo === null || !trimmed ? "" : `, trim to ${formatSize(trimTo.across, trimTo.along, ruler)}`;
      return `${where}: ${unitName(kind)}, ${methodName(method)}, ${parts(codes)}${trim}`;
    }
    case "long-sashes":
      return "long sashes";
    case "border":
      return `${borderName(of.border)}, ${of.pair === "sides" ? "sides" : "top and bottom"}`;
    case "triangles":
      return `${of.part} setting triangles (${of.used} of ${of.of})`;
    case "binding":
      return `${of.fold}-fold ${of.bias ? "bias binding" : "binding"}, ${formatLength(of.length, ruler)}`;
    case "backing":
      return "backing";
    case "backing-panels":
      return "backing panels";
    case "wadding":
      return "wadding";
    case "foundation":
      return `foundation for ${of.per} ${of.letter}, ${of.across} x ${of.down} printed squares`;
    case "several":
      return of.all.map((each) => purpose(each, ruler, trimmed)).join("; ");
    case "shorter-strip":
      return `${purpose(of.of, ruler, trimmed)} (a shorter strip)`;
  }
}

type Noted = Pick<CutPiece, "notes" | "joined">;
type Run = Extract<PieceNote, { is: "run" }>;

/** What is cut from a run: `2 lengths of 44 1/2 in and 2 of 45 1/2 in`. */
function cutFromRun({ lengths }: Run, ruler: Ruler): string {
  return list(
    lengths.map(({ count, length }, i) => {
      const said = formatLength(length, ruler);
      return i > 0 ? `${count} of ${said}` : `${counted(count, "length")} of ${said}`;
    }),
  );
}

/** How strips, and shorter ends of strips, make a run. */
function run(of: Run, ruler: Ruler): string {
  const { strips, ends, join, length, lengths, whole } = of;
  const joins = strips + ends - 1;
  const seams = counted(joins, `${join} join`);
  const sources = list([
    ...(strips === 0 ? [] : [counted(strips, "strip")]),
    ...(ends === 0 ? [] : [counted(ends, "shorter strip")]),
  ]);
  if (whole !== null) {
    // What it is for says how long a binding it makes.
    const how =
      joins === 0 ? `${formatLength(length, ruler)} of it are wanted` : `sew end to end with ${seams}`;
    return `${ends === 0 ? "" : `${sources}, `}${how}`;
  }
  const [first] = lengths;
  const cut =
    lengths.length === 1 && first?.count === 1
      ? `cut it ${formatLength(first.length, ruler)} long`
      : `cut ${cutFromRun(of, ruler)} from the run`;
  return joins === 0 ? `${capital(cut)}.` : `Sew the ${sources} end to end (${seams}), then ${cut}.`;
}

function note(of: PieceNote, ruler: Ruler): string {
  switch (of.is) {
    case "own":
      return of.text;
    case "over-long":
      return "cut over-long, trim after sewing";
    case "printed-lines":
      return "cut on the printed lines";
    case "set":
      return `strip set ${of.set}${of.short ? ", the short one" : ""}`;
    case "bias":
      return `sew into continuous bias ${formatLength(of.width, ruler)} wide`;
    case "backing":
    case "wadding": {
      const size = formatSize(of.across, of.down, ruler);
      return of.panels === 1
        ? `${of.is} ${size}`
        : `sew the ${of.panels} panels side by side, ${of.seams} seams, for a ${of.is} of ${size}`;
    }
    case "run":
      return run(of, ruler);
  }
}

/** What pieces of cloth are for, and where units go. */
export const purposes = {
  place,
  purpose,
  /** A piece in a sentence. */
  piece: (of: PieceTold, ruler: Ruler): string => ("for" in of ? purpose(of, ruler) : unitTold(of)),
  /** What is said of a piece beside its size and what it is for; empty where nothing is. */
  notes: ({ notes, joined }: Noted, ruler: Ruler): string => {
    const said = notes.map((one) => note(one, ruler)).join("; ");
    return joined?.perKit === true ? `For each kit: ${said}` : said;
  },
  border: borderName,
  onPrintedLines: "cut it on its printed lines only",
};
