import { METHOD, UNIT } from "../../terms/names.ts";
import { cellSize, columnSet, type GridCell, gridPatches, gridPieces } from "../grid.ts";
import * as r from "../outlines/roots.ts";
import { methodsOf, NOTHING_MORE, withSeamsAdded } from "../recipe.ts";
import type { UnitKind } from "../types.ts";

/*
 *   +---+---+---+
 *   | c | s | c |     corners, sides, centre
 *   +---+---+---+
 *   | s | m | s |
 *   +---+---+---+
 *   | c | s | c |
 *   +---+---+---+
 */
const NAME = UNIT.ninePatch;
const CELLS: readonly GridCell[] = [
  { column: 0, row: 0, role: "corners", spot: "top-left" },
  { column: 1, row: 0, role: "sides", spot: "top" },
  { column: 2, row: 0, role: "corners", spot: "top-right" },
  { column: 0, row: 1, role: "sides", spot: "left" },
  { column: 1, row: 1, role: "centre", spot: "centre" },
  { column: 2, row: 1, role: "sides", spot: "right" },
  { column: 0, row: 2, role: "corners", spot: "bottom-left" },
  { column: 1, row: 2, role: "sides", spot: "bottom" },
  { column: 2, row: 2, role: "corners", spot: "bottom-right" },
];

const method = methodsOf(NAME);

const stripSets = method(METHOD.stripSets, (design, how) => {
  const size = cellSize(design, 3, 3);
  const heights = [size.along, size.along, size.along];
  const outer = {
    roles: ["corners", "sides", "corners"],
    segments: [
      { spots: ["top-left", "left", "bottom-left"], turned: false },
      { spots: ["top-right", "right", "bottom-right"], turned: false },
    ],
  };
  const inner = {
    roles: ["sides", "centre", "sides"],
    segments: [{ spots: ["top", "centre", "bottom"], turned: false }],
  };
  return {
    ...NOTHING_MORE,
    unitsPerSet: 1,
    pieces: [],
    stripSets: [
      columnSet("A", outer, size.across, heights, how),
      columnSet("B", inner, size.across, heights, how),
    ],
    seams: [
      {
        what: "strip-to-strip",
        length: withSeamsAdded(r.whole(size.across), how),
        count: 6,
        bias: false,
        strips: true,
      },
      {
        what: "segment-to-segment",
        length: withSeamsAdded(r.whole(design.along), how),
        count: 2,
        bias: false,
      },
    ],
    steps: [
      { do: "strip-set", set: 0, press: { to: "outside" } },
      { do: "strip-set", set: 1, press: { to: "part", part: "centre" } },
      {
        do: "join",
        makes: "unit",
        parts: ["A1", "B1", "A2"],
        way: "across",
        press: { to: "outside" },
      },
    ],
    // Derived geometry: strips and segments a third of the finished size + 2 seams.
    // Summer Salsa, American Patchwork & Quilting, 2014: 2 1/2 in strips and segments for a 6 in block.
  };
});

const singlePieces = method(METHOD.singlePieces, (design, how) => {
  const size = cellSize(design, 3, 3);
  return {
    ...NOTHING_MORE,
    unitsPerSet: 1,
    loose: true,
    pieces: gridPieces(CELLS, size, how),
    seams: [
      { what: "piece-to-piece", length: withSeamsAdded(r.whole(size.along), how), count: 6, bias: false },
      { what: "row-to-row", length: withSeamsAdded(r.whole(design.across), how), count: 2, bias: false },
    ],
    steps: [
      {
        do: "join",
        makes: "upper-row",
        parts: ["top-left", "top", "top-right"],
        way: "across",
        press: { to: "outside" },
      },
      {
        do: "join",
        makes: "middle-row",
        parts: ["left", "centre", "right"],
        way: "across",
        press: { to: "part", part: "centre" },
      },
      {
        do: "join",
        makes: "lower-row",
        parts: ["bottom-left", "bottom", "bottom-right"],
        way: "across",
        press: { to: "outside" },
      },
      {
        do: "join",
        makes: "unit",
        parts: ["upper-row", "middle-row", "lower-row"],
        way: "down",
        press: { to: "outside" },
      },
    ],
    // Common practice: finished size and one seam on every side.
  };
});

/** Nine equal patches. */
export const ninePatch: UnitKind = {
  name: NAME,
  alsoCalled: ["9-patch"],
  reads: [],
  check: () => null,
  roles: () => ["corners", "sides", "centre"],
  patches: (design) => gridPatches(CELLS, cellSize(design, 3, 3)),
  methods: [stripSets, singlePieces],
};
