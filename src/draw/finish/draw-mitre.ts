import { formatLength } from "../../length/index.ts";
import type { Ruler } from "../../length/types.ts";
import type { BorderRound, Making } from "../../making/types.ts";
import type { Words } from "../../words/index.ts";
import type { Corner } from "../quilt/patches.ts";
import { INK, mix, PAPER, safeColour, WASTE_GROUND } from "../scene/palette.ts";
import { onPaper } from "../scene/paper.ts";
import type { Scene } from "../scene/scene.ts";
import { circle, line, path, type SceneNode } from "../scene/scene.ts";
import type { DrawnFabric } from "../scene/textures.ts";
import { type Sketch, sketchRow } from "./making-finish-sketches.ts";

/** Room of a picture: a corner of the top, its border outside it. */
const SIDE = 92;
/** Most of it that the border takes, and the least a seam allowance is drawn. */
const WIDEST = 34;
const LEAST_SEAM = 4;
/** Share of paper in the tint of a wrong side. */
const TINT = 0.72;

const EDGE = { stroke: INK, strokeWidth: 1.1 } as const;
const SEWN = { stroke: INK, strokeWidth: 1.1, dash: "3 2.5" } as const;

/** A mitred corner in page units: the border's width and the seam allowance keep to one scale as far as they can be seen. */
export interface MitreShape {
  width: number;
  seam: number;
  /** Where the top's own corner lies. */
  corner: Corner;
}

/** The upper right corner of a top with this border, drawn into a square. */
export function mitreShape({ strips }: BorderRound, seam: number): MitreShape {
  const finished = Math.max(1, (strips[0]?.width ?? 0) - 2 * seam);
  const width = Math.min(WIDEST, Math.max(16, SIDE * 0.37));
  return {
    width,
    seam: Math.min(width / 2, Math.max(LEAST_SEAM, (width * seam) / finished)),
    corner: [SIDE - width, width],
  };
}

function shape(x: number, y: number, corners: readonly Corner[], fill: string): SceneNode {
  const moved = corners.map(([px, py]): Corner => [x + px, y + py]);
  return path(moved, true, { fill, ...EDGE });
}

/** Where stitches end, backed up. */
const dot = (x: number, y: number): SceneNode =>
  circle(x, y, 2.2, { fill: PAPER, stroke: INK, strokeWidth: 1.1 });

const topOf = ([cx, cy]: Corner): Corner[] => [
  [0, cy],
  [cx, cy],
  [cx, SIDE],
  [0, SIDE],
];

/** Both strips sewn on, one lying over the other, their stitches ending a seam from the corner. */
function sewnOn({ seam, corner }: MitreShape, cloth: string): Sketch["nodes"] {
  const [cx, cy] = corner;
  const across: Corner[] = [
    [0, 0],
    [SIDE, 0],
    [SIDE, cy],
    [0, cy],
  ];
  const down: Corner[] = [
    [cx, 0],
    [SIDE, 0],
    [SIDE, SIDE],
    [cx, SIDE],
  ];
  return (x, y) => [
    shape(x, y, topOf(corner), WASTE_GROUND),
    shape(x, y, across, cloth),
    shape(x, y, down, cloth),
    line(x, y + cy, x + cx - seam, y + cy, SEWN),
    line(x + cx, y + cy + seam, x + cx, y + SIDE, SEWN),
    dot(x + cx - seam, y + cy),
    dot(x + cx, y + cy + seam),
  ];
}

/** Folded on the diagonal the top is a triangle, its wrong side up; the strips lie on each other and run on. */
function foldedOver({ width, seam, corner: [cx, cy] }: MitreShape, cloth: string): Sketch["nodes"] {
  const run: Corner[] = [
    [0, cy - width],
    [SIDE, cy - width],
    [SIDE, cy],
    [0, cy],
  ];
  const triangle: Corner[] = [
    [0, cy],
    [cx, cy],
    [0, cy + cx],
  ];
  return (x, y) => [
    shape(x, y, triangle, mix(WASTE_GROUND, PAPER, 0.4)),
    shape(x, y, run, mix(cloth, PAPER, TINT)),
    line(x, y + cy, x + cx - seam, y + cy, SEWN),
    line(x + cx - seam, y + cy, x + cx - seam + width, y + cy - width, SEWN),
    dot(x + cx - seam, y + cy),
  ];
}

/** Opened out and pressed: each strip ends on the line from the top's corner to the border's. */
function openedOut({ corner }: MitreShape, cloth: string): Sketch["nodes"] {
  const [cx, cy] = corner;
  const across: Corner[] = [
    [0, 0],
    [SIDE, 0],
    [cx, cy],
    [0, cy],
  ];
  const down: Corner[] = [
    [SIDE, 0],
    [SIDE, SIDE],
    [cx, SIDE],
    [cx, cy],
  ];
  return (x, y) => [
    shape(x, y, topOf(corner), WASTE_GROUND),
    shape(x, y, across, cloth),
    shape(x, y, down, cloth),
  ];
}

/** Three pictures of one corner: sewn on up to the seam, folded and sewn at 45 degrees, opened. */
export function mitreSketches(
  of: MitreShape,
  cloth: string,
  said: readonly [string, string, string],
): Sketch[] {
  return [sewnOn, foldedOver, openedOut].map((draw, i) => ({ nodes: draw(of, cloth), text: said[i] ?? "" }));
}

/** How the corners of the first mitred border are sewn; null where no border is mitred. */
export function mitreScene(
  making: Making,
  fabrics: readonly DrawnFabric[],
  ruler: Ruler,
  words: Words,
): Scene | null {
  const round = making.borders.find(({ kind }) => kind === "mitred");
  if (round === undefined) return null;
  const fabric = round.strips[0]?.fabric;
  // Pale, so that stitches and letters stand out.
  const cloth = mix(safeColour(fabrics.find(({ name }) => name === fabric)?.colour ?? ""), PAPER, 0.45);
  const said = words.drawings.sewing.borders.mitred;
  const seam = formatLength(making.seam, ruler, { typeset: true });
  const sketches = mitreSketches(mitreShape(round, making.seam), cloth, [
    said.sew(seam),
    said.fold,
    said.open(seam),
  ]);
  const { nodes, bottom } = sketchRow(sketches, 0);
  return {
    idPrefix: "mitre-",
    title: said.title(words.purposes.border(round.name)),
    description: said.described,
    ...onPaper(nodes, bottom),
  };
}
