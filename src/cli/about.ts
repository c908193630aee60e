import type { Words } from "../words/index.ts";

/** What the program is, for its help and its manual. */
export const aboutText = (words: Words) => words.commandLine.about.turnsACutList;

/** Shown by `--version`; a test keeps it equal to package.json. */
export const VERSION = "0.1.0";
