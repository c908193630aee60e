import { exactToNumber } from "../quilt/index.ts";
import type { BlockDesign } from "../quilt/types.ts";
import { type Around, layersAt } from "./layers.ts";
import type { ReadTop, TopCell } from "./read-top.ts";
import type { Seam } from "./seams.ts";

/** A place on a seam where others end, those inside units of other shapes included. */
export interface Juncture {
  x: number;
  y: number;
  /** The seam that runs through: it is sewn last there. */
  last: Seam;
  /** What ends at it from the left or above, and from the right or below. */
  before: Seam | null;
  after: Seam | null;
  slants: Around["slants"];
}

/** A seam inside a unit, where it reaches the unit's edge, and which way it runs from there. */
interface Slant {
  x: number;
  y: number;
  angle: number;
}

/** Where seams inside units that are no rectangles end at the units' edges, in the block's frame. */
function slantsOf(design: BlockDesign, read: ReadTop, index: number): Slant[] {
  const own = read.designs[index];
  const found = new Map<string, Slant>();
  const at = (value: { n: number; r: number; d: number }): number => exactToNumber(value) * read.scale;
  for (const { outline, origin } of design.patches) {
    const unit = design.units[origin.unit ?? -1];
    if (unit === undefined || own?.units[origin.unit ?? -1] !== null) continue;
    const [left, top] = [at(unit.x), at(unit.y)];
    const [right, bottom] = [left + at(unit.across), top + at(unit.down)];
    const on = (a: number, b: number): boolean => Math.abs(a - b) < read.scale / 2;
    const edge = (x: number, y: number): boolean =>
      on(x, left) || on(x, right) || on(y, top) || on(y, bottom);
    const corners = outline.map(({ x, y }) => [at(x), at(y)] as const);
    for (const [i, p] of corners.entries()) {
      const q = corners[(i + 1) % corners.length] ?? p;
      const along =
        (on(p[0], q[0]) && (on(p[0], left) || on(p[0], right))) ||
        (on(p[1], q[1]) && (on(p[1], top) || on(p[1], bottom)));
      if (along) continue;
      for (const [from, to] of [
        [p, q],
        [q, p],
      ] as const) {
        if (!edge(from[0], from[1])) continue;
        const angle = (Math.atan2(to[1] - from[1], to[0] - from[0]) * 180) / Math.PI;
        const slant = { x: Math.round(from[0]), y: Math.round(from[1]), angle: Math.round(angle * 10) / 10 };
        found.set(`${slant.x},${slant.y},${slant.angle}`, slant);
      }
    }
  }
  return [...found.values()];
}

function placeSlant({ x, y, angle }: Slant, { box, turn }: TopCell, across: number, down: number): Slant {
  const turned = {
    0: [x, y],
    90: [down - y, x],
    180: [across - x, down - y],
    270: [y, across - x],
  } as const;
  const [px, py] = turned[turn];
  return { x: px + box.x, y: py + box.y, angle: (((angle + turn) % 360) + 360) % 360 };
}

function keyOf(x: number, y: number): string {
  return `${x},${y}`;
}

/** Every place on a seam of the top where another ends. */
export function juncturesOf(
  designs: readonly BlockDesign[],
  read: ReadTop,
  seams: readonly Seam[],
): Juncture[] {
  const slants = new Map<string, Slant[]>();
  const known = new Map<number, Slant[]>();
  for (const cell of read.cells) {
    const design = designs[cell.design ?? -1];
    if (design === undefined || cell.design === null) continue;
    const own = known.get(cell.design) ?? slantsOf(design, read, cell.design);
    known.set(cell.design, own);
    const frame = read.designs[cell.design]?.tree.box ?? cell.box;
    for (const slant of own) {
      const placed = placeSlant(slant, cell, frame.across, frame.down);
      const key = keyOf(placed.x, placed.y);
      slants.set(key, [...(slants.get(key) ?? []), placed]);
    }
  }
  const places = new Map<string, { x: number; y: number }>();
  const ends = { upright: { to: new Map(), from: new Map() }, level: { to: new Map(), from: new Map() } } as {
    [way in "upright" | "level"]: { to: Map<string, Seam>; from: Map<string, Seam> };
  };
  const lines = { upright: new Map<number, Seam[]>(), level: new Map<number, Seam[]>() };
  for (const seam of seams) {
    const { x, y, across, down } = seam.box;
    const way = seam.upright ? "upright" : "level";
    const [from, to] = [keyOf(x, y), keyOf(x + across, y + down)];
    ends[way].from.set(from, seam);
    ends[way].to.set(to, seam);
    places.set(from, { x, y });
    places.set(to, { x: x + across, y: y + down });
    const line = seam.upright ? x : y;
    const along = lines[way].get(line) ?? [];
    along.push(seam);
    lines[way].set(line, along);
  }
  for (const [key, [slant]] of slants) if (slant !== undefined) places.set(key, slant);
  const through = (way: "upright" | "level", x: number, y: number): Seam | undefined =>
    way === "upright"
      ? lines.upright.get(x)?.find(({ box }) => box.y < y && y < box.y + box.down)
      : lines.level.get(y)?.find(({ box }) => box.x < x && x < box.x + box.across);
  const found: Juncture[] = [];
  for (const [key, { x, y }] of places) {
    const last = through("level", x, y) ?? through("upright", x, y);
    if (last === undefined) continue;
    const across = last.upright ? "level" : "upright";
    const [before, after] = [ends[across].to.get(key) ?? null, ends[across].from.get(key) ?? null];
    const own = (slants.get(key) ?? []).map(({ angle }): Around["slants"][number] => ({
      unit: isAfter(angle, last.upright) ? "after" : "before",
      far: isAfter(angle, !last.upright),
      angle,
    }));
    found.push({ x, y, last, before, after, slants: own });
  }
  return found.sort((p, q) => p.y - q.y || p.x - q.x);
}

function isAfter(angle: number, upright: boolean): boolean {
  return upright ? angle < 90 || angle > 270 : angle > 0 && angle < 180;
}

/** Counts layers, each kind of place once. */
export function layerCounter(): (
  juncture: Juncture,
  reads: (seam: Seam) => boolean,
  open?: boolean,
) => number {
  const known = new Map<string, number>();
  return ({ last, before, after, slants }, reads, open = false) => {
    const around: Around = {
      upright: last.upright,
      last: reads(last),
      before: before === null ? null : reads(before),
      after: after === null ? null : reads(after),
      slants,
    };
    const key = JSON.stringify([around, open]);
    const layers = known.get(key) ?? layersAt(around, open);
    known.set(key, layers);
    return layers;
  };
}
