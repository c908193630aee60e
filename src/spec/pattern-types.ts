/** What a pattern to hand out is made of, in the order it has where the maker names none. */
export const PATTERN_PARTS = [
  "requirements",
  "cautions",
  "cutting",
  "units",
  "foundation",
  "blocks",
  "setting",
  "borders",
  "finishing",
  "colouring",
  "words",
  "about",
  "templates",
] as const;

export type PatternPart = (typeof PATTERN_PARTS)[number];

/** The pattern to hand out or to sell: who made it, what is in it, and the author's own words. */
export interface PatternSpec {
  author: string;
  copyright: string;
  level: string;
  contact: string;
  credits: string;
  date: string;
  version: string;
  /** What changed since the last printing. */
  changes: string[];
  /** As `buy --sizes` reads them; empty: the size of the file alone. */
  sizes: string;
  /** Chosen and ordered. The cover comes first always. */
  parts: PatternPart[];
  /** The author's own words in Markdown, before and after a part. */
  before: Partial<Record<PatternPart, string>>;
  after: Partial<Record<PatternPart, string>>;
}
