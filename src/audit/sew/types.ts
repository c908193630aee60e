import type { UnitRecord } from "../../cutlist/record/unit-record.ts";
import type { CutPiece } from "../../cutlist/types.ts";
import type { Ticks } from "../../length/types.ts";
import type { Making } from "../../making/types.ts";
import type { FabricPlan } from "../../plan/types.ts";
import type { QuiltTop } from "../../quilt/types.ts";
import type { Polygon } from "./polygon.ts";

/** What the sewing audit reads: the pieces as cut, how they are sewn, and the top as designed. */
export interface Sewing {
  fabrics: readonly { name: string; print: FabricPlan["print"]; pieces: readonly CutPiece[] }[];
  making: Making;
  top: QuiltTop;
  /** How many quilts the pieces are for; the making speaks of one. */
  kits: number;
  /** Distance between the ruler's marks: no rounding up is larger. */
  mark: Ticks;
  /** Places of the file whose print could not be kept, as was said. */
  givenUp: ReadonlySet<string>;
}

/** A patch to be seen: its outline, fabric, and where its print's up points, in degrees clockwise; null without one. */
export interface Seen {
  polygon: Polygon;
  fabric: string;
  up: number | null;
}

/** A patch as designed, in the frame of its unit at turn 0. */
export interface DesignedPatch extends Seen {
  spot: string;
}

/** A unit as designed, finished size, at turn 0. */
export interface DesignedUnit {
  across: number;
  along: number;
  patches: DesignedPatch[];
}

/** A piece and the fabric it is cut from. */
export interface Bag {
  fabric: string;
  piece: CutPiece;
  /** Degrees after which the print reads alike: 360, 180, or 0 where it has no direction. */
  same: 0 | 180 | 360;
  /** Where the print's up points as the piece lies on the bolt, in degrees. */
  boltUp: number;
}

/** Everything looked up by name while sewing, and what is used up. */
export interface Workroom extends Sewing {
  bags: ReadonlyMap<string, Bag>;
  same: ReadonlyMap<string, 0 | 180 | 360>;
  seam: number;
  /** Records whose patches are pieced on the printed lines of a foundation. */
  onLines: ReadonlySet<UnitRecord>;
  faults: string[];
  /** By bag letter: pieces used so far in one quilt, and how many more may be left over by rounding up to whole pieces. */
  used: Map<string, { least: number; most: number }>;
  /** By bag letter: halves and quarters taken so far for the units of one quilt, by part; they share its squares. */
  parts: Map<string, Map<string, number>>;
}

export function use(room: Workroom, letter: string, least: number, most = least): void {
  const before = room.used.get(letter) ?? { least: 0, most: 0 };
  room.used.set(letter, { least: before.least + least, most: before.most + most });
}

/** Takes halves or quarters of the squares in a bag. */
export function usePart(room: Workroom, letter: string, part: string, count: number): void {
  const own = room.parts.get(letter) ?? new Map<string, number>();
  own.set(part, (own.get(part) ?? 0) + count);
  room.parts.set(letter, own);
}

/** The fewest squares of a bag that give so many halves or quarters of each part, whoever takes them. */
export function squaresFor({ piece, same }: Bag, parts: ReadonlyMap<string, number>): number {
  const of = (part: string): number => parts.get(part) ?? 0;
  const all = [...parts.values()].reduce((sum, count) => sum + count, 0);
  const quarters = piece.subcut === "twice-diagonal";
  if (same === 0) return Math.ceil(all / (quarters ? 4 : 2));
  // A print that reads alike from both ends does not tell a triangle from the one opposite.
  const pair = (a: string, b: string): number =>
    same === 180 ? Math.ceil((of(a) + of(b)) / 2) : Math.max(of(a), of(b));
  // Halves come in pairs from each diagonal; all quarters come from one square.
  return quarters
    ? Math.max(pair("top", "bottom"), pair("left", "right"))
    : pair("top-left", "bottom-right") + pair("top-right", "bottom-left");
}
