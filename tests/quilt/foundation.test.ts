import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import type { FoldedPart, FoundationWork, PiecedPart } from "../../src/quilt/index.ts";
import { layOutQuilt } from "../../src/quilt/index.ts";
import { readSpecFile } from "../../src/spec/index.ts";
import { allSaid } from "../support/in-words.ts";
import { cutsOf, INCH, type WorkedOut, workOut } from "./reading.ts";

const FIXTURE = readFileSync(new URL("../../fixtures/quilts/wild-geese-round.yaml", import.meta.url), "utf8");

/** The invented quilt with another foundation, or with none. */
function withFoundation(words: string | null): string {
  const line = /^foundation: .*\n/m;
  if (words !== null) return FIXTURE.replace(line, `foundation: { fabric: gridded web, ${words} }\n`);
  return FIXTURE.replace(line, "").replace(/^ {2}- \{ name: gridded web.*\n/m, "");
}

function foundationOf({ work }: WorkedOut): FoundationWork {
  if (work.foundation === null) throw new Error("no foundation");
  return work.foundation;
}

const piecedOf = (worked: WorkedOut) =>
  foundationOf(worked).parts.filter((part): part is PiecedPart => part.kind === "pieced");
const foldedOf = (worked: WorkedOut) =>
  foundationOf(worked).parts.filter((part): part is FoldedPart => part.kind === "folded");

const told = (text: string): string[] => {
  const read = readSpecFile(text, "quilt.yaml");
  const laid = read.value?.kind === "quilt" ? layOutQuilt(read.value) : null;
  return allSaid([...read.diagnostics, ...(laid?.diagnostics ?? [])]).map(
    ({ code, hint }) => `${code} ${hint}`,
  );
};

const quilt = workOut(FIXTURE);

describe("the invented quilt, pieced by motifs", () => {
  const [motif] = piecedOf(quilt);

  // derived geometry: 9 blocks of 4 motifs, each 4 x 4 squares and one square of allowance on every side.
  test("one motif, 36 times, 6 x 6 squares", () => {
    expect(piecedOf(quilt)).toHaveLength(1);
    expect(motif).toMatchObject({ count: 36, finished: { across: 4, down: 4 }, cut: { across: 6, down: 6 } });
    expect(cutsOf(quilt, "gridded web")).toEqual(["6 x 6 x 36"]);
    expect(motif?.places.map(({ turn }) => turn)).toEqual([0, 90, 270, 180]);
  });

  test("every seam runs from corner to corner of printed squares, and straight ones along a line", () => {
    for (const { x1, y1, x2, y2, slanting, length } of motif?.seams ?? []) {
      for (const place of [x1, y1, x2, y2]) expect(place % INCH).toBe(0);
      expect(slanting).toBe(x1 !== x2 && y1 !== y2);
      expect(length).toBe(Math.round(Math.hypot(x2 - x1, y2 - y1)));
    }
    // The same told by the finished top alone, which knows nothing of foundation: patches of the blocks.
    const { x, y } = quilt.top.centre;
    for (const { outline, origin } of quilt.top.patches) {
      if (origin.block === null) continue;
      for (const corner of outline) {
        expect((corner.x.n - x.n) % INCH).toBe(0);
        expect((corner.y.n - y.n) % INCH).toBe(0);
        expect([corner.x.d, corner.y.d, corner.x.r, corner.y.r]).toEqual([1, 1, 0, 0]);
      }
    }
  });

  test("the goose goes onto the bar, then its skies: whatever a seam joins is there", () => {
    expect(motif?.patches.map(({ part }) => part)).toEqual(["patch", "goose", "sky-left", "sky-right"]);
    expect(motif?.seams.map(({ adds }) => adds)).toEqual([2, 3, 4]);
  });

  // Sewn patch by patch the finished patches fill the squares: areas by the shoelace sum.
  test("its patches come to 4 x 4 squares", () => {
    const areas = (motif?.patches ?? []).map(({ corners }) => {
      const twice = corners.reduce((sum, { x, y }, i) => {
        const next = corners[(i + 1) % corners.length] ?? { x, y };
        return sum + x * next.y - y * next.x;
      }, 0);
      return Math.abs(twice) / 2 / INCH ** 2;
    });
    expect(areas).toEqual([8, 4, 2, 2]);
  });

  test("every place of it holds just its patches, turned", () => {
    const design = quilt.top.designs[0];
    for (const { units, x, y, across, down } of motif?.places ?? []) {
      const own = design?.patches.filter(({ origin }) => units.includes(origin.unit ?? -1)) ?? [];
      expect(own.map(({ fabric }) => fabric).sort()).toEqual(["dusk", "mist", "mist", "straw"]);
      for (const corner of own.flatMap(({ outline }) => outline)) {
        expect(corner.x.n).toBeGreaterThanOrEqual(x);
        expect(corner.x.n).toBeLessThanOrEqual(x + across);
        expect(corner.y.n).toBeGreaterThanOrEqual(y);
        expect(corner.y.n).toBeLessThanOrEqual(y + down);
      }
    }
  });
});

describe("against the same quilt without foundation", () => {
  const plain = workOut(
    withFoundation(null).replace("blocks:", "methods: { flying geese: single triangles }\nblocks:"),
  );

  test("the top is the same, patch for patch", () => {
    expect(quilt.top.patches).toEqual(plain.top.patches);
    expect([quilt.top.across, quilt.top.down]).toEqual([plain.top.across, plain.top.down]);
  });

  test("cut exact, it takes the same cloth; with ease, squares larger by it", () => {
    const exact = workOut(withFoundation("grid: 1 in, ease: 0"));
    for (const fabric of ["dusk", "straw", "mist"])
      expect(cutsOf(exact, fabric)).toEqual(cutsOf(plain, fabric));
    // 5 1/4 and 2 7/8 in squares, 2 1/2 x 4 1/2 in bars, each and a quarter inch.
    expect(cutsOf(quilt, "straw")).toContain("5.5 x 5.5 x 9");
    expect(cutsOf(quilt, "mist")).toEqual(["3.125 x 3.125 x 36"]);
    expect(cutsOf(quilt, "dusk")).toContain("2.75 x 4.75 x 36");
  });

  test("no unit is trimmed, and no piece is smaller than its squares and two seams", () => {
    for (const { recipes, told } of quilt.work.units) {
      expect(recipes).toHaveLength(1);
      expect(recipes[0]?.trimTo.needed).toBe(false);
      const least = told.kind === "rectangle" ? 2.5 : 2.5 + Math.SQRT2 / 4;
      for (const { across, along } of recipes[0]?.pieces ?? [])
        expect(Math.min(across, along) / INCH).toBeGreaterThanOrEqual(least);
    }
  });
});

describe("what one piece of foundation carries", () => {
  // derived geometry: a goose is 4 x 2 squares, so 6 x 4 with a square all round; a bar alone needs none.
  test("a unit: 36 of 4 x 6 squares", () => {
    expect(cutsOf(workOut(withFoundation("grid: 1 in, per: unit")), "gridded web")).toEqual(["4 x 6 x 36"]);
  });

  test("four motifs round a point are no block to piece at once", () => {
    const [said] = told(withFoundation("grid: 1 in, per: block"));
    expect(said).toContain("FOUNDATION-BLOCK Write `per: motif`");
  });

  // Four geese one after another go onto one strip, from the last to the first.
  test("a strip of geese is a block to piece at once", () => {
    const strip = `units: cm
fabrics: [{ name: a }, { name: b }, { name: gridded web, width: 90 cm, selvage: 0 }]
foundation: { fabric: gridded web, grid: 2 cm, per: block }
blocks:
  strip: { size: 8 x 16, grid: [g, g, g, g], cells: { g: { flying geese: [a, b] } } }
setting: { rows: strip, fill: 3 x 1 }
`;
    const [part] = piecedOf(workOut(strip));
    // derived geometry: 4 x 8 squares of 2 cm, 0.75 cm of seam within one square: 6 x 10.
    expect(part).toMatchObject({ count: 3, finished: { across: 4, down: 8 }, cut: { across: 6, down: 10 } });
    expect(part?.patches.filter(({ part: name }) => name === "goose").map(({ number }) => number)).toEqual([
      1, 4, 7, 10,
    ]);
    expect(part?.patches[0]?.corners.some(({ y }) => y === 16 * 6400)).toBe(true);
  });

  test("only blocks that are named", () => {
    const text = FIXTURE.replace("ease: 1/4 }", "blocks: [round] }");
    expect(cutsOf(workOut(text), "gridded web")).toEqual(["6 x 6 x 36"]);
  });

  test("half-way seams are allowed where the file says so", () => {
    const half = FIXTURE.replace("grid: 1 in", "grid: 4 in, half-lines: true").replace("size: 8", "size: 8");
    const [part] = piecedOf(workOut(half));
    // derived geometry: 4 in squares, a motif of one square, its goose half of one: 1 + 2 squares.
    expect(part).toMatchObject({ finished: { across: 1, down: 1 }, cut: { across: 3, down: 3 } });
    expect(told(half.replace(", half-lines: true", ""))[0]).toContain("FOUNDATION-OFF-GRID");
  });
});

describe("sizes that miss the lines", () => {
  const goose = (size: string, grid: string) => `fabrics: [{ name: a }, { name: web }]
foundation: { fabric: web, grid: ${grid} }
blocks: { g: { size: ${size}, cell: { flying geese: a } } }
setting: { rows: g, fill: 2 x 2 }
`;
  const offGrid = (text: string) => told(text).filter((line) => line.startsWith("FOUNDATION-OFF-GRID"));

  // derived geometry: 2 1/4 squares high are 2 or 3, and a goose is twice as wide.
  test("a goose keeps its shape: what is offered fits", () => {
    expect(offGrid(goose("4 1/2 x 2 1/4", "1 in"))[0]).toContain("4 x 2 in or 6 x 3 in.");
    for (const size of ["4 x 2", "6 x 3"]) expect(offGrid(goose(size, "1 in"))).toEqual([]);
  });

  // derived geometry: seams at quarters of 9 in, 2 1/4 in: two or three squares each, so 8 or 12 in.
  test("a block keeps its proportions: what is offered fits", () => {
    expect(offGrid(FIXTURE.replace("size: 8", "size: 9"))[0]).toContain(
      "for the whole block 8 x 8 in or 12 x 12 in.",
    );
    for (const size of ["8", "12"]) expect(offGrid(FIXTURE.replace("size: 8", `size: ${size}`))).toEqual([]);
  });
});

describe("folded", () => {
  // derived geometry: parts of 4 1/2 in are 18 squares of 1/4 in; two by two 36 squares, 9 in.
  test("a block: nine of 36 x 36 squares, 9 in", () => {
    const worked = workOut(withFoundation("grid: 1/4 in, way: folded"));
    const [block] = foldedOf(worked);
    expect(block).toMatchObject({
      count: 9,
      columns: [16, 16],
      rows: [16, 16],
      cut: { across: 36, down: 36 },
    });
    expect(cutsOf(worked, "gridded web")).toEqual(["9 x 9 x 9"]);
    expect(block?.cells.map(({ like }) => like)).toEqual([1, 1, 1, 1]);
    expect(block?.cells.map(({ units }) => units)).toEqual([
      [0, 1],
      [2, 3],
      [4, 7],
      [5, 6],
    ]);
  });

  // derived geometry: six parts in a row, 6 x 18 = 108 squares, 27 in.
  test("a row of blocks: three of 108 x 36 squares, 27 x 9 in", () => {
    const worked = workOut(withFoundation("grid: 1/4 in, way: folded, per: row"));
    expect(foldedOf(worked)[0]).toMatchObject({ count: 3, cut: { across: 108, down: 36 } });
    expect(cutsOf(worked, "gridded web")).toEqual(["9 x 27 x 3"]);
  });

  // derived geometry: blocks of 20 cm with seams of 1 cm on a 1 cm grid; motifs of 10 and 2 cm, two by two.
  test("in centimetres", () => {
    const metric = withFoundation("grid: 1 cm, way: folded")
      .replace("units: in", "units: cm\nseam: 1")
      .replace("size: 8", "size: 20")
      .replace("width: 3, over-long: 2", "width: 8, over-long: 5");
    const worked = workOut(metric);
    expect(foldedOf(worked)[0]).toMatchObject({ columns: [10, 10], cut: { across: 24, down: 24 } });
  });

  test("units keep their own method and its trimming", () => {
    const worked = workOut(withFoundation("grid: 1/4 in, way: folded"));
    const geese = worked.work.units.find(({ told }) => told.kind === "flying geese");
    expect(geese?.recipes[0]?.method).toBe("four at a time");
  });
});

// A print that turns with its unit: one square gives geese pointing four ways, so four turns take no more.
test("a print that runs round the block is kept on the foundation", () => {
  const round = FIXTURE.replace('colour: "#e8c468" }', 'colour: "#e8c468", print: one-way }');
  const upright = workOut(round);
  const turning = workOut(round.replace("blocks:\n", "prints: with unit\nblocks:\n"));
  expect(cutsOf(turning, "straw").find((cut) => cut.startsWith("5.5"))).toBe("5.5 x 5.5 x 36");
  expect(cutsOf(upright, "straw").find((cut) => cut.startsWith("5.5"))).toBe("5.5 x 5.5 x 9");
  // With their up told apart, the four motifs of an upright print are four, of a turning one they are one.
  expect(piecedOf(upright).map(({ count }) => count)).toEqual([9, 9, 9, 9]);
  expect(piecedOf(turning).map(({ count }) => count)).toEqual([36]);
});

// A square on its point leans its print by an eighth; cut as a rectangle round it, the print stands upright.
// derived geometry: 4 + 2 x root 2 x 1/4 = 4.707 in; on its point 4 / root 2 + 1/2 = 3.328 in.
test("a print that would lean is cut from a rectangle, and that is told", () => {
  const text = `fabrics: [{ name: a, print: one-way }, { name: b }, { name: web }]
foundation: { fabric: web, grid: 1 in, ease: 0 }
blocks: { s: { size: 4, cell: { square-in-a-square: { centre: a, corners: b } } } }
setting: { rows: s, fill: 2 x 2 }
`;
  const worked = workOut(text);
  expect(cutsOf(worked, "a")).toEqual(["4.75 x 4.75 x 4"]);
  expect(worked.diagnostics.map(({ code }) => code)).toContain("DIRECTION-OTHER-METHOD");
  expect(cutsOf(workOut(text.replace("print: one-way", "print: none")), "a")).toEqual(["3.375 x 3.375 x 4"]);
});
