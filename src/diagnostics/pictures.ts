import { NOWHERE, tell } from "./tell.ts";

import type { Diagnostic } from "./types.ts";

/** What is told of each, to be put in words. */
export interface PicturesFacts {
  fontUnreadable: { path: string; exists: boolean };
  lettersWithoutFont: { names: readonly string[]; letters: readonly string[] };
  notADrawing: { file: string };
  noPainter: Record<string, never>;
}

/** A font named on the command line that is none. */
export function fontUnreadable(path: string, exists: boolean): Diagnostic {
  return tell("FONT-UNREADABLE", "warning", NOWHERE, "fontUnreadable", { path, exists });
}

/** Names that no font at hand can draw. */
export function lettersWithoutFont(names: readonly string[], letters: readonly string[]): Diagnostic {
  return tell("LETTERS-WITHOUT-FONT", "warning", NOWHERE, "lettersWithoutFont", { names, letters });
}

/** A file to make a picture of that is no drawing. */
export function notADrawing(file: string): Diagnostic {
  return tell("NOT-A-DRAWING", "error", NOWHERE, "notADrawing", { file });
}

/** Nothing on this machine can make pictures of drawings: a warning where all else is done. */
export function noPainter(severity: "warning" | "error"): Diagnostic {
  return tell("NO-PICTURES", severity, NOWHERE, "noPainter", {});
}
