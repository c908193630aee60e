import * as z from "zod";
import { nameUnusable, partRepeated } from "../diagnostics/fields.ts";
import { PATTERN_PARTS, type PatternPart, type PatternSpec } from "./pattern-types.ts";
import { choice, leaf, refuse, words } from "./written.ts";

/** Characters of the author's own words at one place: about two pages. */
const MOST_WORDS = 6000;
/** As in names, but lines may be broken. */
const UNPRINTABLE = /(?![\n\r\t])[\p{Cc}\p{Cs}\p{Co}\u200e\u200f\u202a-\u202e\u2066-\u2069\ufeff]/u;

/** Words of the author's in Markdown. */
function markdown(where: "before" | "after", part: PatternPart) {
  const help = {
    description: `your own words in Markdown, ${where} the part \`${part}\``,
    example: "Wash the fabric first.",
  };
  return leaf(help, (written, context): string => {
    const clean = written.normalize("NFC");
    const fault = UNPRINTABLE.test(clean)
      ? "has characters that cannot be printed"
      : [...clean].length > MOST_WORDS
        ? `is longer than ${MOST_WORDS} characters`
        : null;
    if (fault === null) return clean;
    return refuse(context, (place, field) => nameUnusable(place, field, fault));
  }).optional();
}

function byPart(where: "before" | "after") {
  const fields = Object.fromEntries(PATTERN_PARTS.map((part) => [part, markdown(where, part)])) as Record<
    PatternPart,
    ReturnType<typeof markdown>
  >;
  return z
    .strictObject(fields)
    .meta({ description: `your own words ${where} a part`, examples: ["{ cutting: Press first. }"] });
}

function parts() {
  const part = choice(PATTERN_PARTS, "a part of the pattern", "cutting");
  return z
    .array(part)
    .min(1)
    .superRefine((chosen, context) => {
      const twice = chosen.find((each, i) => chosen.indexOf(each) !== i);
      if (twice !== undefined) refuse(context, (where) => partRepeated(where, twice));
    })
    .meta({ description: "parts of the pattern, in order", examples: ["[requirements, cutting, units]"] });
}

/** The pattern to hand out: author, what is in it, and the author's own words. */
export function patternSchema() {
  const note = (description: string, example: string) => words({ description, example }, "note").optional();
  const name = (description: string, example: string) => words({ description, example }).optional();
  return z
    .strictObject({
      author: name("who designed it", "the designer"),
      copyright: note("copyright line", "(c) 2026 the designer. For your own use."),
      level: name("for whom it is", "confident beginner"),
      contact: note("where questions go", "questions@example.org"),
      credits: note("whom to thank", "Tested by the Tuesday group."),
      date: name("date of this printing", "November 2026"),
      version: name("version of this printing", "2"),
      changes: z
        .array(words({ description: "a change", example: "Border strips cut longer." }, "note"))
        .min(1)
        .meta({ description: "what changed since the last printing", examples: ["[Longer borders.]"] })
        .optional(),
      sizes: leaf(
        { description: "finished sizes it is for, as `buy --sizes` reads them", example: "3x3, 4x5" },
        (written) => written,
      ).optional(),
      parts: parts().optional(),
      before: byPart("before").optional(),
      after: byPart("after").optional(),
    })
    .meta({
      description: "the pattern to hand out or to sell (pattern.html)",
      examples: ["{ author: the designer, level: beginner }"],
    });
}

type WrittenPattern = z.output<ReturnType<typeof patternSchema>>;

function written(of: WrittenPattern["before"]): Partial<Record<PatternPart, string>> {
  const found = Object.entries(of ?? {}).flatMap(([part, said]) =>
    said === undefined ? [] : [[part, said]],
  );
  return Object.fromEntries(found);
}

/** The pattern with what the maker left out: every part, and no words of an author's. */
export function fillPattern(of: WrittenPattern | undefined): PatternSpec {
  return {
    author: of?.author ?? "",
    copyright: of?.copyright ?? "",
    level: of?.level ?? "",
    contact: of?.contact ?? "",
    credits: of?.credits ?? "",
    date: of?.date ?? "",
    version: of?.version ?? "",
    changes: of?.changes ?? [],
    sizes: of?.sizes ?? "",
    parts: of?.parts ?? [...PATTERN_PARTS],
    before: written(of?.before),
    after: written(of?.after),
  };
}
