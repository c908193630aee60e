import type { Plan } from "../../planning.ts";

type Top = NonNullable<Plan["top"]>;
type Exact = Top["across"];
export type Corner = readonly [number, number];

/** Ticks to one unit of a picture: a millimetre. */
export const UNIT = 640;

/** Where a print's up is shown: a place, degrees clockwise from the top, and how long the arrow may be. */
export interface Up {
  x: number;
  y: number;
  up: number;
  long: number;
}

/** Most arrows of one fabric: the largest patches show them. */
const MOST_UPS = 600;

/** The middle of a shape and what fits in it. */
export function upIn(corners: readonly Corner[], up: number): Up {
  let [area, x, y] = [0, 0, 0];
  corners.forEach(([x1, y1], i) => {
    const [x2, y2] = corners[(i + 1) % corners.length]!;
    const cross = x1 * y2 - x2 * y1;
    area += cross;
    x += (x1 + x2) * cross;
    y += (y1 + y2) * cross;
  });
  const round = (value: number): number => Math.round(value * 10) / 10;
  if (area === 0) return { x: 0, y: 0, up, long: 0 };
  // A long strip is large and yet as narrow as the border it is.
  const angle = (up * Math.PI) / 180;
  const along = corners.map(([cx, cy]) => cx * Math.sin(angle) - cy * Math.cos(angle));
  const room = Math.max(...along) - Math.min(...along);
  return {
    x: round(x / (3 * area)),
    y: round(y / (3 * area)),
    up,
    long: round(Math.min(0.4 * Math.sqrt(Math.abs(area / 2)), 0.7 * room)),
  };
}

/** An arrow to where a print's up points; a print that reads both ways has two heads. */
export function upPath({ x, y, up, long }: Up, twoWay: boolean): string {
  const angle = (up * Math.PI) / 180;
  const at = (along: number, side: number): string => {
    const [dx, dy] = [Math.sin(angle), -Math.cos(angle)];
    return `${(x + dx * along - dy * side).toFixed(1)} ${(y + dy * along + dx * side).toFixed(1)}`;
  };
  const [half, head] = [long / 2, long / 3.4];
  const tip = (end: number): string =>
    `M${at(end * (half - head), -head * 0.8)}L${at(end * half, 0)}L${at(end * (half - head), head * 0.8)}`;
  return `M${at(-half, 0)}L${at(half, 0)}${tip(1)}${twoWay ? tip(-1) : ""}`;
}

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
  /** Patches of one fabric as one shape, apart where its print's up points elsewhere; null where it has none. */
  groups: { fabric: string; up: number | null; d: string; ups: Up[] }[];
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
  const groups = new Map<string, { fabric: string; up: number | null; d: string[]; ups: Up[] }>();
  for (const { fabric, outline: points, up } of top.patches) {
    const key = `${fabric} ${up ?? ""}`;
    const own = groups.get(key) ?? { fabric, up, d: [], ups: [] };
    groups.set(key, own);
    own.d.push(outline(points, 1));
    if (up !== null)
      own.ups.push(
        upIn(
          points.map(({ x, y }): Corner => [mm(x), mm(y)]),
          up,
        ),
      );
  }
  const largest = (ups: readonly Up[]): Up[] => [...ups].sort((a, b) => b.long - a.long).slice(0, MOST_UPS);
  return {
    across: mm(top.across),
    down: mm(top.down),
    groups: [...groups.values()].map(({ fabric, up, d, ups }) => ({
      fabric,
      up,
      d: d.join(""),
      ups: largest(ups),
    })),
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
