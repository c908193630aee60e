import type { Plan } from "../../planning.ts";

type Top = NonNullable<Plan["top"]>;
type Exact = Top["across"];
export type Corner = readonly [number, number];

/** Ticks to one unit of a picture: a millimetre. */
export const UNIT = 640;

/** A ring round the quilt: its outer edge and its widths. */
export interface RingPicture {
  x: number;
  y: number;
  across: number;
  down: number;
  side: number;
  end: number;
}

/** What the page draws of a top, in millimetres: far smaller than the top, since it is sent with every gesture. */
export interface Picture {
  across: number;
  down: number;
  /** Patches of one fabric as one shape. */
  groups: { fabric: string; d: string }[];
  /** Blocks of the setting with their place in its rows. */
  blocks: { row: number; column: number; d: string }[];
  borders: RingPicture[];
  centre: { across: number; down: number };
}

/** An exact length in millimetres, for drawing only. */
export function mm({ n, r, d, root }: Exact): number {
  return (n + r * Math.sqrt(root ?? 2)) / d / UNIT;
}

/** An outline as a path, to so many decimals. */
export function pathOf(corners: readonly Corner[], decimals = 2): string {
  const scale = 10 ** decimals;
  const num = (value: number): number => Math.round(value * scale) / scale;
  return `M${corners.map(([x, y]) => `${num(x)} ${num(y)}`).join("L")}Z`;
}

const outline = (points: Top["patches"][number]["outline"], decimals: number): string =>
  pathOf(
    points.map(({ x, y }): Corner => [mm(x), mm(y)]),
    decimals,
  );

/** An outline of the top as a path, in millimetres. */
export const outlinePath = (points: Top["patches"][number]["outline"]): string => outline(points, 1);

export function pictureOf(top: Top): Picture {
  const groups = new Map<string, string[]>();
  for (const { fabric, outline: points } of top.patches) {
    const own = groups.get(fabric);
    const d = outline(points, 1);
    if (own === undefined) groups.set(fabric, [d]);
    else own.push(d);
  }
  return {
    across: mm(top.across),
    down: mm(top.down),
    groups: [...groups].map(([fabric, all]) => ({ fabric, d: all.join("") })),
    blocks: top.blocks.flatMap(({ place, row, column, outline: points }) =>
      place === "block" ? [{ row, column, d: outline(points, 1) }] : [],
    ),
    borders: top.borders.map(({ x, y, across, down, side, end }) => ({
      x: mm(x),
      y: mm(y),
      across: mm(across),
      down: mm(down),
      side: mm(side),
      end: mm(end),
    })),
    centre: { across: mm(top.centre.across), down: mm(top.centre.down) },
  };
}
