import { describe, expect, test } from "vitest";
import { parse, stringify } from "yaml";
import {
  type Arrangement,
  type Arrangements,
  arrangeBlocks,
} from "../../src/choices/arranging/arrange-blocks.ts";
import { arrangementPictures, arrangementsTable } from "../../src/content/choosing/arrange.ts";
import { arrangementsScene } from "../../src/draw/quilt/draw-arrangements.ts";
import { planSpec } from "../../src/pipeline.ts";
import { exactToNumber, type QuiltTop } from "../../src/quilt/index.ts";
import { english } from "../../src/words/index.ts";
import { faultsOf } from "../support/sound-scene.ts";
import { OPTIONS, quiltOf, solve, textOf } from "./quilts.ts";

const named = (one: Pick<Arrangement, "blocks" | "motifs">, { seed }: { seed: number }): string =>
  english.arrange.turned(one.blocks, one.motifs, seed);

/** Four motifs of a goose and a bar to a block, three blocks by three; the geese of a print with an up. */
const GULLS = `name: Gulls in fours
units: in
all-fabrics: { width: 44 in, selvage: 1 in, price: $12 per yd, sold: by 1/8 yd }
fabrics:
  - { name: gulls, print: one-way along }
  - { name: foam }
  - { name: sea }
blocks:
  flock:
    size: 8
    grid: |
      b> g> b  -
      |  |  gv -
      g  -  g< b>
      b  -  |  |
    cells:
      g: { flying geese: [gulls, foam] }
      b: { rectangle: sea }
setting:
  rows: flock
  fill: 3 x 3
`;

async function arranged(
  text: string,
  motifs: string[] | null = null,
  blocks: string[] | null = null,
): Promise<Arrangements> {
  const asked = { seed: 1, blocks, motifs };
  const { value, diagnostics } = await arrangeBlocks(quiltOf(text), asked, OPTIONS, solve);
  if (value === null) throw new Error(JSON.stringify(diagnostics));
  return value;
}

/** What stands in the pictures: worked out here, apart from the program's own way of telling them apart. */
function pictureOf({ patches }: QuiltTop): string {
  const told = patches.map(({ fabric, up, outline }) => {
    const corners = outline.map(({ x, y }) => [x, y].map((at) => exactToNumber(at).toFixed(1)).join());
    return `${fabric} ${up} ${corners.sort().join(" ")}`;
  });
  return told.sort().join("\n");
}

const byKey = ({ arrangements }: Arrangements) =>
  Object.fromEntries(
    arrangements.map(({ key, planned }) => [
      key,
      {
        cut: planned?.fabrics.map(({ pieces }) =>
          pieces.map(({ count, size, subcut }) => `${count} ${size.replace(" in", "")} ${subcut}`).join(),
        ),
        buy: planned?.fabrics.map(({ buy }) => buy),
        cost: planned?.cost,
        made: planned?.methods.map(({ method, count }) => `${count} ${method}`),
        nest: planned?.nesting && [planned.nesting.places - planned.nesting.unNested, planned.nesting.places],
      },
    ]),
  );

/** A file with what is printed for one arrangement written into it, as a maker would. */
function pasted(text: string, found: Arrangements, name: string): string {
  const lines = arrangementsTable(found, true, english).split("\n");
  const start = lines.findIndex((line) => line.startsWith(`For ${name}`) && line.endsWith(":"));
  const fragment = lines.slice(start + 1, lines.indexOf("", start));
  const written = parse(fragment.join("\n")) as {
    blocks?: Record<string, object>;
    setting?: { rows: string };
  };
  const file = parse(text) as {
    blocks: Record<string, Record<string, unknown>>;
    setting: Record<string, unknown>;
  };
  for (const [key, block] of Object.entries(written.blocks ?? {})) {
    const said = fragment.join("\n");
    for (const field of ["columns", "lines"]) {
      if (said.includes(`leave \`${field}\``) || said.includes(`and \`${field}\` out`))
        delete file.blocks[key]?.[field];
    }
    file.blocks[key] = { ...file.blocks[key], ...block };
  }
  if (written.setting !== undefined) {
    expect(lines[start]).toContain("leave `fill` out");
    file.setting = { ...file.setting, ...written.setting };
    delete file.setting.fill;
  }
  return stringify(file);
}

async function expectSamePlan(text: string, { planned }: Arrangement): Promise<void> {
  const { value } = await planSpec(quiltOf(text), OPTIONS, solve);
  expect(value?.top?.patches).toEqual(planned?.top.patches);
  expect(value?.fabrics.map(({ purchase }) => purchase?.text ?? "")).toEqual(
    planned?.fabrics.map(({ buy }) => buy),
  );
  expect(value?.fabrics.map(({ pieces }) => pieces.map(({ letter, count }) => `${letter} ${count}`))).toEqual(
    planned?.fabrics.map(({ pieces }) => pieces.map(({ letter, count }) => `${letter} ${count}`)),
  );
  const pressing = value?.making?.pressing;
  expect(planned?.nesting).toMatchObject({ places: pressing?.junctions, unNested: pressing?.open.length });
}

describe("four geese to a block, three blocks by three", () => {
  /*
   * Derived geometry. 36 geese finishing 4 x 2 in, 36 bars alike; seams of 1/4 in; 42 in usable, 1 in to straighten.
   *
   * A print with an up stays upright whichever way its goose flies, so what counts is which way round the goose is:
   * - Running round, every block has a goose to each side. Four at a time gives just these: out of one square of
   *   4 + 1 1/4 in come geese to all four sides. 9 squares of 5 1/4, 8 to a strip: 2 strips, 10 1/2 + 1 in: 3/8 yd
   *   (13 1/2). Sky: 4 squares of 2 + 7/8 to four geese, 36; 14 to a strip: 3 strips, 8 5/8 + 1 in: 3/8 yd.
   * - All one way, one in four would be right: stitch-and-flip instead, a rectangle of 4 1/2 x 2 1/2 for each goose.
   *   Up or down they are 4 1/2 across: 9 to a strip, 4 strips of 2 1/2, 10 + 1 in: 3/8 yd. Right or left they are
   *   2 1/2 across: 16 to a strip, 3 strips of 4 1/2, 13 1/2 + 1 in: 1/2 yd (18). Sky: 72 squares of 2 1/2, 16 to a
   *   strip: 5 strips, 12 1/2 + 1 in: 3/8 yd.
   * - In pairs, two of four are right: single triangles, a square of 5 1/4 quartered for two geese. 18 squares: 3
   *   strips, 15 3/4 + 1 in: 1/2 yd. Sky: 36 squares of 2 7/8 halved.
   * Bars are plain, 36 of 4 1/2 x 2 1/2 whichever way: 4 strips of 2 1/2, 10 + 1 in: 3/8 yd.
   * A yard is $12: three times 3/8 yd is $13.50, with 1/2 yd of gulls $15.
   *
   * Seams: in pairs and all one way the motifs are divided all alike, upright (goose beside bar) or level. The quilt is
   * a lattice of 11 lines one way, 2 in apart, and 5 the other, 4 in apart, and two seams meet at each of the 55
   * crossings. Running round, neighbours are divided crosswise, and a seam inside a motif ends against the side of the
   * next: what is left are the corners of motifs, 5 x 5.
   */
  const SEA = "36 2 1/2 x 4 1/2 none";
  const round = {
    cut: ["9 5 1/4 x 5 1/4 none", "36 2 7/8 x 2 7/8 none", SEA],
    buy: ["3/8 yd", "3/8 yd", "3/8 yd"],
    cost: 1350,
    made: ["36 four at a time"],
    nest: [25, 25],
  };
  const upright = {
    cut: ["36 4 1/2 x 2 1/2 none", "72 2 1/2 x 2 1/2 none", SEA],
    buy: ["3/8 yd", "3/8 yd", "3/8 yd"],
    cost: 1350,
    made: ["36 stitch-and-flip"],
    nest: [55, 55],
  };
  const lying = {
    ...upright,
    cut: ["36 2 1/2 x 4 1/2 none", "72 2 1/2 x 2 1/2 none", SEA],
    buy: ["1/2 yd", "3/8 yd", "3/8 yd"],
    cost: 1500,
  };
  const paired = {
    ...lying,
    cut: ["18 5 1/4 x 5 1/4 twice-diagonal", "36 2 7/8 x 2 7/8 once-diagonal", SEA],
    made: ["36 single triangles"],
  };

  test("each arrangement of motifs, no two alike; every one can be copied into the file", async () => {
    const found = await arranged(GULLS);
    expect(found.motifs).toEqual([{ block: "flock", count: 4, size: "4 x 4 in", square: true }]);
    expect(byKey(found)).toMatchObject({
      file: round,
      "motifs upright": upright,
      "motifs upside-down": upright,
      "motifs right": lying,
      "motifs left": lying,
      "motifs facing": paired,
      "motifs stacked": paired,
      "motifs apart": paired,
      "motifs by-turns": paired,
      "motifs anticlockwise": round,
      "motifs centre": round,
    });
    // The block runs round clockwise in the file, and so looks the same in every turn.
    const ofFile = found.arrangements[0]?.same.map(({ key }) => key);
    expect(ofFile).toEqual([
      ...["upright", "right", "upside-down", "left", "by-turns", "centre", "pairs", "chance"],
      "motifs clockwise",
    ]);
    const pictures = found.arrangements.map(({ planned }) =>
      planned === null ? "" : pictureOf(planned.top),
    );
    expect(new Set(pictures).size).toBe(12);
    for (const one of found.arrangements.slice(1))
      await expectSamePlan(pasted(GULLS, found, named(one, found)), one);
    const scene = arrangementsScene(
      found.name,
      arrangementPictures(found, english),
      quiltOf(GULLS).fabrics,
      english,
    );
    expect(faultsOf(scene)).toEqual([]);
  }, 60_000);

  test("of a print without an up all is cut alike, four at a time, and chosen by eye", async () => {
    const found = await arranged(GULLS.replace(", print: one-way along", ""));
    expect(found.arrangements).toHaveLength(12);
    for (const { cut, buy, cost, made } of Object.values(byKey(found)))
      expect({ cut, buy, cost, made }).toEqual({
        cut: round.cut,
        buy: round.buy,
        cost: round.cost,
        made: round.made,
      });
    expect(found.alike).toBe(true);
    expect(arrangementsTable(found, false, english)).toContain("choose by eye");
  }, 60_000);

  test("the way the geese fly, drawn", async () => {
    const found = await arranged(GULLS, [
      "facing",
      "stacked",
      "apart",
      "by-turns",
      "clockwise",
      "anticlockwise",
    ]);
    const grids = Object.fromEntries(
      found.arrangements.map(({ motifs, grids: [own] }) => [motifs, own?.grid]),
    );
    expect(grids).toEqual({
      // Clockwise is the file's own.
      file: undefined,
      facing: ["b> g> g< b>", "|  |  |  |", "b> g> g< b>", "|  |  |  |"],
      stacked: ["b  -  b  -", "gv -  gv -", "g  -  g  -", "b  -  b  -"],
      apart: ["g< b> b> g>", "|  |  |  |", "g< b> b> g>", "|  |  |  |"],
      "by-turns": ["g< b> b> g>", "|  |  |  |", "b> g> g< b>", "|  |  |  |"],
      anticlockwise: ["b  -  g< b>", "gv -  |  |", "b> g> g  -", "|  |  b  -"],
    });
  }, 60_000);

  test("blocks and motifs turned together: rows and grid", async () => {
    const found = await arranged(GULLS, ["upright", "facing"], ["right", "by-turns"]);
    expect(found.arrangements.map(({ key, same }) => [key, ...same.map((other) => other.key)])).toEqual([
      ["file"],
      ["right + motifs upright"],
      ["by-turns + motifs upright"],
      // A block of facing pairs is the same upside down: turned left it is turned right.
      ["right + motifs facing", "by-turns + motifs facing"],
    ]);
    const by = found.arrangements[2];
    expect(by?.rows).toEqual(["flock< flock> flock<", "flock> flock< flock>", "flock< flock> flock<"]);
    for (const one of found.arrangements.slice(1))
      await expectSamePlan(pasted(GULLS, found, named(one, found)), one);
    // Pieces of geese that fly right and left by turns of blocks, 20 to one side and 16 to the other: 20 squares.
    expect(byKey(found)["by-turns + motifs upright"]?.cut?.[0]).toBe("20 5 1/4 x 5 1/4 twice-diagonal");
  }, 60_000);
});

test("a block alike all round is one picture, and so are blocks that only differ in their turns", async () => {
  const buttons = `name: Buttons
fabrics: [{ name: a }, { name: b }]
blocks: { button: { size: 6, cell: { snowball: [a, b], corner: 2 } } }
setting: { rows: button, fill: 3 x 3 }
`;
  const found = await arranged(buttons);
  expect(found.arrangements.map(({ same }) => same.length)).toEqual([8]);
  expect(found.motifs).toEqual([]);
  const asked = await arranged(buttons, null, ["centre"]);
  expect(arrangementsTable(asked, true, english)).toContain("For about the centre, nothing is to be written");
  const geese = await arranged(textOf("wild-geese-round"), ["clockwise", "anticlockwise"]);
  expect(geese.arrangements.map(({ key }) => key)).toEqual(["file", "motifs anticlockwise"]);
});

test("what looks the same nests the same, however its rows are written: as well as turns that do not show can make it", async () => {
  const rows = ["flock flock flock", "flock> flockv flock<", "flock flock> flock"];
  const written = GULLS.replace("rows: flock\n  fill: 3 x 3", `rows: [${rows.join(", ")}]`);
  const [one] = (await arranged(GULLS, ["clockwise"])).arrangements;
  const [other] = (await arranged(written, ["clockwise"])).arrangements;
  expect(other?.planned === null || other === undefined ? "" : pictureOf(other.planned.top)).toBe(
    one?.planned === null || one === undefined ? "?" : pictureOf(one.planned.top),
  );
  // Every second block turned a half, the seams of neighbours lie opposite with all blocks pressed alike.
  for (const each of [one, other]) {
    expect(each?.planned?.nesting).toMatchObject({ places: 25, unNested: 0, ways: 1 });
    expect(each?.rows).toEqual(["flock  flockv flock", "flockv flock  flockv", "flock  flockv flock"]);
  }
  expect(one?.planned?.nesting?.otherwise).toEqual({ unNested: 0, ways: 2 });
}, 60_000);

/** Two geese and a bar to a motif, on columns and lines that are not all alike. */
const FLEET = `name: Fleet
fabrics: [{ name: gulls, print: one-way }, { name: foam }, { name: sea }]
blocks:
  fleet:
    size: 8
    columns: [2, 2, 2, 2]
    lines: [1, 3, 1, 3]
    grid: |
      g g g g
      b . b .
      g g g g
      b . b .
    cells:
      g: { flying geese: [gulls, foam] }
      b: { rectangle: sea, span: 2 x 1 }
setting: { rows: fleet, fill: 3 x 3 }
`;

test("where a turned motif does not fit the grid, the block is drawn on another, which can be copied too", async () => {
  const found = await arranged(FLEET, ["right", "facing", "clockwise"]);
  expect(found.motifs).toEqual([{ block: "fleet", count: 4, size: "4 x 4 in", square: true }]);
  const [, right, facing, round] = found.arrangements;
  expect(right?.grids).toEqual([
    {
      block: "fleet",
      grid: ["b> g> b> g>", "|  g> |  g>", "b> g> b> g>", "|  g> |  g>"],
      columns: ["3", "1", "3", "1"],
      lines: ["2", "2", "2", "2"],
      leaveOut: [],
      withoutSpan: [],
    },
  ]);
  expect(facing?.grids[0]?.columns).toEqual(["3", "1", "1", "3"]);
  // Edges 2, 3, 4, 5 and 6 in from the left, and from the top; a span written for one grid is no use on this.
  expect(round?.grids[0]).toMatchObject({ columns: ["2", "1", "1", "1", "1", "2"], withoutSpan: ["b"] });
  const spanless = FLEET.replace(", span: 2 x 1", "").replaceAll(".", "-");
  for (const one of found.arrangements.slice(1)) {
    await expectSamePlan(pasted(one === round ? spanless : FLEET, found, named(one, found)), one);
  }
  expect(arrangementsTable(found, true, english)).toContain("# leave `span` out of b");
}, 60_000);

/** Two motifs of two bars, one level and one upright. */
const BARS = `name: Bars
fabrics: [{ name: foam }, { name: sea }]
blocks:
  bars:
    size: 8 x 4
    columns: [4, 2, 2]
    lines: [2, 2]
    grid: |
      a b> a>
      b |  |
    cells:
      a: { rectangle: foam }
      b: { rectangle: sea }
setting: { rows: bars, fill: 2 x 3 }
`;

test("sizes of columns and lines that a new grid does not need are said to be left out", async () => {
  const found = await arranged(BARS, ["upright", "right"]);
  const [, upright, right] = found.arrangements;
  // Level, the bars lie on the grid of the file; upright, they need four columns of 2 in, and even ones go unsaid.
  expect(upright?.grids).toMatchObject([{ grid: ["a a -", "b b -"], leaveOut: [] }]);
  expect(right?.grids).toMatchObject([
    { grid: ["b> a> b> a>", "|  |  |  |"], leaveOut: ["columns", "lines"] },
  ]);
  for (const one of found.arrangements.slice(1))
    await expectSamePlan(pasted(BARS, found, named(one, found)), one);
}, 60_000);

test("motifs that are not square are turned by halves, each to where it points", async () => {
  const found = await arranged(textOf("nine-stars"), ["upright", "apart", "facing", "right", "clockwise"]);
  expect(found.motifs).toEqual([{ block: "star", count: 4, size: "4 x 2 in", square: false }]);
  const said = found.arrangements.map(({ key, same, planned }) => [
    key,
    same.map((other) => other.key).join(),
    planned !== null,
  ]);
  expect(said).toEqual([
    // The geese of a star face its middle.
    ["file", "motifs facing", true],
    ["motifs upright", "", true],
    ["motifs right", "", false],
    ["motifs apart", "", true],
    ["motifs clockwise", "", false],
  ]);
  expect(found.arrangements[3]?.grids[0]?.grid).toEqual([
    "c  g  -  c",
    "g< m  -  g>",
    "|  |  -  |",
    "c  gv -  c",
  ]);
  expect(arrangementsTable(found, true, english)).toContain("can only be turned by halves");
}, 60_000);

test("no motifs, and none named, is told", async () => {
  const spec = quiltOf(textOf("four-patch-orchard"));
  const asked = { seed: 1, blocks: null, motifs: ["facing" as const] };
  const { value, diagnostics } = await arrangeBlocks(spec, asked, OPTIONS, solve);
  expect([value, diagnostics.map(({ code }) => code)]).toEqual([null, ["NO-MOTIFS"]]);
});

describe("the drawing", () => {
  const fabrics = (text: string) => quiltOf(text).fabrics;

  test("of more turnings than there are, with as much told of each as there is room for", async () => {
    const found = await arranged(GULLS, ["upright", "right", "facing"]);
    const said =
      "$1,215.50 · gulls over the harbour 11 7/8 yd · foam on the evening sea 12 1/8 yd · seams nest: 172 of 386";
    const pictures = arrangementPictures(found, english).flatMap((one) =>
      Array.from({ length: 6 }, () => ({ ...one, said })),
    );
    expect(pictures).toHaveLength(24);
    expect(faultsOf(arrangementsScene(found.name, pictures, fabrics(GULLS), english))).toEqual([]);
  }, 60_000);

  test("of a narrow quilt with long names, both turned", async () => {
    const text = GULLS.replace("3 x 3", "1 x 5").replaceAll("gulls", "gulls over the harbour in the evening");
    const found = await arranged(text, ["anticlockwise", "upright"], ["by-turns", "centre"]);
    expect(found.arrangements.length).toBeGreaterThan(2);
    expect(
      faultsOf(arrangementsScene(found.name, arrangementPictures(found, english), fabrics(text), english)),
    ).toEqual([]);
  }, 60_000);
});
