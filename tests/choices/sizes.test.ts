import { describe, expect, test } from "vitest";
import { fitSize, inBlocks } from "../../src/choices/sizes/fit-size.ts";
import { readSizes, type Target } from "../../src/choices/sizes/read-sizes.ts";
import { severalSizes } from "../../src/choices/sizes/several-sizes.ts";
import { sizesTable } from "../../src/content/buying/several-sizes.ts";
import { EIGHTH_INCH_RULER, QUARTER_CENTIMETRE_RULER } from "../../src/length/index.ts";
import { planSpec } from "../../src/pipeline.ts";
import { sizesCsv } from "../../src/print/csv/sizes.ts";
import { exactToNumber, layOutQuilt } from "../../src/quilt/index.ts";
import { readSpecFile } from "../../src/spec/index.ts";
import { MATTRESS_SIZES, mattressSize } from "../../src/stock/index.ts";
import { english } from "../../src/words/index.ts";
import { said } from "../support/in-words.ts";
import { OPTIONS, quiltOf, solve, textOf } from "./quilts.ts";

const IN = 16256;
const CM = 6400;
const STARS = textOf("nine-stars");

/** 12 in blocks with 3 in sashes between and all round, and no border. */
const SASHED = `name: Sashed
fabrics: [{ name: a }, { name: b }]
blocks: { s: { size: 12, cell: { square: a } } }
setting: { rows: [s], fill: 5 x 6, sashing: { width: 3, fabric: b, cornerstones: a, ring: true } }
`;

function targetOf(text: string, ruler = EIGHTH_INCH_RULER): Target {
  const [size] = readSizes(text, ruler).value ?? [];
  if (size?.wanted.kind !== "target") throw new Error(text);
  return size.wanted.target;
}

const inches = ({ across, down }: Target) => [across / IN, down / IN];

describe("beds", () => {
  test("mattress width and length, with a drop at both sides and the foot", () => {
    // Common Quilt and Batting Sizes, Honey Be Good, 2012: mattress + 26 in across, + 13 in down. (Its king is 78 in.)
    const published = { twin: [65, 88], "twin long": [65, 93], full: [80, 88], queen: [86, 93] };
    for (const [bed, size] of Object.entries(published)) {
      expect(inches(targetOf(bed))).toEqual(size);
      expect(inches(targetOf(`${bed} bed drop 13 in at sides and foot`))).toEqual(size);
    }
    // Quilt Sizes 101, Embroidery Press: width + 2 x depth, length + depth, and 14 in for a pillow tuck.
    expect(inches(targetOf("queen drop 12 in"))).toEqual([84, 92]);
    expect(inches(targetOf("queen drop 12 in tuck 14 in"))).toEqual([84, 106]);
  });

  test("the drop stands where it is wanted, in inches or centimetres", () => {
    expect(inches(targetOf("full drop 10 in at foot"))).toEqual([54, 85]);
    expect(inches(targetOf("full drop 10 in at both sides drop 15 in at the foot"))).toEqual([74, 90]);
    expect(inches(targetOf("full drop 10 in all round".replace("drop 10 in", "drop 10 in at")))).toEqual([
      74, 95,
    ]);
    const single = targetOf("single drop 30 cm", QUARTER_CENTIMETRE_RULER);
    expect([single.across / CM, single.down / CM]).toEqual([150, 220]);
    expect(single.from === null ? "" : english.sizes.from(single.from)).toBe(
      "UK single mattress 90 x 190 cm, drop 30 cm at both sides and foot",
    );
  });

  test("a name belongs to the maker's own measure first, or to the region named", () => {
    expect(mattressSize("King bed", "imperial")).toMatchObject({ across: 76 * IN, along: 80 * IN });
    expect(mattressSize("king", "metric")).toMatchObject({ across: 150 * CM, along: 200 * CM });
    expect(mattressSize("uk double", "imperial")).toMatchObject({ across: 135 * CM });
    expect(mattressSize("double", "imperial")).toMatchObject({ name: "full", across: 54 * IN });
    expect(mattressSize("European 140", "imperial")).toMatchObject({ across: 140 * CM, along: 200 * CM });
    expect(mattressSize("toString", "imperial")).toBeNull();
    // Every size is found by its own region and name.
    for (const size of MATTRESS_SIZES)
      expect(mattressSize(`${size.region} ${size.name}`, "imperial")).toBe(size);
  });
});

test("what is no size is told, with what it may be", () => {
  const { value, diagnostics } = readSizes(
    "2y; 0x3; 70x2; quen; twin drop much; twin drop 3 in at ceiling; 30,5 x 40 cm",
    {
      ...EIGHTH_INCH_RULER,
    },
  );
  expect(value).toBeNull();
  expect(diagnostics.map(({ code }) => code)).toEqual(Array(6).fill("QUILT-SIZE-UNREADABLE"));
  expect(said(diagnostics[3])?.hint).toContain("Did you mean `queen`?");
  expect(
    readSizes("3x3,4 x 5, queen,60 x 80 in", EIGHTH_INCH_RULER).value?.map(({ asked }) => asked),
  ).toEqual(["3x3", "4 x 5", "queen", "60 x 80 in"]);
});

describe("a finished size", () => {
  const sizeOf = (top: ReturnType<typeof layOutQuilt>["value"]) =>
    [top?.top.across, top?.top.down].map((size) => (size === undefined ? 0 : exactToNumber(size) / IN));

  test("is met by whole blocks where they come to it", () => {
    // Quilt sizes, Delaware Quilts: 5 x 6 blocks of 12 in, 3 in sashes between and all round: 78 x 93 in.
    const fit = fitSize(quiltOf(SASHED), targetOf("78 x 93 in"));
    expect(fit).toMatchObject({ met: true, border: null, taken: { blocks: { across: 5, down: 6 } } });
  });

  test("is met by a plain outer border, from half as wide to twice as wide as drawn, to two marks", () => {
    // The stars are 8 in blocks with a border of 3 in.
    const spec = quiltOf(STARS);
    for (const [across, down] of [
      [48, 60],
      [63, 87],
      [86, 93],
    ] as const) {
      const fit = fitSize(spec, targetOf(`${across} x ${down} in`));
      if (fit === null) throw new Error("no fit");
      const [x = 0, y = 0] = sizeOf(layOutQuilt(fit.spec).value);
      expect(fit.met).toBe(true);
      expect(Math.abs(x - across)).toBeLessThanOrEqual(1 / 4);
      expect(Math.abs(y - down)).toBeLessThanOrEqual(1 / 4);
      for (const width of [fit.border?.side ?? 3 * IN, fit.border?.end ?? 3 * IN]) {
        expect(width).toBeGreaterThanOrEqual(1.5 * IN);
        expect(width).toBeLessThanOrEqual(6 * IN);
      }
    }
  });

  test("that whole blocks do not come to: the nearest is taken, those below and above are offered", async () => {
    const spec = quiltOf(SASHED);
    const sizes = readSizes("70 x 93 in", spec.ruler).value ?? [];
    const { value, diagnostics } = await severalSizes(spec, sizes, OPTIONS, solve);
    // derived geometry: n blocks are 15 n + 3 in: 63 below, 78 above; 70 lies nearer to 63.
    expect(value?.sizes[0]).toMatchObject({
      blocks: { across: 4, down: 6 },
      finished: "63 x 93 in",
      target: "70 x 93 in",
    });
    expect(diagnostics.map(({ code }) => code)).toEqual(["QUILT-SIZE-NOT-MET"]);
    expect(said(diagnostics[0])?.hint).toContain(
      "smaller: 4x6 blocks, 63 x 93 in; larger: 5x6 blocks, 78 x 93 in",
    );
  });

  test("far from any: an error names the nearest", async () => {
    const spec = quiltOf(SASHED);
    for (const text of ["3 in x 4 in", "2000 in x 60 in"]) {
      const { value, diagnostics } = await severalSizes(
        spec,
        readSizes(text, spec.ruler).value ?? [],
        OPTIONS,
        solve,
      );
      expect(value).toBeNull();
      expect(diagnostics.map(({ code, severity }) => [code, severity])).toEqual([
        ["QUILT-SIZE-OUT-OF-REACH", "error"],
      ]);
      expect(said(diagnostics[0])?.hint).toMatch(/^The nearest is (1x1|60x4) blocks/);
    }
  });
});

test("one table of all sizes; each is what planning that size alone gives", async () => {
  const spec = quiltOf(STARS);
  const { value } = await severalSizes(
    spec,
    readSizes("2x2, 5×6, crib drop 8 in", spec.ruler).value ?? [],
    OPTIONS,
    solve,
  );
  if (value === null) throw new Error("no sizes");
  expect(value.sizes.map(({ finished }) => finished)).toEqual(["22 x 22 in", "46 x 54 in", "44 x 60 in"]);
  for (const size of value.sizes.slice(0, 2)) {
    const { value: plan } = await planSpec(inBlocks(spec, size.blocks), OPTIONS, solve);
    expect(size.fabrics.map(({ buy }) => buy)).toEqual(plan?.fabrics.map(({ purchase }) => purchase?.text));
  }
  const table = sizesTable(value, english);
  expect(table).toMatch(/^Size +2x2 +5×6 +crib$/m);
  expect(table).toMatch(/^make star +4 +30 +\d+$/m);
  expect(table).toContain("crib: US crib mattress 28 x 52 in, drop 8 in at both sides and foot");
  const lines = sizesCsv(value, english).trimEnd().split("\r\n");
  expect(lines[0]).toBe("Size,2x2,5×6,crib");
  expect(lines.every((line) => line.split(/,(?=(?:[^"]*"[^"]*")*[^"]*$)/).length === 4)).toBe(true);
}, 60_000);

test("a cut list has nothing to repeat", async () => {
  const cutList = readSpecFile("fabrics: [{ name: a, pieces: ['4 x 4 in, 2'] }]", "a.yaml").value!;
  const { diagnostics } = await severalSizes(cutList, [], OPTIONS, solve);
  expect(diagnostics.map(({ code }) => code)).toEqual(["NOTHING-TO-REPEAT"]);
});

test("crib, lap and throw are usual finished sizes; with a drop it is the bed that is meant", () => {
  // Common practice, no source.
  const read = (text: string) => readSizes(text, EIGHTH_INCH_RULER).value?.map(({ wanted }) => wanted);
  const target = (across: number, down: number, name: string) => ({
    kind: "target",
    target: { across: across * IN, down: down * IN, from: { kind: "usual", name } },
  });
  expect(read("throw, Lap quilt, crib")).toEqual([
    target(50, 65, "throw"),
    target(48, 60, "lap"),
    target(36, 52, "crib"),
  ]);
  expect(read("crib drop 8 in")?.[0]).toMatchObject({ target: { across: 44 * IN, down: 60 * IN } });
});
