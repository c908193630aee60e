import { readFileSync } from "node:fs";
import { beforeAll, describe, expect, test } from "vitest";
import { cuttingSteps, makingSteps } from "../../src/content/index.ts";
import type {
  HeapRecord,
  LaidRecord,
  PatchSource,
  StripSetRecord,
  UnitRecord,
} from "../../src/cutlist/record/unit-record.ts";
import type { CutPiece } from "../../src/cutlist/types.ts";
import { drawBlocks, drawFabric, drawUnitSteps } from "../../src/draw/index.ts";
import { EIGHTH_INCH_RULER } from "../../src/length/index.ts";
import { planQuilt, USUAL_OPTIONS } from "../../src/pipeline.ts";
import type { CuttingStep, Plan } from "../../src/plan/types.ts";
import { cutsCsv } from "../../src/print/csv/index.ts";
import { unitsCsv } from "../../src/print/csv/units.ts";
import { bookOf, pageOf } from "../../src/print/index.ts";
import { english } from "../../src/words/index.ts";
import { solveHere } from "../support/cut-list-spec.ts";
import { oneIn } from "../support/sweep.ts";

/*
 * What the plan knows and hands must know stands on every paper. For each field of a cut piece, of a cutting step and of
 * a unit the table says where it is told; the field is changed and every paper named must change with it. A field added
 * to the types has no line here and stops the compiler; a paper that drops one goes red.
 */

type Paper = "text" | "csv" | "html" | "pdf" | "drawing";
const ALL: readonly Paper[] = ["text", "csv", "html", "pdf", "drawing"];
const TOLD: readonly Paper[] = ["text", "html", "pdf"];

/** How a field is changed in a plan, and the papers that must change; or why no hand needs it. */
type Line<T> =
  | { change: (of: T, plan: Plan) => void; in: readonly Paper[]; where?: (of: T) => boolean }
  | string;
type Table<T> = { [Field in keyof Required<T>]: Line<T> };

const IN = 16256;

const PIECE: Table<CutPiece> = {
  letter: {
    change: (p) => {
      p.letter = "QQ";
    },
    in: ALL,
  },
  label: {
    change: (p) => {
      p.label = "gate post";
    },
    in: ALL,
  },
  across: {
    change: (p) => {
      p.across += IN;
    },
    in: ["text", "csv", "html", "pdf"],
    where: (p) => !p.fullWidth,
  },
  along: {
    change: (p) => {
      p.along += IN;
    },
    in: ["text", "csv", "html", "pdf"],
  },
  fullWidth: {
    change: (p) => {
      p.fullWidth = !p.fullWidth;
    },
    in: ["text", "csv", "html", "pdf"],
  },
  count: {
    change: (p) => {
      p.count += 7;
    },
    in: ["text", "csv", "html", "pdf"],
  },
  turnable: {
    change: (p) => {
      p.turnable = !p.turnable;
    },
    in: ["text", "csv", "html", "pdf"],
    where: (p) => p.across !== p.along,
  },
  cut: "how the search may lay it; the steps say how it lies",
  join: "told by the run, below",
  uses: {
    change: (p) => {
      p.uses = [{ purpose: { for: "label", label: "gate post" }, count: p.count }];
    },
    in: TOLD,
  },
  subcut: {
    change: (p) => {
      p.subcut = "none";
    },
    in: ALL,
    where: (p) => p.subcut === "once-diagonal",
  },
  diagonal: {
    change: (p) => {
      p.diagonal = p.diagonal === "rising" ? "falling" : "rising";
    },
    in: ALL,
    where: (p) => p.diagonal !== "any" && p.subcut === "once-diagonal",
  },
  trimTo: "said in its use, and in the step that trims",
  roundedUp: "told by the trim that follows from it",
  notes: {
    change: (p) => {
      p.notes = [{ is: "own", text: "gate post" }];
    },
    in: ["text", "csv", "html", "pdf"],
  },
  corners: "an area, for the waste",
  seams: "an area, for the waste",
  shape: "told by its template, which is drawn",
  nest: "told by the strip and its slanting cuts, held to counts by hand in tests/plan/shapes-in-strips",
  pair: "kept by the plan and looked at by its audit",
  rests: "told as leftovers, which are the plan's",
  joined: "told by its note, and by the step that sews the run",
  inKits: "told by the list of kits, which tests/choices/mixed-kits counts",
};

const STEP: Table<CuttingStep> = {
  number: "steps are counted as they stand",
  lay: "which cloth of several; here there is one",
  kind: {
    change: (s) => {
      s.kind = "straighten";
    },
    in: TOLD,
    where: (s) => s.kind === "strips",
  },
  count: "the strips of it are counted",
  width: {
    change: (s) => {
      s.width += IN;
    },
    in: TOLD,
    where: (s) => s.kind === "strips",
  },
  run: {
    change: (s) => {
      s.run -= 5 * IN;
    },
    in: TOLD,
    where: (s) => s.kind === "strips",
  },
  strips: {
    change: (s) => {
      s.strips = s.strips.slice(1);
    },
    in: TOLD,
    where: (s) => s.strips.length > 1,
  },
  subcuts: "told from the strip as it lies, which the audit holds to them",
  flags: {
    change: (s) => {
      s.flags = ["longer-than-ruler"];
    },
    in: TOLD,
    where: (s) => s.kind === "strips" && s.flags.length === 0,
  },
};

const firstSet = (u: UnitRecord): StripSetRecord => u.stripSets[0]!;
const hasSet = (u: UnitRecord): boolean => u.stripSets.length > 0;
const laid = (u: UnitRecord): LaidRecord => u.batches[0]!.laid[0]!;
const hasBatch = (u: UnitRecord): boolean => u.batches.length > 0;
const source = (u: UnitRecord): PatchSource =>
  u.heaps[0]!.patches.find(({ from }) => from.length > 0)!.from[0]!;
const isLoose = (u: UnitRecord): boolean =>
  u.batches.length === 0 &&
  u.stripSets.length === 0 &&
  u.heaps[0]!.patches.some(({ from }) => from.some(({ part }) => part !== "whole"));

const UNIT: Table<UnitRecord> = {
  name: {
    change: (u) => {
      u.name = "U77";
    },
    in: ALL,
  },
  kind: "said in its text",
  method: {
    change: (u) => {
      u.method = "by gate posts";
    },
    in: ALL,
  },
  told: {
    change: (u) => {
      u.told = {
        kind: "gate post",
        finished: { as: "marks", across: 146304, along: 146304, ruler: EIGHTH_INCH_RULER },
      };
    },
    in: ALL,
  },
  path: "the place in the file, for messages",
  demand: "an index",
  wants: "indices",
  uses: "told by the blocks that take it",
  fabrics: "told by the patches and strips",
  raw: {
    change: (u) => {
      u.raw.across += IN;
    },
    in: ALL,
  },
  trimmed: "told by its step",
  unitsPerSet: {
    change: (u) => {
      u.unitsPerSet += 3;
    },
    in: TOLD,
    where: (u) => u.unitsPerSet > 1 && !u.loose,
  },
  loose: {
    change: (u) => {
      u.loose = !u.loose;
    },
    in: TOLD,
    where: hasBatch,
  },
  units: {
    change: (u) => {
      u.units += 5;
    },
    in: ALL,
  },
  sets: {
    change: (u) => {
      u.sets += 5;
    },
    in: TOLD,
    where: (u) => u.unitsPerSet > 1 && !u.loose,
  },
  spare: {
    change: (u) => {
      u.spare += 5;
    },
    in: TOLD,
    where: (u) => u.unitsPerSet > 1 && !u.loose,
  },
  heaps: {
    change: (u) => {
      source(u).letter = "QQ";
    },
    in: ALL,
    where: isLoose,
  },
  batches: {
    change: (u) => {
      laid(u).letter = "QQ";
    },
    in: ALL,
    where: hasBatch,
  },
  stripSets: {
    change: (u) => {
      firstSet(u).strips[0]!.letter = "QQ";
    },
    in: ALL,
    where: (u) => hasSet(u) && firstSet(u).fullSets > 0,
  },
  steps: { change: (u) => void u.steps.pop(), in: TOLD },
  seams: "summed over the quilt, and counted again by its audit",
  bonus: "told by the squares it is made of",
};

const SET: Table<StripSetRecord> = {
  name: "a letter within the unit",
  heap: "an index",
  cut: "told by its step",
  strips: {
    change: (s) => {
      s.strips[0]!.letter = "QQ";
    },
    in: ALL,
    where: (s) => s.fullSets > 0,
  },
  fullSets: {
    change: (s) => {
      s.fullSets += 3;
    },
    in: ALL,
  },
  fullLength: {
    change: (s) => {
      s.fullLength += 9 * IN;
    },
    in: TOLD,
    where: (s) => s.fullSets > 0,
  },
  lastLength: {
    change: (s) => {
      s.lastLength += 9 * IN;
    },
    in: TOLD,
  },
  height: {
    change: (s) => {
      s.height += IN;
    },
    in: ALL,
  },
  segment: {
    change: (s) => {
      s.segment += IN;
    },
    in: ALL,
  },
  perFullSet: {
    change: (s) => {
      s.perFullSet += 3;
    },
    in: TOLD,
    where: (s) => s.fullSets > 0,
  },
  fromLast: {
    change: (s) => {
      s.fromLast += 3;
    },
    in: TOLD,
  },
  segments: {
    change: (s) => {
      s.segments += 3;
    },
    in: ALL,
  },
  segmentsPerUnit: {
    change: (s) => {
      s.segmentsPerUnit += 3;
    },
    in: TOLD,
  },
  turned: "told where the segments are joined",
  straighten: "inside the length of the set, and said that one end is squared",
};

const LAID: Table<LaidRecord> = {
  piece: "an index",
  list: "an index",
  role: "told by the bag",
  fabric: "told beside the bag; where units stand in a table, in it",
  letter: {
    change: (l) => {
      l.letter = "QQ";
    },
    in: ALL,
  },
  across: "the bag's size",
  along: "the bag's size",
  up: {
    change: (l) => {
      l.up = 6;
    },
    in: TOLD,
    where: (l) => l.up !== null && l.faceDown === null,
  },
  faceDown: {
    change: (l) => {
      l.faceDown = 6;
    },
    in: TOLD,
    where: (l) => l.faceDown !== null && l.up !== null,
  },
};

const SOURCE: Table<PatchSource> = {
  letter: {
    change: (s) => {
      s.letter = "QQ";
    },
    in: ALL,
  },
  part: {
    change: (s) => {
      s.part = "whole";
    },
    in: TOLD,
    where: (s) => s.part === "top" || s.part === "left",
  },
  turn: "told by how the print's heads lie",
  count: {
    change: (s) => {
      s.count += 3;
    },
    in: [],
  },
};

const HEAP: Table<HeapRecord> = {
  name: {
    change: (h) => {
      h.name = "U7z";
    },
    in: ALL,
  },
  count: {
    change: (h) => {
      h.count += 3;
    },
    in: ALL,
  },
  prints: {
    change: (h) =>
      void Object.keys(h.prints).forEach((role) => {
        h.prints[role] = 6;
      }),
    in: TOLD,
    where: (h) => Object.keys(h.prints).length > 0,
  },
  patches: "each is held below",
};

const TEXTS = {
  sampler: `name: Law
units: in
fabrics:
  - { name: hens, print: one-way along, colour: "#aa7733" }
  - { name: plum, colour: "#662255" }
  - { name: sand, colour: "#eeddbb" }
blocks:
  a: { size: 8, grid: [g - g -, g - g -, h h k k, k h h k], cells: {
    g: { flying geese: [hens, plum], method: four at a time },
    h: { half-square triangle: [hens, sand], method: single triangles },
    k: { half-square triangle: [plum, sand], method: two at a time } } }
  b: { size: 8, grid: [s n, n s], cells: {
    s: { snowball: [plum, hens], method: stitch-and-flip, corner: 1 },
    n: { four-patch: [plum, sand], method: strip sets } } }
setting: { rows: [a b>, b av], fill: 4 x 4 }
borders: [ { fabric: plum, width: 3 } ]
binding: plum
`,
  geese: readFileSync(new URL("../../fixtures/trials/alike-but-for-fabric.yaml", import.meta.url), "utf8"),
};

type Papers = Record<Paper, string>;
const plans = new Map<string, { plan: Plan; papers: Papers }>();

/** The papers of a plan that are asked for; the others empty. */
function papersOf(plan: Plan, wanted: readonly Paper[]): Papers {
  const { top, making } = plan;
  let made: ReturnType<typeof bookOf> | undefined;
  const book = () => (made ??= bookOf(plan, english));
  const of = (paper: Paper, make: () => string): string => (wanted.includes(paper) ? make() : "");
  return {
    text: of("text", () => cuttingSteps(plan, true, english) + makingSteps(plan, english)),
    csv: of("csv", () => cutsCsv(plan, english) + unitsCsv(plan, english)),
    html: of("html", () => pageOf(book(), english)),
    // The PDF prints the same content; that it prints all of it is held by its own tests.
    pdf: of("pdf", () => JSON.stringify(book())),
    drawing: of("drawing", () =>
      [
        ...plan.fabrics.map((_, index) => drawFabric(plan, index, english)),
        ...drawBlocks(plan, false, english).map(({ svg }) => svg),
        ...(top === null || making === undefined
          ? []
          : drawUnitSteps(top, making, plan.fabrics, plan.ruler, english)),
      ].join("\n"),
    ),
  };
}

beforeAll(async () => {
  for (const [name, text] of Object.entries(TEXTS)) {
    const { value } = await planQuilt(text, "law.yaml", { ...USUAL_OPTIONS, effort: 3 }, solveHere);
    if (value === null) throw new Error(`no plan for ${name}`);
    plans.set(name, { plan: value, papers: papersOf(value, ALL) });
  }
}, 60_000);

const unitsOf = (plan: Plan): UnitRecord[] =>
  plan.making?.units.filter(({ steps }) => steps.length > 0) ?? [];

function laws<T>(title: string, table: Table<T>, find: (plan: Plan) => T[]): void {
  describe(title, () => {
    for (const [field, line] of oneIn(2, Object.entries(table) as [string, Line<T>][])) {
      if (typeof line === "string") continue;
      test(field, () => {
        for (const { plan: sound, papers: before } of plans.values()) {
          const plan = structuredClone(sound);
          const own = find(plan).find(line.where ?? (() => true));
          if (own === undefined) continue;
          line.change(own, plan);
          const after = papersOf(plan, line.in);
          expect(line.in.filter((paper) => after[paper] === before[paper])).toEqual([]);
          return;
        }
        throw new Error("no plan here has one to change");
      });
    }
  });
}

laws("a cut piece", PIECE, (plan) => plan.fabrics.flatMap(({ pieces }) => pieces));
laws("a cutting step", STEP, (plan) => plan.fabrics.flatMap(({ steps }) => steps));
laws("a unit", UNIT, unitsOf);
laws("a strip set", SET, (plan) => unitsOf(plan).flatMap(({ stripSets }) => stripSets));
laws("a piece laid in a set", LAID, (plan) =>
  unitsOf(plan).flatMap(({ batches }) => batches.flatMap((batch) => batch.laid)),
);
laws("a patch cut to shape", SOURCE, (plan) =>
  unitsOf(plan).flatMap(({ heaps }) => heaps.flatMap(({ patches }) => patches.flatMap(({ from }) => from))),
);
laws("a heap", HEAP, (plan) =>
  unitsOf(plan)
    .filter(({ heaps }) => heaps.length > 1)
    .flatMap(({ heaps }) => heaps),
);
