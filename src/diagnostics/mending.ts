import { nearest } from "./nearest.ts";
import type { Diagnostic } from "./types.ts";

/** A word of the file, and the one it was most likely meant to be. */
export interface Mending {
  from: string;
  to: string;
}

/** What was written, and what it could have been; null for what is not mended by another word. */
function wordsOf(diagnostic: Diagnostic): { from: string; known: readonly string[] } | null {
  switch (diagnostic.told) {
    case "choiceUnknown":
      return { from: diagnostic.facts.found, known: diagnostic.facts.options };
    case "keyUnknown": {
      const { key, known, line = "", takenBy = "" } = diagnostic.facts;
      return line === "" && takenBy === "" ? { from: key, known } : null;
    }
    case "pieceLineUnreadable": {
      const { fault } = diagnostic.facts;
      return fault.is === "word-unknown" ? { from: fault.word, known: fault.known } : null;
    }
    case "codeUnknown":
      return { from: diagnostic.facts.code, known: diagnostic.facts.known };
    case "roleUnknown": {
      // A part told by its number has no word that could be mended.
      const { role, known } = diagnostic.facts;
      return typeof role === "string" ? { from: role, known } : null;
    }
    case "blockUnknown":
    case "colourwayUnknown":
    case "foundationUnknown":
    case "methodUnknown":
    case "unitUnknown":
      return { from: diagnostic.facts.word, known: diagnostic.facts.known };
    default:
      return null;
  }
}

/** The word to put in place of one that is not known, where one is near; else null. */
export function mendingOf(diagnostic: Diagnostic): Mending | null {
  const words = wordsOf(diagnostic);
  const to = words === null ? null : nearest(words.from, words.known);
  return words === null || to === null ? null : { from: words.from, to };
}
