import type { Plan } from "../../planning.ts";
import { tongue } from "../words/index.ts";
import { mm, outlinePath, UNIT } from "./picture.ts";

type Top = NonNullable<Plan["top"]>;
type Making = NonNullable<Plan["making"]>;

/** A seam of a row or block, in millimetres of the top or block, and which way it is pressed. */
export interface SewnSeam {
  x1: number;
  y1: number;
  x2: number;
  y2: number;
  press: "left" | "right" | "up" | "down";
  /** Fabrics along both its sides: those under which its allowances lie, and the others. */
  under: string;
  beside: string;
}

/** What is pressed in one go, its patches pale. */
export interface PressPicture {
  name: string;
  /** How many blocks are pressed so; 0 for what is pressed once. */
  count: number;
  /** Its upper left corner: patches are told in the frame of the top, or of the block. */
  x: number;
  y: number;
  across: number;
  down: number;
  groups: { fabric: string; d: string }[];
  seams: SewnSeam[];
}

interface Box {
  x: number;
  y: number;
  right: number;
  bottom: number;
}

type Patch = Top["patches"][number];
type Point = readonly [number, number];

const cornersOf = ({ outline }: Patch): Point[] => outline.map(({ x, y }) => [mm(x), mm(y)]);

function isIn([x, y]: Point, corners: readonly Point[]): boolean {
  let inside = false;
  corners.forEach(([ax, ay], i) => {
    const [bx, by] = corners[(i + 1) % corners.length]!;
    if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) inside = !inside;
  });
  return inside;
}

const middleOf = (corners: readonly Point[]): Point => [
  corners.reduce((sum, [x]) => sum + x, 0) / corners.length,
  corners.reduce((sum, [, y]) => sum + y, 0) / corners.length,
];

const AWAY: Readonly<Record<SewnSeam["press"], Point>> = {
  left: [-1, 0],
  right: [1, 0],
  up: [0, -1],
  down: [0, 1],
};

/** Places along a seam at which the cloth on both sides of it is looked up, off the corners of patches. */
const SAMPLES = [0.07, 0.19, 0.31, 0.43, 0.57, 0.69, 0.81, 0.93];

type Seam = Pick<SewnSeam, "x1" | "y1" | "x2" | "y2" | "press">;

/** Patches and seams inside a box, and which cloth lies along both sides of each seam. */
function pressPicture(
  name: string,
  box: Box,
  patches: readonly Patch[],
  seams: readonly Seam[],
): PressPicture {
  const within = ([x, y]: Point, by: number): boolean =>
    x > box.x - by && x < box.right + by && y > box.y - by && y < box.bottom + by;
  const own = patches
    .map((patch) => ({ patch, corners: cornersOf(patch) }))
    .filter(({ corners }) => within(middleOf(corners), -0.01));
  const fabricAt = (point: Point): string =>
    own.find(({ corners }) => isIn(point, corners))?.patch.fabric ?? "";
  const groups = new Map<string, string>();
  for (const { patch } of own)
    groups.set(patch.fabric, (groups.get(patch.fabric) ?? "") + outlinePath(patch.outline));
  return {
    name,
    count: 0,
    x: box.x,
    y: box.y,
    across: box.right - box.x,
    down: box.bottom - box.y,
    groups: [...groups].map(([fabric, d]) => ({ fabric, d })),
    seams: seams
      .map(({ x1, y1, x2, y2, press }) => ({
        x1: x1 / UNIT,
        y1: y1 / UNIT,
        x2: x2 / UNIT,
        y2: y2 / UNIT,
        press,
      }))
      .filter((seam) => {
        const middle: Point = [(seam.x1 + seam.x2) / 2, (seam.y1 + seam.y2) / 2];
        const ends = within([seam.x1, seam.y1], 0.5) && within([seam.x2, seam.y2], 0.5);
        return ends && within(middle, -0.5);
      })
      .map((seam): SewnSeam => {
        const [dx, dy] = AWAY[seam.press];
        const along = (side: 1 | -1): string => {
          const found = SAMPLES.map((t) =>
            fabricAt([
              seam.x1 + (seam.x2 - seam.x1) * t + dx * 2 * side,
              seam.y1 + (seam.y2 - seam.y1) * t + dy * 2 * side,
            ]),
          );
          return [...new Set(found)].filter((fabric) => fabric !== "").join(", ");
        };
        return {
          ...seam,
          under: along(1),
          beside: along(-1),
        };
      }),
  };
}

/** Every row of the top (or column) as it is pressed, then the rows together. */
export function rowPresses(top: Top, making: Making): PressPicture[] {
  const { pressing, scale, seam, joins } = making;
  if (pressing === null) return [];
  return joins
    .filter(({ stage }) => stage === "top")
    .map(({ makes, at, size }) => {
      const ticks = (value: number): number => value / scale / UNIT;
      const box = {
        x: ticks(at.x),
        y: ticks(at.y),
        right: ticks(at.x + size.across) - (2 * seam) / UNIT,
        bottom: ticks(at.y + size.down) - (2 * seam) / UNIT,
      };
      // Rows together are pressed along the seams between them; those inside them have been.
      const own = makes.is === "line" ? makes.line : "between";
      const lines = pressing.lines === "rows" ? "level" : "upright";
      const seams = pressing.seams.filter(({ x1, x2 }) => {
        const way = x1 === x2 ? "upright" : "level";
        return own === "between" ? way === lines : way !== lines;
      });
      return pressPicture(tongue.blocks.named(makes), box, top.patches, seams);
    });
}

/** Designs as they are pressed inside, in every way there is of each, by the kinds of block that are pressed so. */
export function blockPresses(designs: readonly number[], top: Top, making: Making): PressPicture[] {
  const all = making.pressing?.blocks ?? [];
  return designs.flatMap((design) => {
    const own = top.designs[design];
    if (own === undefined) return [];
    const box = { x: 0, y: 0, right: mm(own.across), bottom: mm(own.down) };
    const ways = all.filter((each) => each.design === design && each.seams.length > 0);
    return ways.map(({ variant, count, seams }) => {
      const kinds = making.kinds.filter(
        (kind) => kind.variant === variant && making.blocks[kind.making]?.design === design,
      );
      const names = kinds.length === 0 ? own.name : tongue.blocks.list(kinds.map(({ name }) => name));
      return { ...pressPicture(names, box, own.patches, seams), count };
    });
  });
}
