import { formatLength, formatMeasure } from "../../length/index.ts";
import type { Ticks } from "../../length/types.ts";
import type { Words } from "../types.ts";
import { counted } from "./language.ts";

type Assumed = Parameters<Words["assumed"]>[0]["of"];
type Said = [subject: string, value: string];
type Say = (ticks: Ticks) => string;

const PER: Readonly<Record<string, string>> = {
  unit: "Einheit",
  motif: "Motiv",
  block: "Block",
  row: "Reihe",
};

const HOLD: Readonly<Record<string, string>> = { fusible: "aufbügelbar", "sew-in": "zum Einnähen" };
const AFTER: Readonly<Record<string, string>> = { "left in": "bleibt darin", "torn away": "wird abgerissen" };

function said(
  of: Assumed,
  say: Say,
  measure: (ticks: Ticks, unit: "in" | "yd" | "mm" | "cm" | "m") => string,
): Said {
  switch (of.is) {
    case "bare-numbers":
      return ["Zahlen ohne Maßeinheit", of.inches ? "Zoll" : "Zentimeter"];
    case "ruler-marks":
      return ["Striche des Lineals", `alle ${say(of.mark)}`];
    case "ruler-length":
      return ["Länge des Lineals", say(of.length)];
    case "mat-length":
      return ["Länge der Matte", say(of.length)];
    case "fold":
      return ["Falten", "einmal gefaltet, Webkante auf Webkante"];
    case "cutting":
      return ["Zuschnitt", "Streifen, unterteilt und beschnitten"];
    case "leftovers-kept":
      return ["aufgehobene Reste", `ab ${say(of.length)} in beiden Richtungen`];
    case "joined-from":
      return ["aneinandergenähte Streifen", `kein Stück kürzer als ${say(of.length)}`];
    case "usable-width":
      return [
        "nutzbare Breite",
        `${say(of.usable)} (${say(of.width)} weniger ${say(of.selvage)} Webkante an jeder Seite)`,
      ];
    case "usable-width-tried":
      return ["probierte nutzbare Breite", say(of.usable)];
    case "selvage":
      return ["Webkante", `${say(of.length)} an jeder Seite`];
    case "straightening":
      return ["Begradigen", say(of.length)];
    case "straightening-to-line":
      return ["Begradigen", `${say(of.length)}, bis zu einer gedruckten Linie`];
    case "sold-in":
      return ["verkauft in", `Schritten von ${measure(of.step, of.unit)}`];
    case "bolt":
      return ["ein Ballen", `${measure(of.length, of.unit)} lang`];
    case "shrinkage":
      return ["Einlaufen", "keines: ungewaschen zugeschnitten"];
    case "print":
      return ["Druck", "keine Richtung: Teile dürfen gedreht werden"];
    case "squaring":
      return [
        "Begradigen von Stoff in festen Maßen",
        `${say(of.off)} an je einer Kante in beiden Richtungen`,
      ];
    case "seam-of-shapes":
      return ["Nahtzugabe von Formen", say(of.length)];
    case "restated":
      return ["umgestellt", `auf ein Lineal mit Strichen alle ${say(of.mark)}`];
    default:
      return saidOfQuilt(of, say);
  }
}

type OfQuilt = Exclude<
  Assumed,
  {
    is:
      | "bare-numbers"
      | "ruler-marks"
      | "ruler-length"
      | "mat-length"
      | "fold"
      | "cutting"
      | "leftovers-kept"
      | "joined-from"
      | "usable-width"
      | "usable-width-tried"
      | "selvage"
      | "straightening"
      | "straightening-to-line"
      | "sold-in"
      | "bolt"
      | "shrinkage"
      | "print"
      | "squaring"
      | "seam-of-shapes"
      | "restated";
  }
>;

function saidOfQuilt(of: OfQuilt, say: Say): Said {
  switch (of.is) {
    case "seam":
      return ["Nahtzugabe", say(of.length)];
    case "directional-prints":
      return ["Drucke mit Richtung", "im Quilt aufrecht"];
    case "mitred-over-long":
      return ["Zugabe der Streifen mit Gehrung", say(of.length)];
    case "binding-width":
      return ["Streifen der Einfassung", say(of.length)];
    case "binding-extra":
      return ["Einfassung, über die Kanten hinaus", say(of.length)];
    case "backing-overhang":
      return ["Rückseite, an jeder Seite über den Quilt hinaus", say(of.length)];
    case "wadding-overhang":
      return ["Vlies, an jeder Seite über den Quilt hinaus", say(of.length)];
    case "foundation-way":
      return ["Rasterunterlage", "Patch für Patch genäht"];
    case "foundation-per":
      return ["ein Stück Unterlage je", PER[of.per] ?? of.per];
    case "foundation-allowance":
      return ["Unterlage über die äußerste Nahtlinie hinaus", counted(of.squares, "Kästchen", "Kästchen")];
    case "foundation-ease":
      return ["Patches für die Unterlage größer um", say(of.length)];
    case "foundation-kept":
      return ["Unterlage", `${HOLD[of.hold] ?? of.hold}, ${AFTER[of.after] ?? of.after}`];
    case "set-squaring":
      return ["Begradigen eines Endes jedes Streifensets", say(of.off)];
  }
}

/** A default that was filled in, with its lengths as the ruler reads. */
export const assumed: Words["assumed"] = ({ of, elsewhere }, ruler) => {
  const { decimal, language } = ruler;
  const [subject, value] = said(
    of,
    (ticks) => formatLength(ticks, ruler),
    (ticks, unit) => formatMeasure(ticks, unit, { decimal, language }),
  );
  return { subject, value: elsewhere === true ? `${value} (wo nichts gesagt ist)` : value };
};
