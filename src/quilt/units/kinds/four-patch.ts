import { METHOD, UNIT } from "../../terms/names.ts";
import { cellSize, columnSet, type GridCell, gridPatches, gridPieces, type SetColumn } from "../grid.ts";
import * as r from "../outlines/roots.ts";
import { methodsOf, NOTHING_MORE, type RecipeDraft, withSeamsAdded } from "../recipe.ts";
import type { HowMade, UnitDesign, UnitKind } from "../types.ts";

/*
 *   +---+---+     first:  top left and bottom right
 *   | 1 | 2 |     second: top right and bottom left
 *   +---+---+
 *   | 2 | 1 |
 *   +---+---+
 */
const NAME = UNIT.fourPatch;
const CELLS: readonly GridCell[] = [
  { column: 0, row: 0, role: "first", spot: "top-left" },
  { column: 1, row: 0, role: "second", spot: "top-right" },
  { column: 1, row: 1, role: "first", spot: "bottom-right" },
  { column: 0, row: 1, role: "second", spot: "bottom-left" },
];
const LEFT = { spots: ["top-left", "bottom-left"], turned: false };
const RIGHT = { spots: ["top-right", "bottom-right"], turned: false };
const RIGHT_TURNED = { spots: ["bottom-right", "top-right"], turned: true };

const method = methodsOf(NAME);

function setsDraft(
  columns: readonly SetColumn[],
  design: UnitDesign,
  how: HowMade,
): Omit<RecipeDraft, "kind" | "method"> {
  const size = cellSize(design, 2, 2);
  const heights = [size.along, size.along];
  const cell = withSeamsAdded(r.whole(size.across), how);
  return {
    ...NOTHING_MORE,
    unitsPerSet: 1,
    pieces: [],
    stripSets: columns.map((column, i) => columnSet("AB".charAt(i), column, size.across, heights, how)),
    seams: [
      { what: "strip-to-strip", length: cell, count: 2, bias: false, strips: true },
      {
        what: "segment-to-segment",
        length: withSeamsAdded(r.whole(design.along), how),
        count: 1,
        bias: false,
      },
    ],
    steps: [
      ...columns.map((_, set) => ({ do: "strip-set" as const, set, press: { to: "darker" as const } })),
      {
        do: "join",
        makes: "unit",
        parts: columns.length === 1 ? ["A1", "A2"] : ["A1", "B1"],
        way: "across",
        press: { to: "one-way" },
      },
    ],
    // Derived geometry: strips and segments half the finished size + 2 seams.
    // Orchard Lane, American Patchwork & Quilting, 2014: 4 1/2 in segments for an 8 in block.
  };
}

const stripSets = method(METHOD.stripSets, (design, how) =>
  setsDraft([{ roles: ["first", "second"], segments: [LEFT, RIGHT_TURNED] }], design, how),
);

const twoStripSets = method(METHOD.twoStripSets, (design, how) =>
  setsDraft(
    [
      { roles: ["first", "second"], segments: [LEFT] },
      { roles: ["second", "first"], segments: [RIGHT] },
    ],
    design,
    how,
  ),
);

const singlePieces = method(METHOD.singlePieces, (design, how) => {
  const size = cellSize(design, 2, 2);
  return {
    ...NOTHING_MORE,
    unitsPerSet: 1,
    loose: true,
    pieces: gridPieces(CELLS, size, how),
    seams: [
      { what: "piece-to-piece", length: withSeamsAdded(r.whole(size.across), how), count: 2, bias: false },
      { what: "row-to-row", length: withSeamsAdded(r.whole(design.across), how), count: 1, bias: false },
    ],
    steps: [
      {
        do: "join",
        makes: "upper-row",
        parts: ["top-left", "top-right"],
        way: "across",
        press: { to: "darker" },
      },
      {
        do: "join",
        makes: "lower-row",
        parts: ["bottom-left", "bottom-right"],
        way: "across",
        press: { to: "darker" },
      },
      { do: "join", makes: "unit", parts: ["upper-row", "lower-row"], way: "down", press: { to: "one-way" } },
    ],
    // Common practice: finished size and one seam on every side.
  };
});

/** Four equal patches, two fabrics on the cross. */
export const fourPatch: UnitKind = {
  name: NAME,
  alsoCalled: ["4-patch"],
  reads: [],
  check: () => null,
  roles: () => ["first", "second"],
  patches: (design) => gridPatches(CELLS, cellSize(design, 2, 2)),
  methods: [stripSets, twoStripSets, singlePieces],
};
