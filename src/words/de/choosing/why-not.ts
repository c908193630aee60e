import { said } from "../../diagnostics.ts";
import type { Words } from "../../types.ts";
import { diagnostics } from "../diagnostics/index.ts";
import { directionLostBy } from "../diagnostics/quilt.ts";
import { list, plural } from "../language.ts";

/** Why a way that was tried cannot be taken. */
export const whyNot: Words["whyNot"] = (why) => {
  switch (why.because) {
    case "fault":
      return why.fault === null ? "Es lässt sich nicht planen." : said(why.fault, diagnostics).message;
    case "print":
      // What is done instead stands in a row of its own.
      return directionLostBy(why.fault.facts);
    case "foundation":
      return "Die Blöcke werden auf der Rasterunterlage genäht, Patch für Patch.";
    case "width":
      return "Die Teile passen nicht in die Breite des Stoffes.";
    case "blocks-not-square": {
      const one = plural(why.blocks.length, true, false);
      return `${list(why.blocks)} ${one ? "ist" : "sind"} nicht quadratisch und ${one ? "passt" : "passen"}, um ein Viertel gedreht, nicht in die Reihen.`;
    }
    case "motifs-not-square":
      return `die Motive von ${list(why.blocks)} sind nicht quadratisch und lassen sich nur um halbe Drehungen drehen.`;
  }
};
