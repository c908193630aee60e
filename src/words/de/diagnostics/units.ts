import type { UnitFault } from "../../../diagnostics/quilts/design-faults.ts";
import type { Said } from "../../diagnostics.ts";
import { unitName } from "../quilt/unit-names.ts";

const DRAWN = "Für ein Rechteck `drawn patches` verwenden.";
const ALIKE = "Beide Seiten gleich machen, oder `drawn patches` verwenden.";

/** What to do instead where a unit has to be square. */
const INSTEAD: Readonly<Record<string, string>> = {
  square: "`rectangle` verwenden, oder beide Seiten gleich machen.",
  "half-square triangle": "Für ein diagonal halbiertes Rechteck `half-rectangle triangle` verwenden.",
  "log cabin": ALIKE,
  "courthouse steps": ALIKE,
  "eight-pointed star": "Beide Seiten gleich machen.",
};

/** Message and hint of each fault that tells nothing but itself. */
const PLAIN: Readonly<Record<Exclude<UnitFault["why"], Counted["why"]>, readonly [string, string]>> = {
  "goose-not-twice-as-wide": [
    "Eine fliegende Gans ist doppelt so breit wie hoch, wobei die Gans nach oben fliegt.",
    "Die Einheit 2 Zellen breit und 1 hoch machen, zum Beispiel 4 in x 2 in, und drehen; oder `drawn patches` verwenden.",
  ],
  "patches-gap": [
    "Die Patches füllen die Einheit nicht: Es bleibt eine Lücke.",
    "Benachbarte Patches haben ihre Ecken gemeinsam; zusammen decken sie die ganze Einheit.",
  ],
  "centre-size": [
    "Die Mitte muss größer als nichts und kleiner als die Einheit sein.",
    "Die fertige Seite der Mitte angeben, zum Beispiel 2 in in einem Block von 12 in.",
  ],
  "rail-width": [
    "Jeder Streifen braucht eine Breite über null.",
    "Fertige Breiten angeben, zum Beispiel 1 in, 2 in, 1 in.",
  ],
  "rails-sum": [
    "Die Streifen ergeben zusammen nicht die Höhe der Einheit.",
    "Fertige Breiten sind ohne Nahtzugaben; für gleiche Streifen weglassen.",
  ],
  "rails-outgrow": [
    "Auf die Striche dieses Lineals geschnitten, werden die Streifen so viel breiter, dass beim Beschneiden die äußeren wegfallen.",
    "Ein Lineal mit feineren Strichen nehmen, oder weniger und breitere Streifen.",
  ],
  "no-corner": ["Ein Schneeball braucht mindestens eine Ecke.", "Die Ecken nennen, zum Beispiel `top-left`."],
  "corner-twice": ["Eine Ecke des Schneeballs ist zweimal genannt.", "Jede Ecke einmal nennen."],
  "corner-size": [
    "Die Ecken eines Schneeballs brauchen eine Größe über null.",
    "Die fertige Größe der Ecke angeben.",
  ],
  "corners-overlap": [
    "Die Ecken des Schneeballs überschneiden sich oder ragen über die Einheit hinaus.",
    "Ecken an derselben Seite können je höchstens halb so lang sein wie sie.",
  ],
};

type Counted = Extract<
  UnitFault,
  { most: number } | { spot: string } | { first: string } | { why: "not-square" }
>;

function isPlain(fault: UnitFault): fault is Exclude<UnitFault, Counted> {
  return Object.hasOwn(PLAIN, fault.why);
}

const IN_ORDER = "Die Ecken der Reihe nach um den Patch nennen.";

/** Why a unit of that size cannot be made, or a drawing of patches is none. */
export function unitFault(fault: UnitFault, unit: string): Said {
  if (isPlain(fault)) {
    const [message, hint] = PLAIN[fault.why];
    return { message, hint };
  }
  switch (fault.why) {
    case "not-square":
      return {
        message: `Die Einheit „${unitName(unit)}“ ist quadratisch, die verlangte Größe nicht.`,
        hint: INSTEAD[unit] ?? DRAWN,
      };
    case "patches-count":
      return {
        message: `Eine gezeichnete Einheit hat 1 bis ${fault.most} Patches.`,
        hint: "Jeden Patch mit seinen Ecken nennen.",
      };
    case "patches-overlap":
      return {
        message: `Die Patches ${fault.first} und ${fault.second} überschneiden sich.`,
        hint: "Benachbarte Patches haben ihre Ecken gemeinsam, und kein Patch liegt auf einem anderen.",
      };
    case "patch-corners":
      return {
        message: `Der Patch für ${fault.role} (${fault.spot}) braucht 3 bis ${fault.most} Ecken.`,
        hint: IN_ORDER,
      };
    case "patch-outside":
      return {
        message: `Der Patch für ${fault.role} (${fault.spot}) ragt über die Einheit hinaus.`,
        hint: "Ecken werden von der linken oberen Ecke der Einheit aus gemessen, fertig.",
      };
    case "patch-crossed":
      return {
        message: `Der Patch für ${fault.role} (${fault.spot}) kreuzt sich selbst oder hat keine Fläche.`,
        hint: IN_ORDER,
      };
    case "patch-too-sharp":
      return {
        message: `Der Patch ${fault.spot} hat Kanten, die zu nah beieinanderliegen: Mit Nahtzugabe würden sie sich kreuzen.`,
        hint: "Den Patch dort breiter zeichnen, oder ihn teilen.",
      };
    case "rounds":
    case "rails-count":
    case "rails-too-many":
    case "triangles-too-many":
      return countFault(fault);
  }
}

/** A unit of more rounds, rails or triangles than are made. */
function countFault({
  why,
  most,
}: Extract<UnitFault, { why: "rounds" | "rails-count" | "rails-too-many" | "triangles-too-many" }>): Said {
  switch (why) {
    case "rounds":
      return {
        message: `Ein Blockhaus hat 1 bis ${most} Runden.`,
        hint: "Die Zahl der Runden angeben, zum Beispiel 3.",
      };
    case "rails-count":
      return {
        message: `Eine Streifeneinheit hat 2 bis ${most} Streifen.`,
        hint: "Die Zahl der Streifen angeben, zum Beispiel 3.",
      };
    case "rails-too-many":
      return {
        message: `Eine Streifeneinheit hat höchstens ${most} Streifen.`,
        hint: "In zwei Einheiten teilen.",
      };
    case "triangles-too-many":
      return {
        message: `Die Reihe hätte mehr als ${most} Dreiecke.`,
        hint: "Die Reihe höher oder kürzer machen: Die Grundseite eines Dreiecks ist etwas länger als seine Höhe.",
      };
  }
}
