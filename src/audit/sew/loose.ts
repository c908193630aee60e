import type { HeapRecord, PatchRecord, PatchSource, UnitRecord } from "../../cutlist/record/unit-record.ts";
import { bagOf, partOf } from "./cloth.ts";
import { said } from "./compare.ts";
import { type Laid, layBest, placeOf, waysToTurn } from "./place.ts";
import { between, edgesOf, NEAR, type Polygon } from "./polygon.ts";
import { shapeOfStrip } from "./strips.ts";
import { type Bag, type DesignedPatch, type DesignedUnit, use, usePart, type Workroom } from "./types.ts";

/*
 * Units whose patches are cut to shape before anything is sewn: every part must lie on its patch with an allowance on
 * every edge and its print as designed, and there must be as many parts as patches.
 */

/** How a unit is brought to size, for its parts. */
export interface Manner {
  /** What lies beyond the rim is cut off: by a step, or with the foundation. */
  trimmed: boolean;
  /** Pieced on foundation: every seam is on its line, and what lies beyond it is cut off. */
  onLines: boolean;
  /** Sewn as upright rectangles, whose sizes are added up elsewhere. */
  rectangles: boolean;
}

/** A patch of a heap, as recorded and as designed. */
interface WantedPatch {
  record: UnitRecord;
  heap: HeapRecord;
  patch: PatchRecord;
  designed: DesignedUnit;
  target: DesignedPatch;
  manner: Manner;
}

/** Parts taken, by unit, role, bag and part. */
type Taken = Map<string, { bag: Bag; parts: Map<string, number>; mirrored: number; turned: boolean }>;

export function checkLoose(
  record: UnitRecord,
  designs: readonly (DesignedUnit | null)[],
  manner: Manner,
  room: Workroom,
): void {
  const taken: Taken = new Map();
  record.heaps.forEach((heap, index) => {
    const designed = designs[index] ?? null;
    if (designed === null) return;
    for (const patch of heap.patches) {
      const target = designed.patches.find(({ spot }) => spot === patch.spot);
      if (target === undefined) continue;
      const wanted = { record, heap, patch, designed, target, manner };
      if (patch.from.length === 0) shapeFromStrip(wanted, room);
      else partsFromBags(wanted, taken, room);
    }
  });
  countParts(record, taken, room);
}

function partsFromBags(wanted: WantedPatch, taken: Taken, room: Workroom): void {
  const { heap, patch, manner } = wanted;
  const where = `${heap.name}, ${patch.spot}`;
  const count = patch.from.reduce((sum, source) => sum + source.count, 0);
  if (count !== heap.count) room.faults.push(`${where}: ${count} patches for ${heap.count} units`);
  for (const source of patch.from) {
    const bag = bagOf(source.letter, room);
    if (bag === null) {
      room.faults.push(`${where}: there is no bag ${source.letter}`);
      continue;
    }
    if (bag.fabric !== patch.fabric)
      room.faults.push(`${where}: bag ${source.letter} holds ${bag.fabric}, not ${patch.fabric}`);
    const part = partOf(bag, source.part);
    if (typeof part === "string") {
      room.faults.push(`${where} ${part}`);
      continue;
    }
    const laid = laidOn(bag, part, source.turn, wanted, room);
    if (!laid.enough && source.turn !== null && laidOn(bag, part, null, wanted, room).enough)
      room.faults.push(`${where}: ${letterOf(bag)} is not turned as its patch lies`);
    else tell(where, laid, bag, manner, room);
    checkPrint(where, source, bag, wanted, room);
    const key = `${patch.role} ${source.letter}`;
    const before = taken.get(key) ?? { bag, parts: new Map<string, number>(), mirrored: 0, turned: false };
    before.parts.set(source.part, (before.parts.get(source.part) ?? 0) + source.count);
    if (laid.mirrored) before.mirrored += source.count;
    if (source.turn !== null) before.turned = true;
    taken.set(key, before);
  }
}

const letterOf = ({ piece }: Bag): string => piece.letter;

function laidOn(
  bag: Bag,
  part: Polygon,
  turn: PatchSource["turn"],
  { target, designed, manner }: WantedPatch,
  room: Workroom,
): Laid {
  const place = placeOf(target.polygon, designed.across, designed.along, room.seam);
  if (manner.rectangles) place.rim.fill(true);
  const fixed = turn === null ? null : turn * 90;
  const asDrawn = layBest(part, place, waysToTurn(part, target.polygon, fixed), room.seam);
  const { shape } = bag.piece;
  if ((asDrawn.enough && asDrawn.beside <= NEAR) || shape === undefined || shape.reversed === 0)
    return asDrawn;
  // A template turned face down; its print's up stays where it is.
  const upright = bag.boltUp % 180 === 0;
  const mirrored = part.map(({ x, y }) => (upright ? { x: -x, y } : { x, y: -y })).reverse();
  const faceDown = layBest(mirrored, place, waysToTurn(mirrored, target.polygon, fixed), room.seam);
  return faceDown.enough ? { ...faceDown, mirrored: true } : asDrawn;
}

function tell(where: string, laid: Laid, bag: Bag, manner: Manner, room: Workroom): void {
  const { letter, roundedUp } = bag.piece;
  if (!laid.enough)
    room.faults.push(`${where}: ${letter} is too small to cover its patch with a seam allowance all round`);
  if (manner.onLines || manner.rectangles) return;
  const play = NEAR + (manner.trimmed && roundedUp ? room.mark : 0);
  if (laid.beside > play)
    room.faults.push(
      `${where}: ${letter} is cut ${said(laid.beside)} larger than its seams allow, and sewn so the unit does not come out`,
    );
  if (laid.beyond > NEAR && !manner.trimmed)
    room.faults.push(
      `${where}: ${letter} reaches ${said(laid.beyond)} beyond the raw edge, and nothing trims it`,
    );
}

function checkPrint(
  where: string,
  source: PatchSource,
  bag: Bag,
  { record, patch, target }: WantedPatch,
  room: Workroom,
): void {
  if (bag.same === 0) return;
  if (source.turn === null) {
    if (patch.up !== null || !room.givenUp.has(record.path))
      room.faults.push(`${where}: nobody says how the print of ${bag.fabric} lies`);
    return;
  }
  const up = bag.boltUp + 90 * source.turn;
  if (target.up !== null && between(up, target.up, bag.same) > 0.5)
    room.faults.push(`${where}: the print of ${bag.fabric} points another way than designed`);
  if (patch.up === null || between(up, patch.up * 45, bag.same) > 0.5)
    room.faults.push(`${where}: the print of ${bag.fabric} is told to point where it does not`);
}

/** Patches of a slanting strip: the strip's own width and cuts say what they are. */
function shapeFromStrip(
  { record, heap, patch, target, designed, manner }: WantedPatch,
  room: Workroom,
): void {
  const where = `${heap.name}, ${patch.spot}`;
  const heapIndex = record.heaps.indexOf(heap);
  const set = record.stripSets.find(
    (each) => each.heap === heapIndex && each.cut !== "square" && each.strips[0]?.role === patch.role,
  );
  const strip = set?.strips[0];
  if (set === undefined || strip === undefined) {
    room.faults.push(`${where}: nothing is cut for it`);
    return;
  }
  if (strip.fabric !== patch.fabric)
    room.faults.push(`${where}: its strip is ${strip.fabric}, not ${patch.fabric}`);
  const place = placeOf(target.polygon, designed.across, designed.along, room.seam);
  const same = room.same.get(patch.fabric) ?? 0;
  const shape = shapeOfStrip(set);
  const turns = waysToTurn(shape, target.polygon, null).filter(
    (turn) =>
      same === 0 ||
      strip.up === null ||
      target.up === null ||
      between(strip.up * 45 + turn, target.up, same) < 0.5,
  );
  if (same !== 0 && strip.up === null && !room.givenUp.has(record.path))
    room.faults.push(`${where}: nobody says how the print of ${patch.fabric} lies`);
  const laid = layBest(shape, place, turns, room.seam);
  if (!laid.enough || edgesOf(shape).length === 0)
    room.faults.push(
      `${where}: what is cut from its strip does not cover it with a seam allowance all round`,
    );
  // Its seam lines are ruled from the template where the strip is told to be wide.
  const index = record.stripSets.filter((each) => each.heap === heapIndex).indexOf(set);
  const wide = record.steps.some((step) => step.do === "cut-shapes" && step.set === index && step.wide);
  if (laid.beside > (wide ? room.mark : NEAR))
    room.faults.push(
      `${where}: what is cut from its strip is ${said(laid.beside)} larger than its seams allow`,
    );
  if (laid.beyond > NEAR && !manner.trimmed)
    room.faults.push(
      `${where}: what is cut from its strip reaches ${said(laid.beyond)} beyond the raw edge, and nothing trims it`,
    );
}

/** Pieces taken whole, and parts of squares, which all units share. */
function countParts(record: UnitRecord, taken: Taken, room: Workroom): void {
  for (const { bag, parts, mirrored } of taken.values()) {
    const { letter, subcut, shape } = bag.piece;
    const all = [...parts.values()].reduce((sum, count) => sum + count, 0);
    if (subcut === "once-diagonal" || subcut === "twice-diagonal")
      for (const [part, count] of parts) usePart(room, letter, part, count);
    else use(room, letter, all);
    if (shape !== undefined && mirrored > shape.reversed)
      room.faults.push(
        `${record.name}: ${mirrored} of ${letter} lie face down, and ${shape.reversed} are cut so`,
      );
  }
}
