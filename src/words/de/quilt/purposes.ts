import type { PlaceTold, Purpose } from "../../../diagnostics/purposes.ts";
import { formatLength, formatSize } from "../../../length/format.ts";
import type { Ruler } from "../../../length/types.ts";
import type { Words } from "../../types.ts";
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
      return `${at.border}, Block ${at.block}`;
    case "corners":
      return `Ecken von ${at.border}`;
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
      return `${of.border}, ${of.pair === "sides" ? "Seiten" : "oben und unten"}`;
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

/** What pieces of cloth are for, and where units go. */
export const purposes: Words["purposes"] = {
  place,
  purpose,
  piece: (of, ruler) => ("for" in of ? purpose(of, ruler) : unitTold(of)),
};
