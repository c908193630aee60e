/** What the program is, for its help and its manual. */
export const ABOUT =
  "Turns a cut list into fabric to buy, a cutting plan with the least waste, cutting diagrams and the order of cutting.";

/** Shown by `--version`; a test keeps it equal to package.json. */
export const VERSION = "0.1.0";
