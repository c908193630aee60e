import { describe, expect, test } from "vitest";
import {
  blockAlikeAfter,
  exactToNumber,
  layOutQuilt,
  type Motifs,
  motifsOf,
  turnMotifs,
} from "../../src/quilt/index.ts";
import { type QuiltSpec, readSpecFile } from "../../src/spec/index.ts";

function specOf(block: string, fabrics = "[{ name: a }, { name: b }]", more = ""): QuiltSpec {
  const text = `name: One block\nfabrics: ${fabrics}\n${more}\nblocks: { B: ${block} }\nsetting: { rows: B }\n`;
  const { value, diagnostics } = readSpecFile(text, "one.yaml");
  if (value?.kind !== "quilt") throw new Error(JSON.stringify(diagnostics));
  return value;
}

const blockOf = ({ blocks: [block] }: QuiltSpec) => {
  if (block === undefined) throw new Error("no block");
  return block;
};

/** Motifs in few words: how many, how large in inches, how they lie. */
function motifs(block: string, fabrics?: string, more?: string): string | null {
  const spec = specOf(block, fabrics, more);
  const found = motifsOf(blockOf(spec), spec);
  return found === null ? null : told(found);
}

function told({ places, across, down }: Motifs): string {
  const [wide, high] = [across, down].map((size) => exactToNumber(size) / 16256);
  return `${places.length} of ${wide} x ${high}: ${places.map(({ turn }) => turn).join()}`;
}

const UNITS = {
  h: "{ half-square triangle: [a, b] }",
  w: "{ square: a }",
  g: "{ flying geese: [a, b] }",
  r: "{ rectangle: b }",
  m: "{ square: b }",
};

/** Grid and cells of a block, its lines set apart by commas. */
function drawn(lines: string): string {
  const grid = JSON.stringify(lines.split(", "));
  const own = Object.entries(UNITS).filter(([code]) => new RegExp(`\\b${code}`).test(lines));
  return `grid: ${grid}, cells: { ${own.map(([code, unit]) => `${code}: ${unit}`).join(", ")} }`;
}

const STAR = "w gv - w, g> h h> g<, | h< hv |, w g - w";

describe("the largest alike parts of a block", () => {
  test("squares that divide it, also turned in the file; those alike all round are passed over", () => {
    expect(motifs(`{ size: 4, ${drawn("h h>, h< hv")} }`)).toBe("4 of 2 x 2: 0,90,270,180");
    // A quarter of four halved squares that run round is alike all round: its halved squares are the motifs.
    expect(motifs(`{ size: 8, ${drawn("h h> h h>, h< hv h< hv, h h> h h>, h< hv h< hv")} }`)).toMatch(
      /^16 of 2 x 2/,
    );
    expect(motifs(`{ size: 8, ${drawn("h w h w, w w w w, h w h w, w w w w")} }`)).toBe("4 of 4 x 4: 0,0,0,0");
    expect(motifs(`{ size: 4, ${drawn("w w, w w")} }`)).toBeNull();
    expect(motifs("{ size: 4, cell: { half-square triangle: [a, b] } }")).toBeNull();
  });

  test("stand as their first unit that points: a bar turned a half is no other bar", () => {
    expect(motifs(`{ size: 8, ${drawn("r> g> r -, | | gv -, g - g< r>, r - | |")} }`)).toBe(
      "4 of 4 x 4: 90,180,0,270",
    );
  });

  test("squares about the middle, where something else lies between", () => {
    // Four paws of halved squares round a large square, each a quarter on from the one before.
    const paws =
      "w h h r h h w, h< m - | m - h>, h< | - | | - h>, r> - - w r> - -, h< m - r m - h>, h< | - | | - h>, w hv hv | hv hv w";
    expect(motifs(`{ size: 7, ${drawn(paws)} }`)).toBe("4 of 3 x 3: 0,90,270,180");
    expect(motifs(`{ size: 6, ${drawn("h w h>, w w w, h< w hv")} }`)).toBe("4 of 2 x 2: 0,90,270,180");
  });

  test("units, where larger squares that are alike overlap: the geese of a star, by halves", () => {
    expect(motifs(`{ size: 8, ${drawn(STAR)} }`)).toBe("4 of 4 x 2: 180,90,270,0");
  });

  test("those the file names: so many across and down, or codes", () => {
    const field = drawn("h h h h, h h h h, h h h h, h h h h");
    expect(motifs(`{ size: 8, ${field} }`)).toMatch(/^4 of 4 x 4/);
    expect(motifs(`{ size: 8, ${field}, motifs: 4 x 4 }`)).toMatch(/^16 of 2 x 2/);
    expect(motifs(`{ size: 8, ${field}, motifs: 1 x 2 }`)).toBe("2 of 8 x 4: 0,0");
    expect(motifs(`{ size: 8, ${drawn(STAR)}, motifs: h }`)).toBe("4 of 2 x 2: 0,90,270,180");
  });

  test("a print that turns with its unit tells bars apart", () => {
    const boats = "[{ name: a }, { name: b, print: one-way }]";
    // Each motif is two bars of a size, the second pair turned a half.
    const bars = `{ size: 4 x 2, ${drawn("r> r> r< r<")} }`;
    expect(motifs(bars, boats)).toBe("2 of 2 x 2: 90,90");
    expect(motifs(bars, boats, "prints: with unit")).toBe("2 of 2 x 2: 90,270");
  });
});

test("a motif turned in its place moves its units round its middle", () => {
  const spec = specOf(`{ size: 8, ${drawn("g - g -, r - r -, g - g -, r - r -")} }`);
  const turned = turnMotifs(blockOf(spec), spec, [90, 180, 270, 0]).block;
  expect(turned.grid.map((row) => row.cells.map(({ code, turn }) => `${code}${turn}`).join(" "))).toEqual([
    "r90 g90 r0 -0",
    "|0 |0 g180 -0",
    "g270 r90 g0 -0",
    "|0 |0 r0 -0",
  ]);
});

test("a block that looks the same turned so far is known by the least such turn", () => {
  const alike = (block: string) => {
    const spec = specOf(block);
    return blockAlikeAfter(blockOf(spec), spec);
  };
  expect(alike("{ size: 6, cell: { nine-patch: [a, b, a] } }")).toBe(90);
  expect(alike("{ size: 6, cell: { rails: [a, b, a] } }")).toBe(180);
  expect(alike("{ size: 6, cell: { rails: [a, b] } }")).toBe(360);
});

test("motifs named in the file leave the plan alone, and are told when they are none", () => {
  const good = layOutQuilt(specOf(`{ size: 4, ${drawn("h h, h h")}, motifs: 2 x 2 }`));
  expect(good.diagnostics.filter(({ severity }) => severity === "error")).toEqual([]);
  const bad = layOutQuilt(specOf(`{ size: 4, ${drawn("h w, w w")}, motifs: 2 x 2 }`));
  expect(bad.diagnostics.map(({ code, path }) => [code, path])).toEqual([
    ["MOTIFS-NOT-ALIKE", "blocks.B.motifs"],
  ]);
});
