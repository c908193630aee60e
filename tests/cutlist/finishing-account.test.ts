import { expect, test } from "vitest";
import { EIGHTH_INCH_RULER } from "../../src/length/index.ts";
import { english } from "../../src/words/index.ts";
import { INCH, workOut } from "../quilt/reading.ts";

const SQUARE_INCH = INCH * INCH;

/** A top of 20 x 20 in finished, 20 1/2 in raw. */
const QUILT = `fabrics: [{ name: red, width: 43 in }, { name: back, width: 43 in }]
blocks: { s: { size: 10, cell: { square: red } } }
setting: { rows: s, fill: 2 x 2 }
binding: { fabric: red, width: 2 1/2 }
backing: { fabric: back, overhang: 4 }
`;

function accounts(fabric: string, use: RegExp, quilt = QUILT) {
  const list = workOut(quilt).cutLists.find((each) => each.fabric.name === fabric);
  const piece = list?.pieces.find(({ uses }) =>
    uses.some(({ purpose }) => use.test(english.purposes.purpose(purpose, EIGHTH_INCH_RULER))),
  );
  if (piece === undefined) throw new Error("no such piece");
  const cut = piece.across * piece.along * piece.count;
  const [seams, corners] = [piece.seams ?? 0, piece.corners ?? 0];
  return [cut, cut - seams - corners, seams, corners].map((area) => area / SQUARE_INCH);
}

test("backing shows what the top shows; its edge is hidden and its overhang cut off", () => {
  // 28 1/2 in square cut; 20 x 20 seen; 20 1/2 squared less that lies under the binding.
  expect(accounts("back", /^backing/)).toEqual([812.25, 400, 20.25, 392]);
});

test("binding shows its outer layer once round, and what is over of its strips is cut off", () => {
  // 4 x 20 1/2 = 82 in round, 10 in for corners and closing: 92 in of three strips 42 in long (40 1/2 each after
  // diagonal joins of 2 1/2 in: two give 81 1/2, three give 121).
  const [cut, seen, hidden, off] = accounts("red", /binding/);
  expect(cut).toBe(3 * 42 * 2.5);
  // Folded double to 1 1/4 in, 1/4 in of it in the seam: 1 in seen along 82 in.
  expect(seen).toBe(82);
  expect(hidden).toBe(92 * 2.5 - 82);
  expect(off).toBe(3 * 42 * 2.5 - 92 * 2.5);
});

test("the seams of a pieced backing are hidden as far as the quilt reaches; the rest of the panels is cut off", () => {
  // 40 x 50 in finished, 40 1/2 x 50 1/2 raw; level seams: two panels 48 1/2 in long, one seam 40 1/2 in within the quilt
  const quilt = QUILT.replace("2 x 2", "4 x 5").replace("overhang: 4", "overhang: 4, seams: horizontal");
  const hidden = 40.5 * 50.5 - 40 * 50 + 0.5 * 40.5;
  expect(accounts("back", /^backing/, quilt)).toEqual([
    2 * 42 * 48.5,
    2000,
    hidden,
    2 * 42 * 48.5 - 2000 - hidden,
  ]);
});
