import type { PieceNote } from "../../../cutlist/types.ts";
import type { PlaceTold, Purpose } from "../../../diagnostics/purposes.ts";
import { formatLength, formatSize } from "../../../length/format.ts";
import type { Ruler } from "../../../length/types.ts";
import type { Words } from "../../types.ts";
import { capital, counted, list } from "../language.ts";
import { borderName } from "./border-name.ts";
import { methodName, partName, unitName, unitTold } from "./unit-names.ts";

const FILLED = { sashes: "Zwischenstreifen", cornerstones: "Eckquadrate" } as const;
const PER = { unit: "Einheit", motif: "Motiv", block: "Block", row: "Reihe" } as const;
const FOLD = { single: "einfacher", double: "doppelter" } as const;

function place(at: PlaceTold): string {
  switch (at.in) {
    case "block":
      return `Block ${at.block}`;
    case "sashes":
    case "cornerstones":
      return at.block === null ? FILLED[at.in] : `${FILLED[at.in]}, Block ${at.block}`;
    case "border":
      return `${borderName(at.border)}, Block ${at.block}`;
    case "corners":
      return `Ecken von ${borderName(at.border)}`;
  }
}

/** `Streifen 1, 3, 5` rather than each by itself. */
function parts(codes: readonly string[]): string {
  const numbers = codes.map((code) => /^rail (\d+)$/.exec(code)?.[1]);
  if (codes.length > 1 && numbers.every((number) => number !== undefined))
    return `Streifen ${numbers.join(", ")}`;
  return codes.map(partName).join(", ");
}

/** What a piece is cut for. */
function purpose(of: Purpose, ruler: Ruler, trimmed = true): string {
  switch (of.for) {
    case "label":
      return of.label;
    case "number":
      return `Teil ${of.number}`;
    case "size":
      return formatSize(of.across, of.along, ruler);
    case "unit": {
      const where = of.places.map(place).join(", ");
      if (of.made === null) return where;
      const { kind, method, parts: codes, trimTo } = of.made;
      const trim =
        trimTo === null || !trimmed
          ? ""
          : `, auf ${formatSize(trimTo.across, trimTo.along, ruler)} beschneiden`;
      return `${where}: ${unitName(kind)}, ${methodName(method)}, ${parts(codes)}${trim}`;
    }
    case "long-sashes":
      return "lange Zwischenstreifen";
    case "border":
      return `${borderName(of.border)}, ${of.pair === "sides" ? "Seiten" : "oben und unten"}`;
    case "triangles":
      return `${of.part === "side" ? "Seitendreiecke" : "Eckdreiecke"} (${of.used} von ${of.of})`;
    case "binding": {
      const what = of.bias ? "Schrägband" : "Einfassung";
      return `${what}, ${formatLength(of.length, ruler)} in ${FOLD[of.fold]} Lage`;
    }
    case "backing":
      return "Rückseite";
    case "backing-panels":
      return "Bahnen der Rückseite";
    case "wadding":
      return "Vlies";
    case "foundation":
      return `Unterlage für ${PER[of.per]} ${of.letter}, ${of.across} x ${of.down} gedruckte Kästchen`;
    case "several":
      return of.all.map((each) => purpose(each, ruler, trimmed)).join("; ");
    case "shorter-strip":
      return `${purpose(of.of, ruler, trimmed)} (ein kürzerer Streifen)`;
  }
}

type Run = Extract<PieceNote, { is: "run" }>;

const JOINS = {
  straight: ["gerade Naht", "gerade Nähte", "geraden Naht", "geraden Nähten"],
  diagonal: ["schräge Naht", "schräge Nähte", "schrägen Naht", "schrägen Nähten"],
} as const;

/** `2 Längen von 44 1/2 Zoll und 2 von 45 1/2 Zoll`. */
function cutFromRun({ lengths }: Run, ruler: Ruler): string {
  return list(
    lengths.map(({ count, length }, i) => {
      const said = formatLength(length, ruler);
      return i > 0 ? `${count} von ${said}` : `${counted(count, "Länge", "Längen")} von ${said}`;
    }),
  );
}

/** How strips, and shorter ends of strips, make a run. */
function run(of: Run, ruler: Ruler): string {
  const { strips, ends, join, length, lengths, whole } = of;
  const joins = strips + ends - 1;
  const [one, many, byOne, byMany] = JOINS[join];
  const sources = list([
    ...(strips === 0 ? [] : [counted(strips, "Streifen", "Streifen")]),
    ...(ends === 0 ? [] : [counted(ends, "kürzerer Streifen", "kürzere Streifen")]),
  ]);
  if (whole !== null) {
    const how =
      joins === 0
        ? `davon ${formatLength(length, ruler)} verwenden`
        : `mit ${counted(joins, byOne, byMany)} aneinandernähen`;
    return `${ends === 0 ? "" : `${sources}, `}${how}`;
  }
  const [first] = lengths;
  const cut =
    lengths.length === 1 && first?.count === 1
      ? `auf ${formatLength(first.length, ruler)} abschneiden`
      : `${cutFromRun(of, ruler)} daraus schneiden`;
  return joins === 0
    ? `${capital(cut)}.`
    : `${capital(sources)} aneinandernähen (${counted(joins, one, many)}), dann ${cut}.`;
}

const LAYER = { backing: "Rückseite", wadding: "Vlies" } as const;
const LAYER_FOR = { backing: "für die Rückseite", wadding: "für das Vlies" } as const;

function note(of: PieceNote, ruler: Ruler): string {
  switch (of.is) {
    case "own":
      return of.text;
    case "over-long":
      return "länger zuschneiden, nach dem Nähen kürzen";
    case "printed-lines":
      return "auf den gedruckten Linien schneiden";
    case "set":
      return `Streifenset ${of.set}${of.short ? ", das kurze" : ""}`;
    case "bias":
      return `zu fortlaufendem Schrägband nähen, ${formatLength(of.width, ruler)} breit`;
    case "backing":
    case "wadding": {
      const size = formatSize(of.across, of.down, ruler);
      const seams = of.seams === "vertical" ? "Nähte senkrecht" : "Nähte waagerecht";
      return of.panels === 1
        ? `${LAYER[of.is]} ${size}`
        : `die ${of.panels} Bahnen nebeneinander zusammennähen, ${seams}, ${LAYER_FOR[of.is]} von ${size}`;
    }
    case "run":
      return run(of, ruler);
  }
}

/** What pieces of cloth are for, and where units go. */
export const purposes: Words["purposes"] = {
  place,
  purpose,
  piece: (of, ruler) => ("for" in of ? purpose(of, ruler) : unitTold(of)),
  notes: ({ notes, joined }, ruler) => {
    const said = notes.map((one) => note(one, ruler)).join("; ");
    return joined?.perKit === true ? `Für jede Packung: ${said}` : said;
  },
  border: borderName,
  onPrintedLines: "nur auf den gedruckten Linien schneiden",
};
