import { describe, expect, test } from "vitest";
import { type Arrangements, arrangeBlocks } from "../../src/choices/arranging/arrange-blocks.ts";
import { motifTurnings } from "../../src/choices/arranging/motif-turnings.ts";
import { turnBlocks, writtenRows } from "../../src/choices/arranging/turned-spec.ts";
import { mirrorTurns, readArrangements, turnings } from "../../src/choices/arranging/turnings.ts";
import { arrangementPictures, arrangementsTable } from "../../src/content/choosing/arrange.ts";
import { arrangementsScene } from "../../src/draw/quilt/draw-arrangements.ts";
import { planSpec } from "../../src/pipeline.ts";
import { exactToNumber, fillRows, layOutQuilt } from "../../src/quilt/index.ts";
import { type QuiltSpec, readSpecFile } from "../../src/spec/index.ts";
import { english } from "../../src/words/index.ts";
import { allSaid } from "../support/in-words.ts";
import { faultsOf } from "../support/sound-scene.ts";
import { OPTIONS, quiltOf, solve, textOf } from "./quilts.ts";

async function arranged(
  spec: QuiltSpec,
  seed = 1,
  blocks: string[] | null = null,
  motifs: string[] | null = null,
): Promise<Arrangements> {
  const { value } = await arrangeBlocks(spec, { seed, blocks, motifs }, OPTIONS, solve);
  if (value === null) throw new Error("not arranged");
  return value;
}

/** A block of two bars, the print of one with an up that stays upright in the quilt. */
const BARS = `name: Bars
fabrics:
  - { name: boats, print: one-way }
  - { name: plain }
blocks:
  bars:
    size: 4
    grid: |
      a b
    cells:
      a: { rectangle: boats }
      b: { rectangle: plain }
setting:
  rows: bars
  fill: 4 x 4
`;

const turnsOf = (spec: QuiltSpec, key: string): number[][] => {
  const way = turnings(1).find((each) => each.key === key);
  if (way === undefined) throw new Error(key);
  return fillRows(turnBlocks(spec, way, () => 0)).map(({ cells }) => cells.map(({ turn }) => turn));
};

test("a cut list has nothing to turn", async () => {
  const cutList = readSpecFile("fabrics: [{ name: a, pieces: ['4 x 4 in, 2'] }]", "a.yaml").value!;
  const { diagnostics } = await arrangeBlocks(
    cutList,
    { seed: 1, blocks: null, motifs: null },
    OPTIONS,
    solve,
  );
  expect(diagnostics.map(({ code }) => code)).toEqual(["NOTHING-TO-TURN"]);
});

test("a print with an up is cut the other way where its block is turned; all of it told and drawn", async () => {
  const spec = quiltOf(BARS);
  const found = await arranged(spec, 3);
  const boats = Object.fromEntries(
    found.arrangements.map(({ key, planned }) => [
      key,
      planned?.fabrics
        .find(({ fabric }) => fabric === "boats")
        ?.pieces.map(({ size, count }) => `${count} ${size}`),
    ]),
  );
  // derived geometry: bars 2 x 4 in finished, 1/4 in seams; the print reads one way, so a turned bar is cut lying.
  // Upright is as the file has it, so it is not shown again.
  expect(found.arrangements[0]?.same.map(({ key }) => key)).toEqual(["upright"]);
  expect(boats).toMatchObject({
    file: ["16 2 1/2 x 4 1/2 in"],
    right: ["16 4 1/2 x 2 1/2 in"],
    "by-turns": ["16 4 1/2 x 2 1/2 in"],
    // A block of two bars shows its mirror image upside down.
    pairs: ["16 2 1/2 x 4 1/2 in"],
    centre: ["8 4 1/2 x 2 1/2 in", "8 2 1/2 x 4 1/2 in"],
  });
  expect(found.alike).toBe(false);
  for (const { rows, planned } of found.arrangements) {
    // The rows that are printed make the same quilt when they are copied into the file.
    const copied = BARS.replace("rows: bars\n  fill: 4 x 4", `rows: [${rows.join(", ")}]`);
    const { value } = await planSpec(quiltOf(copied), OPTIONS, solve);
    expect(value?.top?.patches).toEqual(planned?.top.patches);
    expect(value?.fabrics.map(({ purchase }) => purchase?.text)).toEqual(
      planned?.fabrics.map(({ buy }) => buy),
    );
    const pressing = value?.making?.pressing;
    expect(planned?.nesting).toMatchObject({ places: pressing?.junctions, unNested: pressing?.open.length });
  }
  const table = arrangementsTable(found, true, english);
  // derived geometry: 3 x 3 corners of blocks, and in each of 4 columns 3 places where the bars' seams meet.
  expect(table).toMatch(/as the file has it +32 +2 +21 of 21/);
  expect(table).toContain("    rows: |\n      bars> bars> bars> bars>");
  const scene = arrangementsScene(found.name, arrangementPictures(found, english), spec.fabrics, english);
  expect(faultsOf(scene)).toEqual([]);
}, 60_000);

test("chance is the same for the same seed, and another for another", () => {
  const spec = quiltOf(BARS);
  const rows = (seed: number) => writtenRows(turnBlocks(spec, turnings(seed).at(-1)!));
  expect(rows(5)).toEqual(rows(5));
  expect(rows(5)).not.toEqual(rows(6));
});

describe("about the centre", () => {
  test.each(["4 x 4", "3 x 3", "5 x 5"])("%s: turned a quarter, it is the same", (fill) => {
    const turns = turnsOf(quiltOf(BARS.replace("4 x 4", fill)), "centre");
    const size = turns.length;
    const half = (size - 1) / 2;
    turns.forEach((row, r) => {
      row.forEach((turn, c) => {
        // A quarter-turn takes row r, column c to row c, column size - 1 - r, and every block turns along.
        if (r !== half || c !== half) expect(turns[c]?.[size - 1 - r]).toBe((turn + 90) % 360);
      });
    });
  });

  test("on point, rows between stand half a block in", () => {
    const onPoint = BARS.replace(
      "rows: bars\n  fill: 4 x 4",
      "layout: on point\n  triangles: plain\n  rows: bars\n  fill: 3 x 3",
    );
    expect(turnsOf(quiltOf(onPoint), "centre")).toEqual([
      [0, 0, 90],
      [0, 90],
      [270, 0, 90],
      [270, 180],
      [270, 180, 180],
    ]);
  });
});

/** A square halved, and a goose: the one shows its mirror image turned a quarter, the other as it is. */
const TWO = `name: Two
fabrics: [{ name: a }, { name: b }]
blocks:
  H: { size: 4, cell: { half-square triangle: [a, b] } }
  G: { size: 4, grid: [g, g], cells: { g: { flying geese: [a, b] } } }
  W: { size: 4, grid: [w w, w x], cells: { w: { square: a }, x: { half-square triangle: [a, b] } } }
setting: { rows: [H H, G G, W W] }
`;

test("mirrored pairs are mirror images wherever a turn can make them", async () => {
  const spec = quiltOf(TWO);
  const [, pairs] = (await arranged(spec, 1, ["pairs"])).arrangements;
  const top = pairs?.planned?.top;
  if (top === undefined) throw new Error("no top");
  const width = exactToNumber(top.across);
  // Seen in a mirror, the whole quilt of two columns is itself.
  const shape = (mirrored: boolean) =>
    top.patches
      .map(({ fabric, outline }) => {
        const corners = outline.map(({ x, y }) => {
          const across = exactToNumber(x);
          return `${Math.round(mirrored ? width - across : across)},${Math.round(exactToNumber(y))}`;
        });
        return `${fabric} ${corners.sort().join(" ")}`;
      })
      .sort();
  expect(shape(true)).toEqual(shape(false));
  const designs = layOutQuilt(spec).value?.top;
  expect(designs === undefined ? [] : mirrorTurns(designs)).not.toContain(null);
});

test("on point, a square halved is its own mirror image", () => {
  const setting = "setting: { layout: on point, triangles: b, rows: [H H, G, H H], ";
  const top = layOutQuilt(quiltOf(TWO.replace("setting: { rows: [H H, G G, W W] ", setting))).value?.top;
  const turns = top === undefined ? [] : mirrorTurns(top);
  expect(top?.designs.map(({ name }, i) => [name, turns[i]])).toContainEqual(["H", 0]);
});

test("blocks that no turn mirrors are named", async () => {
  const found = await arranged(quiltOf(textOf("allotments")), 1, ["pairs"]);
  expect(found.noMirror).toEqual(["Shed"]);
  expect(arrangementsTable(found, false, english)).toContain("No turn shows the mirror image of Shed");
}, 60_000);

const named = <Key extends string>(all: readonly { key: Key }[], names: Readonly<Record<Key, string>>) =>
  all.map(({ key }) => ({ key, name: names[key] }));

test("arrangements by name on the command line", () => {
  expect(readArrangements("all,by-turns").value).toEqual(turnings(0).map(({ key }) => key));
  expect(
    readArrangements("Motifs back to back, clockwise", named(motifTurnings(0), english.arrange.motifTurnings))
      .value,
  ).toEqual(["apart", "clockwise"]);
  expect(
    readArrangements("centre, Mirrored pairs,file", named(turnings(0), english.arrange.blockTurnings)),
  ).toEqual({
    value: ["centre", "pairs"],
    diagnostics: [],
  });
  const { value, diagnostics } = readArrangements("center,spin");
  expect(value).toBeNull();
  expect(allSaid(diagnostics).map(({ code, hint }) => [code, hint.split("?")[0]])).toEqual([
    ["ARRANGEMENT-UNKNOWN", "Did you mean `centre`"],
    ["ARRANGEMENT-UNKNOWN", expect.stringContaining("There are: upright")],
  ]);
});
