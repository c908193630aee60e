import { describe, expect, test } from "vitest";
import { auditSewing, type Sewing } from "../../../src/audit/sew/index.ts";
import type { UnitRecord } from "../../../src/cutlist/record/unit-record.ts";
import { mustSew } from "./sewn.ts";

/** Blocks of every way of making, with a print that has an up; nothing in it needs rounding. */
const SAMPLER = `
name: Sampler
units: in
fabrics:
  - { name: hens, print: one-way along }
  - { name: reeds, print: one-way across }
  - { name: plum }
  - { name: sand }
blocks:
  a: { size: 8, grid: [g - g -, g - g -, h h k k, k h h k], cells: {
    g: { flying geese: [hens, plum], method: four at a time },
    h: { half-square triangle: [reeds, sand], method: single triangles },
    k: { half-square triangle: [plum, sand], method: two at a time } } }
  b: { size: 8, grid: [s q, n w], cells: {
    s: { snowball: [hens, sand], method: stitch-and-flip, corner: 1, corners: [top-left, top-right] },
    q: { quarter-square triangle: [plum, sand], method: two at a time },
    n: { four-patch: [plum, sand], method: strip sets },
    w: { log cabin: [plum, sand, hens], count: 1, centre: 2 } } }
setting: { rows: [a b>, b av], fill: 4 x 2 }
borders:
  - { fabric: reeds, width: 2 }
binding: plum
`;

const ON_POINT = `
name: Tilted
units: in
fabrics: [ { name: hens, print: one-way along }, { name: plum }, { name: sand } ]
blocks:
  a: { size: 6, cell: { nine-patch: [hens, plum, sand], method: strip sets } }
  p: { size: 6, cell: { square: sand } }
setting: { layout: on point, rows: "a p", fill: 3 x 3, triangles: hens }
borders: [ { fabric: plum, width: 3, cornerstones: sand } ]
`;

type Corruption = [name: string, of: "sampler" | "on point", corrupt: (sewing: Sewing) => void];

function unit(sewing: Sewing, kind: string): UnitRecord {
  const found = sewing.making.units.find((each) => each.kind === kind);
  if (found === undefined) throw new Error(`no ${kind}`);
  return found;
}

function bag(sewing: Sewing, letter: string | null | undefined) {
  const found = sewing.fabrics.flatMap(({ pieces }) => pieces).find((each) => each.letter === letter);
  if (found === undefined) throw new Error(`no bag ${letter}`);
  return found;
}

function must<T>(value: T | undefined | null): T {
  if (value === undefined || value === null) throw new Error("nothing there to corrupt");
  return value;
}

const EIGHTH_INCH = 2032;

const geese = (s: Sewing) => must(unit(s, "flying geese").batches[0]);
const singles = (s: Sewing) =>
  must(
    s.making.units.find(
      ({ kind, method }) => kind === "half-square triangle" && method === "single triangles",
    ),
  );
const pairs = (s: Sewing) =>
  must(
    s.making.units.find(({ kind, method }) => kind === "half-square triangle" && method === "two at a time"),
  );

const CORRUPTIONS: Corruption[] = [
  [
    "a wrong diagonal of a cut piece",
    "sampler",
    (s) => {
      const { from } = must(singles(s).heaps[0]?.patches[0]);
      const piece = bag(s, from[0]?.letter);
      piece.diagonal = piece.diagonal === "rising" ? "falling" : "rising";
    },
  ],
  [
    "a wrong line of a pair",
    "sampler",
    (s) => {
      const step = must(pairs(s).steps[0]);
      if (step.do === "pair") step.lines = "edges";
    },
  ],
  [
    "one set too few",
    "sampler",
    (s) => {
      geese(s).sets -= 1;
    },
  ],
  [
    "one set too many",
    "sampler",
    (s) => {
      must(pairs(s).batches[0]).sets += 1;
    },
  ],
  [
    "the heap of a print turned",
    "sampler",
    (s) => {
      const one = must(singles(s).heaps[0]?.patches[0]);
      one.up = (((one.up ?? 0) + 2) % 8) as typeof one.up;
    },
  ],
  [
    "a letter swapped between two bags",
    "sampler",
    (s) => {
      const [large, small] = geese(s).laid;
      [must(large).letter, must(small).letter] = [must(small).letter, must(large).letter];
    },
  ],
  [
    "a bag of another fabric",
    "sampler",
    (s) => {
      const patch = must(unit(s, "log cabin").heaps[0]?.patches[1]);
      must(patch.from[0]).letter = must(unit(s, "log cabin").heaps[0]?.patches[3]?.from[0]).letter;
    },
  ],
  [
    "a step dropped",
    "sampler",
    (s) => {
      unit(s, "log cabin").steps.splice(1, 1);
    },
  ],
  [
    "a step told twice",
    "sampler",
    (s) => {
      const { steps } = unit(s, "log cabin");
      steps.splice(1, 0, must(steps[1]));
    },
  ],
  [
    "the last round of geese dropped",
    "sampler",
    (s) => {
      const { steps } = unit(s, "flying geese");
      steps.splice(1, 1);
    },
  ],
  [
    "a size off by a mark",
    "sampler",
    (s) => {
      must(must(unit(s, "log cabin").steps[0]).size).along += EIGHTH_INCH;
    },
  ],
  [
    "a raw size off by a mark",
    "sampler",
    (s) => {
      unit(s, "snowball").raw.across += EIGHTH_INCH;
    },
  ],
  [
    "a log short",
    "sampler",
    (s) => {
      bag(s, unit(s, "log cabin").heaps[0]?.patches[2]?.from[0]?.letter).along -= EIGHTH_INCH;
    },
  ],
  [
    "a flipped square cut small",
    "sampler",
    (s) => {
      const square = must(unit(s, "snowball").batches[0]?.laid[1]);
      const piece = bag(s, square.letter);
      for (const one of must(unit(s, "snowball").batches[0]).laid.slice(1)) {
        one.across -= EIGHTH_INCH;
        one.along -= EIGHTH_INCH;
      }
      piece.across -= EIGHTH_INCH;
      piece.along -= EIGHTH_INCH;
    },
  ],
  [
    "a piece said larger than it is cut",
    "sampler",
    (s) => {
      must(geese(s).laid[0]).across += EIGHTH_INCH;
    },
  ],
  [
    "the large square of the geese turned",
    "sampler",
    (s) => {
      const large = must(geese(s).laid[0]);
      large.up = (((large.up ?? 0) + 2) % 8) as typeof large.up;
    },
  ],
  [
    "the base of a flip turned",
    "sampler",
    (s) => {
      const base = must(unit(s, "snowball").batches[0]?.laid[0]);
      base.up = (((base.up ?? 0) + 4) % 8) as typeof base.up;
    },
  ],
  [
    "upper left for lower right",
    "sampler",
    (s) => {
      const source = must(singles(s).heaps[0]?.patches[0]?.from[0]);
      source.part = source.part === "top-left" ? "bottom-right" : "top-left";
    },
  ],
  [
    "a triangle turned a quarter",
    "sampler",
    (s) => {
      const source = must(singles(s).heaps[0]?.patches[0]?.from[0]);
      source.turn = (((source.turn ?? 0) + 1) % 4) as 0 | 1 | 2 | 3;
    },
  ],
  [
    "segments one too many",
    "sampler",
    (s) => {
      must(unit(s, "four-patch").stripSets[0]).segments += 1;
    },
  ],
  [
    "a full set said to give one more",
    "on point",
    (s) => {
      const set = must(unit(s, "nine-patch").stripSets[0]);
      set.fromLast += 1;
      set.segments += 1;
    },
  ],
  [
    "a short strip set cut short",
    "on point",
    (s) => {
      const set = must(unit(s, "nine-patch").stripSets.find(({ lastLength }) => lastLength > 0));
      set.lastLength -= set.segment;
    },
  ],
  [
    "strips of a set in another order",
    "on point",
    (s) => {
      const { strips } = must(unit(s, "nine-patch").stripSets[0]);
      [strips[0], strips[1]] = [must(strips[1]), must(strips[0])];
    },
  ],
  [
    "a strip of a set upside down",
    "on point",
    (s) => {
      const strip = must(
        unit(s, "nine-patch")
          .stripSets.flatMap(({ strips }) => strips)
          .find(({ up }) => up !== null),
      );
      strip.up = (((strip.up ?? 0) + 4) % 8) as typeof strip.up;
    },
  ],
  [
    "the height of a set untrue",
    "sampler",
    (s) => {
      must(unit(s, "four-patch").stripSets[0]).height += EIGHTH_INCH;
    },
  ],
  [
    "segments joined in another order",
    "on point",
    (s) => {
      const join = must(unit(s, "nine-patch").steps.find((step) => step.do === "join"));
      if (join.do === "join") join.parts = [...join.parts.slice(1), ...join.parts.slice(0, 1)];
    },
  ],
  [
    "the second diagonal of quarters dropped",
    "sampler",
    (s) => {
      const one = unit(s, "quarter-square triangle");
      one.steps = one.steps.filter((step) => step.do !== "cross-pair");
    },
  ],
  [
    "units given to another heap",
    "sampler",
    (s) => {
      geese(s).gives.reverse();
    },
  ],
  [
    "a unit called spare that is wanted",
    "sampler",
    (s) => {
      geese(s).gives[0] = null;
    },
  ],
  [
    "a spare not named",
    "sampler",
    (s) => {
      pairs(s).spare += 1;
    },
  ],
  [
    "a heap one short",
    "sampler",
    (s) => {
      must(unit(s, "log cabin").heaps[0]).count -= 1;
    },
  ],
  [
    "a piece too few",
    "sampler",
    (s) => {
      bag(s, unit(s, "log cabin").heaps[0]?.patches[0]?.from[0]?.letter).count -= 1;
    },
  ],
  [
    "a piece nobody names",
    "sampler",
    (s) => {
      bag(s, geese(s).laid[0]?.letter).count += 1;
    },
  ],
  [
    "blocks that take another unit",
    "sampler",
    (s) => {
      const { units } = must(s.making.blocks[0]);
      [units[0], units[units.length - 1]] = [units.at(-1) ?? null, units[0] ?? null];
    },
  ],
  [
    "a block counted twice",
    "sampler",
    (s) => {
      must(s.making.blocks[0]).count += 1;
    },
  ],
  [
    "a block turned another way",
    "sampler",
    (s) => {
      must(s.making.blocks[0]).turns = [270];
    },
  ],
  [
    "a joining of units dropped",
    "sampler",
    (s) => {
      const at = s.making.joins.findIndex(({ stage }) => stage === "block");
      s.making.joins.splice(at, 1);
    },
  ],
  [
    "a row joined twice",
    "sampler",
    (s) => {
      const at = s.making.joins.findIndex(({ stage }) => stage === "top");
      s.making.joins.splice(at, 0, must(s.making.joins[at]));
    },
  ],
  [
    "a part of a joining of another size",
    "sampler",
    (s) => {
      must(s.making.joins[0]?.parts[0]).down += EIGHTH_INCH;
    },
  ],
  [
    "a diagonal row with an edge too short",
    "on point",
    (s) => {
      must(s.making.diagonal[1]).upper -= EIGHTH_INCH;
    },
  ],
  [
    "a diagonal row of one block more",
    "on point",
    (s) => {
      must(s.making.diagonal[1]).blocks += 1;
    },
  ],
  [
    "a setting triangle too few",
    "on point",
    (s) => {
      must(
        s.fabrics.flatMap(({ pieces }) => pieces).find(({ subcut }) => subcut === "twice-diagonal"),
      ).count -= 1;
    },
  ],
  [
    "corner triangles on the other diagonal",
    "on point",
    (s) => {
      const halves = s.fabrics
        .flatMap(({ pieces }) => pieces)
        .filter(({ subcut }) => subcut === "once-diagonal");
      for (const piece of halves) piece.diagonal = "rising";
    },
  ],
  [
    "a border strip short",
    "sampler",
    (s) => {
      must(s.making.borders[0]?.strips[0]).cut -= EIGHTH_INCH;
    },
  ],
  [
    "a border longer than its edge",
    "sampler",
    (s) => {
      must(s.making.borders[0]?.strips[1]).sewn += EIGHTH_INCH;
    },
  ],
  [
    "the top larger than told",
    "sampler",
    (s) => {
      s.making.square.across += EIGHTH_INCH;
    },
  ],
  [
    "a border cut the wrong way of its print",
    "sampler",
    (s) => {
      const strips = s.fabrics.flatMap(({ name, pieces }) => (name === "reeds" ? pieces : []));
      const border = must(
        strips.find(({ uses }) =>
          uses.some(({ purpose }) => purpose.for === "border" && purpose.pair === "sides"),
        ),
      );
      [border.across, border.along] = [border.along, border.across];
    },
  ],
  [
    "a small square face down the wrong way",
    "sampler",
    (s) => {
      const laid = must(unit(s, "snowball").batches[0]?.laid[1]);
      laid.faceDown = laid.faceDown === null ? 2 : (((laid.faceDown + 2) % 8) as typeof laid.faceDown);
    },
  ],
  [
    "a border strip told shorter than its edge",
    "sampler",
    (s) => {
      must(s.making.borders[0]?.strips[0]).sewn -= 16256;
    },
  ],
  [
    "a seam too few in the sum",
    "sampler",
    (s) => {
      s.making.totals.seams -= 1;
    },
  ],
  [
    "a seam too many in the sum on point",
    "on point",
    (s) => {
      s.making.totals.seams += 1;
    },
  ],
  [
    "a seam between blocks pressed the other way",
    "sampler",
    (s) => {
      const seam = must(must(s.making.pressing).seams.find(({ level }) => level === "row"));
      seam.press = seam.press === "left" ? "right" : "left";
    },
  ],
  [
    "a place said to nest that does not",
    "sampler",
    (s) => {
      must(s.making.pressing).open.push({ ...must(s.making.pressing).seams[0] } as never);
    },
  ],
];

const TEXTS = { sampler: SAMPLER, "on point": ON_POINT } as const;
const SOUND = Object.fromEntries(Object.entries(TEXTS).map(([name, text]) => [name, mustSew(text)]));

/** A copy whose `givenUp` is still a set. */
function copyOf(sewing: Sewing): Sewing {
  return structuredClone(sewing);
}

describe("a corrupted record is found", () => {
  test.each(Object.keys(TEXTS))("the %s itself is sound", (name) => {
    expect(auditSewing(must(SOUND[name]))).toEqual([]);
  });

  test.each(CORRUPTIONS)("%s (%s)", (_, of, corrupt) => {
    const sewing = copyOf(must(SOUND[of]));
    const before = JSON.stringify([sewing.fabrics, sewing.making]);
    corrupt(sewing);
    expect(JSON.stringify([sewing.fabrics, sewing.making])).not.toBe(before);
    expect(auditSewing(sewing)).not.toEqual([]);
  });

  test("no two are named alike", () => {
    expect(new Set(CORRUPTIONS.map(([name]) => name)).size).toBe(CORRUPTIONS.length);
  });
});
