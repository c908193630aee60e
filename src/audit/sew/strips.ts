import type { StripSetRecord, UnitRecord } from "../../cutlist/record/unit-record.ts";
import { bagOf } from "./cloth.ts";
import { said } from "./compare.ts";
import { NEAR, type Polygon, rectangleOf } from "./polygon.ts";
import { type Seen, use, type Workroom } from "./types.ts";

/*
 * Strips sewn side by side and cut into segments; and strips cut up aslant.
 */

/** What is sewn and stays an upright rectangle, raw edge to raw edge. */
export interface Group {
  across: number;
  along: number;
  seen: Seen[];
}

/** A segment as it comes off its set: upright, the first strip at the top. */
export function segmentOf(set: StripSetRecord, seam: number): Group {
  let y = 0;
  const last = set.strips.length - 1;
  const seen = set.strips.map(({ width, fabric, up }, i): Seen => {
    const high = width - (i === 0 ? 0 : seam) - (i === last ? 0 : seam);
    const polygon = rectangleOf(set.segment, high, 0, y);
    y += high;
    return { polygon, fabric, up: up === null ? null : up * 45 };
  });
  return { across: set.segment, along: y, seen };
}

/** What one slanting cut after another makes of a strip, from its own width and the distance between cuts. */
export function shapeOfStrip({ cut, strips, segment }: StripSetRecord): Polygon {
  const high = strips[0]?.width ?? 0;
  if (cut === "triangle-60")
    return [
      { x: segment / 2, y: 0 },
      { x: segment, y: high },
      { x: 0, y: high },
    ];
  return [
    { x: high, y: 0 },
    { x: high + segment, y: 0 },
    { x: segment, y: high },
    { x: 0, y: high },
  ];
}

/** Segments a strip of that length gives; a slanting first cut loses a corner. */
function fitting({ cut, segment, straighten }: StripSetRecord, length: number, high: number): number {
  const left = length - straighten;
  if (left <= 0 || segment <= 0) return 0;
  if (cut === "diamond-45") return Math.max(0, Math.floor((left - high) / segment));
  if (cut === "triangle-60") return Math.max(0, Math.floor((2 * left) / segment) - 1);
  return Math.floor(left / segment);
}

/** Strips from their bags, their widths and prints, and whether the segments come out of their length. */
export function checkStripSet(set: StripSetRecord, record: UnitRecord, room: Workroom): void {
  const where = `${record.name}, strip set ${set.name}`;
  const heap = record.heaps[set.heap];
  const { fullSets, fullLength, lastLength, perFullSet, fromLast, segments, segmentsPerUnit } = set;
  const wanted = (heap?.count ?? 0) * segmentsPerUnit;
  if (segments !== wanted) room.faults.push(`${where}: ${segments} segments for ${wanted}`);
  const given = fullSets * perFullSet + fromLast;
  if (given !== segments)
    room.faults.push(`${where}: its sets give ${given} segments, and ${segments} are wanted`);
  const high =
    set.strips.reduce((sum, { width }) => sum + width, 0) - 2 * room.seam * (set.strips.length - 1);
  if (Math.abs(high - set.height) > NEAR)
    room.faults.push(`${where}: it comes out ${said(high)} high, not ${said(set.height)}`);
  if (fullSets > 0 && perFullSet > fitting(set, fullLength, high))
    room.faults.push(`${where}: a full set does not give ${perFullSet} segments`);
  if (fromLast > fitting(set, lastLength, high))
    room.faults.push(`${where}: the short set does not give ${fromLast} segments`);
  if (set.cut !== "square") checkSlant(set, where, room);
  for (const strip of set.strips) {
    const same = room.same.get(strip.fabric) ?? 0;
    if (same === 0 && strip.up !== null) room.faults.push(`${where}: ${strip.fabric} has no direction`);
    const bag = strip.letter === null ? null : bagOf(strip.letter, room);
    const longer = fullSets > 0 && bag !== null ? bag.piece.across - fullLength : 0;
    if (Math.abs(longer - strip.beyond) > NEAR)
      room.faults.push(
        `${where}: strips ${strip.letter} are longer than the set by ${said(longer)}, told ${said(strip.beyond)}`,
      );
    const full = { letter: strip.letter, length: fullLength, count: fullSets };
    const last = { letter: strip.lastLetter, length: lastLength, count: 1 };
    if (fullSets > 0) takeStrip(strip, full, where, room);
    if (fromLast > 0) takeStrip(strip, last, where, room);
  }
}

/** Slanting cuts as far apart as the strip is wide give even sides. */
function checkSlant(set: StripSetRecord, where: string, room: Workroom): void {
  const width = set.strips[0]?.width ?? 0;
  const even = set.cut === "diamond-45" ? width * Math.SQRT2 : (2 * width) / Math.sqrt(3);
  if (Math.abs(set.segment - even) > NEAR)
    room.faults.push(
      `${where}: cuts ${said(set.segment)} apart on a strip ${said(width)} wide give uneven sides; ${said(even)} would be even`,
    );
}

function takeStrip(
  strip: StripSetRecord["strips"][number],
  { letter, length, count }: { letter: string | null; length: number; count: number },
  where: string,
  room: Workroom,
): void {
  const bag = letter === null ? null : bagOf(letter, room);
  if (bag === null || letter === null) {
    room.faults.push(`${where}: no bag holds the strips of ${strip.fabric}`);
    return;
  }
  const { piece, fabric, boltUp } = bag;
  use(room, letter, count);
  if (fabric !== strip.fabric)
    room.faults.push(`${where}: bag ${letter} holds ${fabric}, not ${strip.fabric}`);
  // A short strip gathered with other pieces may be written either way.
  const swapped = piece.turnable && Math.abs(piece.along - strip.width) > NEAR;
  const [run, wide] = swapped ? [piece.along, piece.across] : [piece.across, piece.along];
  if (Math.abs(wide - strip.width) > NEAR)
    room.faults.push(`${where}: strips ${letter} are cut ${said(wide)} wide, not ${said(strip.width)}`);
  if (run < length - NEAR)
    room.faults.push(`${where}: strips ${letter} are ${said(run)} long, too short for ${said(length)}`);
  if (strip.up !== null && (strip.up * 45 - boltUp + 720) % 180 !== 0)
    room.faults.push(`${where}: strips ${letter} cut across the fabric cannot point as told`);
}
