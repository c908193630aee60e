import { readFileSync } from "node:fs";
import { beforeAll, describe, expect, test } from "vitest";
import { cuttingSteps } from "../../src/content/index.ts";
import { makingSteps } from "../../src/content/sewing/making.ts";
import { planQuilt, USUAL_OPTIONS } from "../../src/pipeline.ts";
import { english } from "../../src/words/index.ts";
import { solveHere } from "../support/cut-list-spec.ts";
import { follow } from "./follow.ts";

/*
 * A ledger kept from the handout as printed: every piece, bag, strip set, heap, block, seam, size and leftover is
 * followed from the first cut to the last row, and every sum must come out. It knows the two texts and nothing of the
 * plan; a sentence it cannot read is a fault too, so that nothing is passed over.
 */
/** Every fixture quilt but those that cannot be planned. */
const FIXTURES = [
  "quilts/allotments",
  "quilts/barred-baby-quilt",
  "quilts/four-patch-orchard",
  "quilts/geese-and-bars",
  "quilts/lighthouse-sampler",
  "quilts/many-squares",
  "quilts/meadow-geese",
  "quilts/nine-stars",
  "quilts/rails-and-bars",
  "quilts/regatta",
  "quilts/salsa-on-point",
  "quilts/sashed-nine-patches",
  "quilts/sashed-star-points",
  "quilts/stars-and-geese-sashes",
  "quilts/vintage-crib",
  "quilts/wild-geese-round",
  "trials/alike-but-for-fabric",
  "trials/arrows-on-seams",
  "trials/backing-sideways",
  "trials/border-in-one-run",
  "trials/fitted-border",
  "trials/foundation-slanting",
  "trials/foundation-upright",
  "trials/geese-on-foundation",
  "trials/geese-one-way",
  "trials/half-rectangles-falling",
  "trials/half-rectangles-wide",
  "trials/logs",
  "trials/metric-stars",
  "trials/nine-patches-on-point",
  "trials/pieced-border-rows",
  "trials/prints-both-ways",
  "trials/rails-rounded",
  "trials/rounded-widths",
  "trials/star-strips",
  "trials/stripe-round",
  "trials/templates-of-both-hands",
  "trials/templates-turned",
  "trials/thirds",
  "trials/triangles-one-way",
  "trials/triangles-print-across",
  "trials/triangles-turned",
  "trials/triangles-upside-down",
  "trials/turned-cabins",
  "trials/uneven-columns",
];

interface Printed {
  steps: string;
  sewing: string;
}

async function printed(name: string): Promise<Printed> {
  const text = readFileSync(new URL(`../../fixtures/${name}.yaml`, import.meta.url), "utf8");
  const { value } = await planQuilt(text, name, { ...USUAL_OPTIONS, effort: 3 }, solveHere);
  if (value === null) throw new Error(`no plan for ${name}`);
  return { steps: cuttingSteps(value, true, english), sewing: makingSteps(value, english) };
}

const texts = new Map<string, Printed>();
const textOf = (name: string): Printed => texts.get(name) ?? { steps: "", sewing: "" };

beforeAll(async () => {
  for (const name of FIXTURES) texts.set(name, await printed(name));
}, 120_000);

test.each(FIXTURES)("every number of %s comes out", (name) => {
  const { steps, sewing } = textOf(name);
  expect(follow(steps, sewing)).toEqual([]);
});

/** A text spoilt in one place; where the place is not found the test would prove nothing. */
function spoilt(text: string, from: string | RegExp, to: string): string {
  const made = text.replace(from, to);
  if (made === text) throw new Error(`nothing to spoil: ${from}`);
  return made;
}

type Spoil = [what: string, fixture: string, part: keyof Printed, from: string | RegExp, to: string];

/** Each is one slip in what is printed, of the kind that ruins cloth. */
const SLIPS: Spoil[] = [
  [
    "a patch out of another bag on the foundation",
    "quilts/wild-geese-round",
    "sewing",
    "a half of F (mist)",
    "a half of E (straw)",
  ],
  [
    "a piece of foundation too few",
    "quilts/wild-geese-round",
    "sewing",
    /Cut 36 pieces of/,
    "Cut 35 pieces of",
  ],
  [
    "a part named that is not made",
    "trials/geese-on-foundation",
    "sewing",
    "motif A, motif B",
    "motif A, motif E",
  ],
  ["a part left out of its block", "trials/geese-on-foundation", "sewing", "motif A, motif B,", "motif A,"],
  ["a strip too few", "quilts/four-patch-orchard", "steps", "keep 11 whole [A]", "keep 10 whole [A]"],
  [
    "a size off by an eighth in its list",
    "quilts/four-patch-orchard",
    "steps",
    "[E]  49  8 1/2 in square",
    "[E]  49  8 5/8 in square",
  ],
  [
    "a size off by an eighth where it is cut",
    "quilts/four-patch-orchard",
    "steps",
    "subcut 49 squares 8 1/2 in",
    "subcut 49 squares 8 3/8 in",
  ],
  [
    "a leftover larger than what is left",
    "quilts/four-patch-orchard",
    "steps",
    "37 x 4 1/2 in (strip ends)",
    "38 x 4 1/2 in (strip ends)",
  ],
  ["less bought than cut", "quilts/four-patch-orchard", "steps", "buy 3 1/8 yd", "buy 3 yd"],
  ["a diagonal cut forgotten", "trials/star-strips", "steps", /^.*Cut each of the 13 of \[E\][^.]*\.\n/m, ""],
  [
    "a bag swapped in a set",
    "quilts/four-patch-orchard",
    "sewing",
    "A/B (reds), C/D (greens)",
    "C/D (greens), C/D (greens)",
  ],
  [
    "a bag of another fabric",
    "quilts/four-patch-orchard",
    "sewing",
    "E (yellows), patch",
    "A (yellows), patch",
  ],
  [
    "a strip set too few",
    "quilts/four-patch-orchard",
    "sewing",
    "Make 11 sets of strips",
    "Make 10 sets of strips",
  ],
  [
    "segments too few",
    "quilts/four-patch-orchard",
    "sewing",
    "then cut 100 segments",
    "then cut 98 segments",
  ],
  [
    "a set higher than its strips",
    "quilts/four-patch-orchard",
    "sewing",
    /each is 8 1\/2 in\s+high/,
    "each is 8 5/8 in high",
  ],
  ["a unit too many", "quilts/four-patch-orchard", "sewing", "strip sets: make 50", "strip sets: make 51"],
  [
    "a row measured wrong",
    "quilts/four-patch-orchard",
    "sewing",
    /Each measures 72 1\/2 x\s+8 1\/2 in/,
    "Each measures 72 3/8 x 8 1/2 in",
  ],
  [
    "a row left out of the top",
    "quilts/four-patch-orchard",
    "sewing",
    "rows 1 to 11, one below",
    "rows 1 to 10, one below",
  ],
  [
    "a block short in a row",
    "quilts/four-patch-orchard",
    "sewing",
    "Rows 1, 3, 5, 7, 9 and 11: patch, E (yellows), patch, E",
    "Rows 1, 3, 5, 7, 9 and 11: patch, patch, E",
  ],
  ["seams that do not add up", "quilts/four-patch-orchard", "sewing", "160 seams in all", "161 seams in all"],
  [
    "rows that nobody presses",
    "quilts/four-patch-orchard",
    "sewing",
    "Press all seams towards the plain blocks. Each",
    "Each",
  ],
  ["a unit's pressing missing", "trials/half-rectangles-falling", "sewing", /\n\s+Press to [^.]*\./, ""],
  [
    "pressing told for some only",
    "trials/rails-rounded",
    "sewing",
    /Press 8 of them, for R 2/,
    "Press 7 of them, for R 2",
  ],
  ["a log missing", "trials/logs", "sewing", /\n\s+L \(dark\) on its left: [^\n]*/, ""],
  [
    "a log on the wrong size",
    "trials/logs",
    "sewing",
    "D (pale) on its right: 4 x 4 in",
    "D (pale) on its right: 4 1/8 x 4 in",
  ],
  [
    "a trim larger than what is sewn",
    "trials/logs",
    "sewing",
    "Trim to 6 1/2 x 6 1/2 in",
    "Trim to 6 3/4 x 6 3/4 in",
  ],
  [
    "a heap dropped",
    "trials/triangles-upside-down",
    "sewing",
    /; U1b \(\d+\) is the unit turned\s+half round/,
    "",
  ],
  ["a heap counted wrong", "trials/triangles-upside-down", "sewing", /U1a \(\d+\)/, "U1a (3)"],
  [
    "a corner of a flip missing",
    "trials/geese-one-way",
    "sewing",
    /\n\s+upper right: from the upper left[^\n]*/,
    "",
  ],
  ["blocks of a kind too few", "trials/geese-one-way", "sewing", /col 2 \(make 1\)/, "col 2 (make 2)"],
  [
    "a run with a join too few",
    "trials/border-in-one-run",
    "sewing",
    /(\d+) straight joins/,
    "1 straight joins",
  ],
  [
    "a border on a top of another size",
    "trials/border-in-one-run",
    "sewing",
    /The top measures about 4\d/,
    "The top measures about 50",
  ],
  [
    "binding with a strip too few",
    "quilts/four-patch-orchard",
    "sewing",
    "Binding: 9 strips",
    "Binding: 8 strips",
  ],
  [
    "another seam allowance",
    "quilts/four-patch-orchard",
    "sewing",
    "Seam allowance 1/4 in",
    "Seam allowance 3/8 in",
  ],
  [
    "a sentence nobody can read",
    "trials/logs",
    "sewing",
    "      Trim to",
    "      Take 3 A (red) besides.\n      Trim to",
  ],
];

describe("a slip in the text is found", () => {
  test.each(SLIPS)("%s", (_, fixture, part, from, to) => {
    const own = textOf(fixture);
    expect(follow(own.steps, own.sewing)).toEqual([]);
    const wrong = { ...own, [part]: spoilt(own[part], from, to) };
    expect(follow(wrong.steps, wrong.sewing)).not.toEqual([]);
  });
});
