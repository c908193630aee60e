import type { BlockDesign, Patch, PatchPlace, QuiltTop } from "../quilt/types.ts";
import type { FixedSeam } from "./foundation.ts";
import { type Box, type Cell, sewingTree, type Tree } from "./tiling.ts";
import {
  boxOfPatch,
  partsOfTick,
  placesOf,
  tiltedCorner,
  turnOf,
  uprightBox,
  uprightCorner,
  wholeOf,
} from "./whole.ts";

/** A block, or a rectangle of plain cloth, in its place in the top. */
export interface TopCell {
  box: Box;
  place: PatchPlace;
  /** Index into the top's `blocks` and `designs`; null for plain cloth. */
  block: number | null;
  design: number | null;
  turn: 0 | 90 | 180 | 270;
  /** Fabric of plain cloth; else empty. */
  fabric: string;
}

/** A block design as it is sewn: its units, and what is sewn inside units made of rectangles. */
interface DesignTree {
  tree: Tree;
  /** By unit; null where the unit has a recipe of its own shape. */
  units: (Tree | null)[];
  /** Plain cloth: one unit of one patch. */
  plain: boolean;
  /** Seams pressed already where patches are added on foundation; none otherwise. */
  fixed: FixedSeam[];
}

/** One round of borders about what is there already. */
interface Ring {
  /** Index into the top's `borders`. */
  border: number;
  /** The round with cell `CORE` in its middle; null when it is mitred. */
  tree: Tree | null;
  /** Outer edge. */
  box: Box;
}

/** In a ring's tree: what was sewn before. */
export const CORE = -1;

export interface ReadTop {
  scale: number;
  tilted: boolean;
  cells: TopCell[];
  centre: Tree;
  /** Empty on point, where borders lie in another frame. */
  rings: Ring[];
  designs: DesignTree[];
}

/** The design in whole parts of a tick; null when its units have roots in their sizes. */
function readDesign(
  design: BlockDesign,
  scale: number,
  inColumns: (unit: number) => boolean,
): DesignTree | null {
  const cells: Cell[] = [];
  for (const [ref, unit] of design.units.entries()) {
    const sizes = [unit.x, unit.y, unit.across, unit.down].map((size) => wholeOf(size, scale));
    const [x, y, across, down] = sizes;
    if (x == null || y == null || across == null || down == null) return null;
    cells.push({ box: { x, y, across, down }, ref });
  }
  const patches: Patch[][] = design.units.map(() => []);
  for (const patch of design.patches) patches[patch.origin.unit ?? -1]?.push(patch);
  const units = patches.map((own, unit) => {
    const boxes = own.map((patch) => boxOfPatch(patch, scale));
    const found = boxes.filter((box) => box !== null);
    if (found.length < 2 || found.length !== boxes.length) return null;
    return sewingTree(
      found.map((box, ref) => ({ box, ref })),
      inColumns(unit) ? "across" : "down",
    );
  });
  const plain = design.units.length === 1 && design.patches.length === 1;
  return { tree: sewingTree(cells), units, plain, fixed: [] };
}

/**
 * The top as trees of joinings; null when it is not made of rectangles in rows.
 * @param inColumns whether a unit of a design is sewn in columns first, as it lies in the block
 */
export function readTop(
  top: QuiltTop,
  inColumns: (design: number, unit: number) => boolean = () => false,
): ReadTop | null {
  const scale = scaleOf(top);
  if (scale === null) return null;
  const designs = top.designs.map((design, i) => readDesign(design, scale, (unit) => inColumns(i, unit)));
  const known = designs.filter((design) => design !== null);
  if (known.length !== designs.length) return null;
  const tilted = top.centre.onPoint;
  const border = borderOfBlocks(top);
  const cells: TopCell[] = [];
  const inRing: (number | null)[] = [];
  for (const [block, { design, place, outline }] of top.blocks.entries()) {
    const own = border[block] ?? null;
    if (tilted && own !== null) continue;
    const corners = outline.map((point) =>
      tilted ? tiltedCorner(point, top.centre, scale) : uprightCorner(point, scale),
    );
    const box = uprightBox(corners);
    if (box === null) return null;
    cells.push({ box, place, block, design, turn: turnOf(corners), fabric: "" });
    inRing.push(own);
  }
  if (tilted) cells.push(...triangleCells(cells));
  else {
    for (const patch of top.patches) {
      if (patch.origin.block !== null) continue;
      const own = patch.origin.border;
      const box = boxOfPatch(patch, scale);
      if (box === null) {
        if (own === null) return null;
        continue;
      }
      cells.push({
        box,
        place: patch.origin.place,
        block: null,
        design: null,
        turn: 0,
        fabric: patch.fabric,
      });
      inRing.push(own);
    }
  }
  const numbered = cells.map((cell, ref): Cell => ({ box: cell.box, ref }));
  const inner = numbered.filter(({ ref }) => (inRing[ref] ?? null) === null);
  if (inner.length === 0) return null;
  const centre = sewingTree(inner);
  const rings = tilted ? [] : readRings(top, centre.box, numbered, inRing, scale);
  return rings === null ? null : { scale, tilted, cells, centre, rings, designs: known };
}

function scaleOf(top: QuiltTop): number | null {
  const { centre, borders, designs } = top;
  const sizes = [
    ...designs.flatMap(({ units }) => units.flatMap(({ x, y, across, down }) => [x, y, across, down])),
    ...borders.flatMap(({ x, y, across, down, side, end }) => [x, y, across, down, side, end]),
    centre.x,
    centre.y,
    ...placesOf(top.blocks.map(({ outline }) => outline)),
    ...placesOf(top.patches.filter(({ origin }) => origin.block === null).map(({ outline }) => outline)),
    ...placesOf(designs.flatMap(({ patches }) => patches.map(({ outline }) => outline))),
  ];
  return partsOfTick(sizes);
}

function borderOfBlocks(top: QuiltTop): (number | null)[] {
  const found: (number | null)[] = top.blocks.map(() => null);
  for (const { origin } of top.patches) {
    if (origin.block !== null) found[origin.block] = origin.border;
  }
  return found;
}

/** A setting triangle at both ends of each diagonal row, as long as its sewn side. */
function triangleCells(blocks: readonly TopCell[]): TopCell[] {
  const rows = new Map<number, TopCell[]>();
  for (const cell of blocks) rows.set(cell.box.y, [...(rows.get(cell.box.y) ?? []), cell]);
  const plain = { place: "setting-triangle", block: null, design: null, turn: 0, fabric: "" } as const;
  return [...rows.values()].flatMap((row) => {
    const sorted = [...row].sort((a, b) => a.box.x - b.box.x);
    const [first, last] = [sorted[0], sorted.at(-1)];
    if (first === undefined || last === undefined) return [];
    const before = { ...first.box, x: first.box.x - first.box.across };
    const after = { ...last.box, x: last.box.x + last.box.across };
    return [before, after].map((box): TopCell => ({ ...plain, box }));
  });
}

function readRings(
  top: QuiltTop,
  inside: Box,
  numbered: readonly Cell[],
  inRing: readonly (number | null)[],
  scale: number,
): Ring[] | null {
  const rings: Ring[] = [];
  let core = inside;
  for (const [border, { kind, x, y, across, down }] of top.borders.entries()) {
    const sizes = [x, y, across, down].map((size) => wholeOf(size, scale));
    const [left, upper, wide, high] = sizes;
    if (left == null || upper == null || wide == null || high == null) return null;
    const box = { x: left, y: upper, across: wide, down: high };
    const own = numbered.filter(({ ref }) => inRing[ref] === border);
    const tree = kind === "mitred" ? null : sewingTree([{ box: core, ref: CORE }, ...own]);
    rings.push({ border, tree, box });
    core = box;
  }
  return rings;
}
