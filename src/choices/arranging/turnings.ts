import { arrangementUnknown } from "../../diagnostics/choices.ts";
import type { Diagnostic, Outcome } from "../../diagnostics/types.ts";
import type { Patch, QuiltTop } from "../../quilt/index.ts";
import { exactToNumber } from "../../quilt/index.ts";
import { asQuarterTurn } from "../../quilt/turning/whole-turns.ts";
import type { QuarterTurn } from "../../spec/index.ts";

/** Where a block stands. */
export interface Stand {
  row: number;
  column: number;
  /** From the middle of the setting, in blocks; on point every second row stands half a block in. */
  x: number;
  y: number;
  /** Quarter-turn that shows the block's mirror image, left for right; null when none does. */
  mirror: QuarterTurn | null;
}

/** How blocks are turned. */
export type TurningKey =
  | "upright"
  | "right"
  | "upside-down"
  | "left"
  | "by-turns"
  | "centre"
  | "pairs"
  | "chance";

export interface Turning {
  /** As typed on the command line. */
  key: TurningKey;
  turn(stand: Stand): QuarterTurn;
}

const QUARTERS: readonly QuarterTurn[] = [0, 90, 180, 270];

/** Numbers of chance that are the same for the same seed: the mixing steps of a linear congruence. */
export function chance(seed: number): () => QuarterTurn {
  let state = (seed * 2654435761 + 12345) % 2 ** 31;
  return () => {
    state = (state * 1103515245 + 12345) % 2 ** 31;
    return QUARTERS[Math.floor(state / 2 ** 16) % 4] ?? 0;
  };
}

/**
 * About the centre, each quarter of the quilt turned a quarter on from the one before. The quarters are those of a
 * pinwheel, so that a quilt with a middle row and column comes out the same when it is turned:
 *
 *      0   0  90
 *    270   0  90
 *    270 180 180
 */
export function aboutCentre({ x, y }: Pick<Stand, "x" | "y">): QuarterTurn {
  if (x === 0 && y === 0) return 0;
  if (x <= 0 && y < 0) return 0;
  if (x > 0 && y <= 0) return 90;
  if (x >= 0 && y > 0) return 180;
  return 270;
}

/** A turn in degrees, from 0 up to a whole turn. */
export const modulo = (turn: number): QuarterTurn => asQuarterTurn(turn);

/** Side by side, the right one the mirror image of the left; where there is none, turned to face one another. */
function inPairs({ column, mirror }: Stand): QuarterTurn {
  // A block turned by s shows its mirror image when turned by m - s.
  const m = mirror ?? 0;
  const first = ([90, 0] as const).find((turn) => modulo(m - turn) !== turn) ?? 0;
  return column % 2 === 0 ? first : modulo(m - first);
}

/** The turnings a block set is usually tried in. */
export function turnings(seed: number): Turning[] {
  const random = chance(seed);
  return [
    { key: "upright", turn: () => 0 },
    { key: "right", turn: () => 90 },
    { key: "upside-down", turn: () => 180 },
    { key: "left", turn: () => 270 },
    {
      key: "by-turns",
      turn: ({ row, column }) => ((row + column) % 2 === 0 ? 270 : 90),
    },
    { key: "centre", turn: aboutCentre },
    { key: "pairs", turn: inPairs },
    { key: "chance", turn: random },
  ];
}

/** Patches of a square block, moved so that its middle is 0, 0. */
function about(
  patches: readonly Patch[],
  middle: { x: number; y: number },
  way: (x: number, y: number) => [number, number],
) {
  return patches
    .map(({ fabric, outline }) => {
      const corners = outline.map(({ x, y }) =>
        way(exactToNumber(x) - middle.x, exactToNumber(y) - middle.y)
          .map(Math.round)
          .join(),
      );
      return `${fabric} ${corners.sort().join(" ")}`;
    })
    .sort()
    .join("; ");
}

/**
 * The quarter-turn after which a block looks like its own mirror image, left for right, by index of design; null
 * where none does. On point the mirror stands on the block's diagonal. Corners are compared to the nearest tick.
 */
export function mirrorTurns({ designs, centre }: QuiltTop): (QuarterTurn | null)[] {
  return designs.map(({ patches, across, down }) => {
    const middle = { x: exactToNumber(across) / 2, y: exactToNumber(down) / 2 };
    const seen = about(patches, middle, (x, y) => (centre.onPoint ? [y, x] : [-x, y]));
    const turned: Record<QuarterTurn, (x: number, y: number) => [number, number]> = {
      0: (x, y) => [x, y],
      90: (x, y) => [-y, x],
      180: (x, y) => [-x, -y],
      270: (x, y) => [y, -x],
    };
    return QUARTERS.find((turn) => about(patches, middle, turned[turn]) === seen) ?? null;
  });
}

/**
 * Reads `centre,pairs`: keys of arrangements, or their names; `all` for every one.
 * @param known those there are: `turnings` or `motifTurnings`
 */
export function readArrangements(
  typed: string,
  known: readonly { key: string; name?: string }[] = turnings(0),
): Outcome<string[]> {
  const keys: string[] = [];
  const diagnostics: Diagnostic[] = [];
  for (const part of typed.split(",").map((word) => word.trim().toLowerCase())) {
    const found = known.find(({ key, name }) => part === key || part === name?.toLowerCase());
    if (part === "all") keys.push(...known.map(({ key }) => key));
    else if (found !== undefined) keys.push(found.key);
    // The file's own is always there.
    else if (part !== "file")
      diagnostics.push(
        arrangementUnknown(
          part,
          known.map(({ key }) => key),
        ),
      );
  }
  return diagnostics.length > 0 ? { value: null, diagnostics } : { value: [...new Set(keys)], diagnostics };
}
