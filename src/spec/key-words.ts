/**
 * The words of the file's own language that are more than one word: what a maker writes as a value, whatever language
 * she is told things in. They are read, compared and offered; no sentence stands here.
 */

export const ON_POINT = "on point";
export const LAYOUTS = ["straight", ON_POINT] as const;
export type Layout = (typeof LAYOUTS)[number];

/** What a directional print follows. */
export const PRINTS_FOLLOW = ["upright", "with block", "with unit"] as const;

/** How a print reads, and along which way of the cloth. */
export const PRINTS = [
  "none",
  "two-way",
  "one-way",
  "two-way along",
  "two-way across",
  "one-way along",
  "one-way across",
] as const;

/** Shapes that are cut aslant from a strip. */
export const SHAPES = [
  "triangle",
  "right triangle",
  "diamond",
  "parallelogram",
  "trapezoid",
  "half hexagon",
] as const;

/** How the corners of a border are sewn, and what each is called inside. */
export const BORDER_CORNERS = {
  "sides first": "sides-first",
  "tops first": "tops-first",
  mitred: "mitred",
} as const;
export const CORNER_WORDS = ["sides first", "tops first", "mitred"] as const;

export const LEFT_IN = "left in";
export const TORN_AWAY = "torn away";
/** What becomes of a foundation. */
export const AFTER = [LEFT_IN, TORN_AWAY] as const;

/** Words that may follow the count of a piece on one line, and what each says. */
export const PIECE_WORDS = {
  fixed: { turn: "fixed" },
  free: { turn: "free" },
  "turn fixed": { turn: "fixed" },
  "turn free": { turn: "free" },
  lengthwise: { cut: "lengthwise" },
  "cut lengthwise": { cut: "lengthwise" },
  "cut strips": { cut: "strips" },
  "cut either": { cut: "either" },
  "join straight": { join: "straight" },
  "join diagonal": { join: "diagonal" },
  "join no": { join: "no" },
} as const;

/** What was done, as it is said of the work, and what it is called inside. */
export const DONE = [
  ["cut off", "cut-off"],
  ["cut", "cut"],
  ["spoilt", "spoiled"],
  ["spoiled", "spoiled"],
] as const;

/** The first line of the file that keeps the work: a file without it is not ours. */
export const WORK_FORMAT = "crossgrain work";

/** What a file from no file is called. */
export const STANDARD_INPUT = "standard input";
