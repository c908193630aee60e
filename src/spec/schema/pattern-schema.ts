import * as z from "zod";
import { type NameFault, nameUnusable, partRepeated } from "../../diagnostics/fields.ts";
import type { FileKey } from "../../diagnostics/file-keys.ts";
import { PATTERN_PARTS, type PatternPart, type PatternSpec } from "../pattern-types.ts";
import { choice, describes, leaf, refuse, words } from "../written/written.ts";

/** Characters of the author's own words at one place: about two pages. */
const MOST_WORDS = 6000;
/** As in names, but lines may be broken. */
const UNPRINTABLE = /(?![\n\r\t])[\p{Cc}\p{Cs}\p{Co}\u200e\u200f\u202a-\u202e\u2066-\u2069\ufeff]/u;

/** Words of the author's in Markdown. */
function markdown(where: "before" | "after", part: PatternPart) {
  return leaf({ about: `pattern.${where}.part`, of: part }, (written, context): string => {
    const clean = written.normalize("NFC");
    const fault: NameFault | null = UNPRINTABLE.test(clean)
      ? { is: "unprintable" }
      : [...clean].length > MOST_WORDS
        ? { is: "too-long", most: MOST_WORDS }
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
  return z.strictObject(fields).meta(describes(`pattern.${where}`));
}

function parts() {
  const part = choice(PATTERN_PARTS, "pattern.part");
  return z
    .array(part)
    .min(1)
    .superRefine((chosen, context) => {
      const twice = chosen.find((each, i) => chosen.indexOf(each) !== i);
      if (twice !== undefined) refuse(context, (where) => partRepeated(where, twice));
    })
    .meta(describes("pattern.parts"));
}

/** The pattern to hand out: author, what is in it, and the author's own words. */
export function patternSchema() {
  const note = (about: FileKey) => words(about, "note").optional();
  const name = (about: FileKey) => words(about).optional();
  return z
    .strictObject({
      author: name("pattern.author"),
      copyright: note("pattern.copyright"),
      level: name("pattern.level"),
      contact: note("pattern.contact"),
      credits: note("pattern.credits"),
      date: name("pattern.date"),
      version: name("pattern.version"),
      changes: z.array(words("pattern.change", "note")).min(1).meta(describes("pattern.changes")).optional(),
      sizes: leaf({ about: "pattern.sizes" }, (written) => written).optional(),
      parts: parts().optional(),
      before: byPart("before").optional(),
      after: byPart("after").optional(),
    })
    .meta(describes("pattern"));
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
