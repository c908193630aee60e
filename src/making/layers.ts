/*
 * How many layers of cloth lie on one another round a place where seams meet, when each seam's allowances are
 * pressed to one side. Near such a place every patch reaches, with its allowances, all round it; sewing folds one
 * of two parts about the seam:
 *
 *     parts A | B, pressed towards B:   on B's side   B, B's allowance folded back, A's allowance: 2 B + A
 *                                       on A's side   A alone
 *
 * Two patches side by side, joined to two more, come to 7 layers where the seams nest, to 9 where they do not, and
 * to 5 where only one side has a seam and the last one is pressed away from it. Derived geometry.
 */

/** Directions looked at, in degrees clockwise from the right: between all lines at multiples of 15 degrees. */
const DIRECTIONS = Array.from({ length: 24 }, (_, i) => 15 * i + 7.5);

/** What lies in one of the four corners round a place: upper left, upper right, lower left, lower right. */
export interface Around {
  /** The seam sewn last runs up and down; else from left to right. */
  upright: boolean;
  /** It is pressed right or down. */
  last: boolean;
  /** The seam that ends at it before (left of it, or above), and after it: pressed right or down; null: none. */
  before: boolean | null;
  after: boolean | null;
  /** Slanted seams within the units that end here: directions in degrees from the place, by unit. */
  slants: { unit: "before" | "after"; far: boolean; angle: number }[];
}

interface Term {
  /** Which unit, and where in its own cloth. */
  unit: string;
  angle: number;
}

const turned = (angle: number): number => ((angle % 360) + 360) % 360;
/** Across a line that runs up and down, and across a level one. */
const mirror = (angle: number, upright: boolean): number => turned(upright ? 180 - angle : -angle);
/** Right of an upright line; below a level one. */
const isAfter = (angle: number, upright: boolean): boolean =>
  upright ? angle < 90 || angle > 270 : angle > 0 && angle < 180;

/** The cloth of one part, joined or not, in a direction. */
function partAt(name: "before" | "after", press: boolean | null, angle: number, upright: boolean): Term[] {
  if (press === null) return [{ unit: name, angle }];
  const far = isAfter(angle, upright);
  const own = { unit: `${name}${far ? "+" : "-"}`, angle };
  if (far !== press) return [own];
  const other = { unit: `${name}${far ? "-" : "+"}`, angle };
  return [own, { ...own, angle: mirror(angle, upright) }, other];
}

/** Most layers in any direction; `open` when the last seam is pressed open there. */
export function layersAt(around: Around, open = false): number {
  const { upright, last, before, after, slants } = around;
  let most = 0;
  for (const angle of DIRECTIONS) {
    const far = isAfter(angle, upright);
    const [name, press] = far ? (["after", after] as const) : (["before", before] as const);
    const [otherName, otherPress] = far ? (["before", before] as const) : (["after", after] as const);
    const here = (at: number): Term[] => partAt(name, press, at, !upright);
    const terms = here(angle);
    if (open || far === last) terms.push(...here(mirror(angle, upright)));
    if (!open && far === last) terms.push(...partAt(otherName, otherPress, angle, !upright));
    most = Math.max(most, terms.length + slantedLayers(terms, slants, around));
  }
  return most;
}

/** Two layers more on the side a slanted seam is pressed to: the worse of its sides. */
function slantedLayers(
  terms: readonly Term[],
  slants: Around["slants"],
  { before, after }: Pick<Around, "before" | "after">,
): number {
  let sum = 0;
  for (const { unit, far, angle } of slants) {
    const joined = (unit === "before" ? before : after) !== null;
    const name = joined ? `${unit}${far ? "+" : "-"}` : unit;
    const own = terms.filter((term) => term.unit === name);
    const right = own.filter((term) => turned(term.angle - angle) < 180).length;
    sum += 2 * Math.max(right, own.length - right);
  }
  return sum;
}
