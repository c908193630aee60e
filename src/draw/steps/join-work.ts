import type { HeapRecord, StepRecord, UnitRecord } from "../../cutlist/record/unit-record.ts";
import type { Corner } from "../quilt/patches.ts";
import type { ClothLayer } from "./cloth-layer.ts";
import { boundsOf, sharedEdges, withRawEdges } from "./geometry.ts";
import { setNamed } from "./mat/mat-strips.ts";
import type { UnitOutline } from "./unit-outlines.ts";

export type Join = Extract<StepRecord, { do: "join" }>;

/** A join with its number among the steps of its unit. */
export interface NumberedJoin {
  step: Join;
  number: number;
}

/** A patch in its place in the finished unit. */
export interface PlacedPatch {
  spot: string;
  role: string;
  fabric: string;
  letter: string;
  up: number | null;
  corners: Corner[];
}

/** Ticks within which an edge counts as lying on another: less than the finest ruler mark, more than rounding. */
export const SLACK = 40;
/** What is joined of one heap: its patches, and what the joins before have made of them. */
export interface JoinWork {
  patches: Map<string, PlacedPatch>;
  /** Spots that a name stands for: a patch, a segment or what a join makes. */
  parts: Map<string, string[]>;
  seam: number;
}

/** The patches of a heap where the design has them, and the segments and parts that the steps name. */
export function joinWork(
  unit: UnitRecord,
  heap: HeapRecord,
  heapIndex: number,
  outline: UnitOutline,
  seam: number,
): JoinWork {
  const corners = new Map(outline.patches.map((patch) => [patch.spot, patch.corners]));
  const patches = new Map(
    heap.patches.map(({ spot, role, fabric, up, letters, from }): [string, PlacedPatch] => [
      spot,
      {
        spot,
        role,
        fabric,
        letter: (from.length > 0 ? [...new Set(from.map(({ letter }) => letter))] : letters).join("/"),
        up,
        corners: corners.get(spot) ?? [],
      },
    ]),
  );
  const parts = new Map([...patches.keys()].map((spot) => [spot, [spot]]));
  for (const step of unit.steps) {
    if (step.do !== "join") continue;
    const segments = step.parts.filter(
      (part) => !parts.has(part) && setNamed(unit, heapIndex, part) !== null,
    );
    if (segments.length === step.parts.length) {
      const columns = columnsOf([...patches.values()]);
      for (const [i, part] of step.parts.entries())
        parts.set(part, columns[i]?.map(({ spot }) => spot) ?? []);
    }
    parts.set(
      step.makes,
      step.parts.flatMap((part) => parts.get(part) ?? []),
    );
  }
  return { patches, parts, seam };
}

/** Patches by column, from the left; each from the top. */
export function columnsOf(patches: readonly PlacedPatch[]): PlacedPatch[][] {
  const columns: { x: number; own: PlacedPatch[] }[] = [];
  for (const patch of patches) {
    const x = boundsOf(patch.corners).x;
    const found = columns.find((column) => Math.abs(column.x - x) < SLACK);
    if (found === undefined) columns.push({ x, own: [patch] });
    else found.own.push(patch);
  }
  return columns
    .sort((a, b) => a.x - b.x)
    .map(({ own }) => own.sort((a, b) => boundsOf(a.corners).y - boundsOf(b.corners).y));
}

export function layerOf(patch: PlacedPatch, corners = patch.corners): ClothLayer {
  const { fabric, letter, role, up } = patch;
  return { corners: [...corners], fabric, letter, role, up, side: "right" };
}

/** Patches sewn together, as they show: their allowances only where they are raw still. */
export function sewnTogether(spots: readonly string[], work: JoinWork): ClothLayer[] {
  const own = spots.map((spot) => work.patches.get(spot)).filter((patch) => patch !== undefined);
  return own.map((patch) => {
    const others = own.filter((other) => other !== patch);
    const corners = withRawEdges(patch.corners, work.seam, (from, to) =>
      others.flatMap((other) => sharedEdges([from, to], other.corners, SLACK)),
    );
    return layerOf(patch, corners);
  });
}
