import { exactToNumber } from "../quilt/index.ts";
import { asQuarterTurn } from "../quilt/turning/whole-turns.ts";
import type { BlockDesign, Patch } from "../quilt/types.ts";

type Turn = 0 | 90 | 180 | 270;

const TURNS: readonly Turn[] = [0, 90, 180, 270];

/** Corners about a middle, turned clockwise, from the least corner on: equal for equal shapes. */
function cornersOf(patch: Patch, middle: { x: number; y: number }, turn: Turn): string {
  const corners = patch.outline.map((point) => {
    const [x, y] = [exactToNumber(point.x) - middle.x, exactToNumber(point.y) - middle.y];
    const [a, b] = ({ 0: [x, y], 90: [-y, x], 180: [-x, -y], 270: [y, -x] } as const)[turn];
    // Adding 0 makes -0 the same as 0.
    return `${Math.round(a) + 0},${Math.round(b) + 0}`;
  });
  const least = [...corners].sort()[0] ?? "";
  const start = corners.indexOf(least);
  return [...corners.slice(start), ...corners.slice(0, start)].join(" ");
}

function picture(patches: readonly Patch[], middle: { x: number; y: number }, turn: Turn): string {
  return patches
    .map((patch) => {
      const up = patch.up === null ? "" : (patch.up + turn) % 360;
      return `${patch.fabric} ${up} ${cornersOf(patch, middle, turn)}`;
    })
    .sort()
    .join("|");
}

/**
 * The least turn, in degrees clockwise, at which a unit looks as it does in its block: a nine-patch that is turned a
 * quarter is not turned at all. Sizes are compared to the tick.
 */
export function seenTurn(design: BlockDesign, unit: number): Turn {
  const own = design.units[unit];
  if (own === undefined) return 0;
  const turn = asQuarterTurn(own.turn);
  const patches = design.patches.filter(({ origin }) => origin.unit === unit);
  const middle = {
    x: exactToNumber(own.x) + exactToNumber(own.across) / 2,
    y: exactToNumber(own.y) + exactToNumber(own.down) / 2,
  };
  const seen = picture(patches, middle, 0);
  const least = TURNS.find(
    (other) => other <= turn && picture(patches, middle, asQuarterTurn(other - turn)) === seen,
  );
  return least ?? turn;
}
