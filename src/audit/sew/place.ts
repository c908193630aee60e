import {
  boxOf,
  covers,
  dot,
  type Edge,
  edgesOf,
  moved,
  NEAR,
  type Polygon,
  type Spot,
  turnedBy,
  withAllowance,
} from "./polygon.ts";

/*
 * Laying a cut part where its patch will be: sewn edges a seam allowance outside their seams, the rest wherever that
 * leaves it. What lies beyond the unit's own edges is trimmed off, or should not be there.
 */

/** A patch in its unit and which of its edges are sewn inside it. */
export interface Place {
  patch: Polygon;
  /** By edge as `edgesOf` lists them: it lies on the rim of the unit. */
  rim: boolean[];
  /** The same with its seam allowance. */
  wanted: Polygon;
}

export function placeOf(patch: Polygon, across: number, along: number, seam: number): Place {
  const on = (a: number, b: number, line: number): boolean =>
    Math.abs(a - line) < NEAR && Math.abs(b - line) < NEAR;
  return {
    patch,
    rim: edgesOf(patch).map(
      ({ from, to }) =>
        on(from.x, to.x, 0) || on(from.x, to.x, across) || on(from.y, to.y, 0) || on(from.y, to.y, along),
    ),
    wanted: withAllowance(patch, seam),
  };
}

export interface Laid {
  /** Degrees from how it lies on the bolt. */
  turn: number;
  mirrored: boolean;
  /** Farthest that a sewn edge lies from where its seam would have it, outwards. */
  beside: number;
  /** Farthest that an edge on the rim lies beyond the raw edge. */
  beyond: number;
  /** It has its allowance everywhere. */
  enough: boolean;
}

/** Edges of a part that look the way a patch's edge does; a blunted point's are too short to be meant. */
function likeEdge(edge: Edge, own: readonly Edge[]): Edge | null {
  let best: Edge | null = null;
  for (const each of own)
    if (dot(each.line.out, edge.line.out) > 0.99999 && (best === null || each.length > best.length))
      best = each;
  return best;
}

/**
 * How far a part with one seam slides along it, at the least, to cover its patch; 0 where no sliding helps. A tilted
 * half reaches its raw edges only from one end on.
 */
function slideAlong(seam: Edge, part: Polygon, { wanted }: Place): number {
  const along = { x: -seam.line.out.y, y: seam.line.out.x };
  let [least, most] = [-Infinity, Infinity];
  for (const { line } of edgesOf(part)) {
    const run = dot(line.out, along);
    if (Math.abs(run) < 0.01) continue;
    const lacking = Math.max(...wanted.map((spot) => dot(spot, line.out))) - line.at;
    if (run > 0) least = Math.max(least, lacking / run);
    else most = Math.min(most, lacking / run);
  }
  return least <= most ? Math.min(Math.max(0, least), most) : 0;
}

/** Lays a part, already turned, by its sewn edges. */
function lay(part: Polygon, place: Place, seam: number): Omit<Laid, "turn" | "mirrored"> {
  const edges = edgesOf(place.patch);
  const own = edgesOf(part);
  const [have, want] = [boxOf([part]), boxOf([place.wanted])];
  const middle: Spot = {
    x: want.x + want.across / 2 - have.x - have.across / 2,
    y: want.y + want.along / 2 - have.y - have.along / 2,
  };
  const sums = { xx: 1e-9, xy: 0, yy: 1e-9, x: 0, y: 0 };
  const pairs: { edge: Edge; like: Edge; rim: boolean }[] = [];
  edges.forEach((edge, i) => {
    const like = likeEdge(edge, own);
    if (like === null) return;
    const rim = place.rim[i] === true;
    pairs.push({ edge, like, rim });
    // Edges on the rim only say where to lie along a seam that leaves it open.
    const weight = rim ? 1e-5 : 1;
    const { out } = edge.line;
    const gap = weight * (edge.line.at + seam - like.line.at - dot(middle, out));
    sums.xx += weight * out.x * out.x;
    sums.xy += weight * out.x * out.y;
    sums.yy += weight * out.y * out.y;
    sums.x += out.x * gap;
    sums.y += out.y * gap;
  });
  const by = sums.xx * sums.yy - sums.xy * sums.xy;
  const bySeams = {
    x: middle.x + (sums.x * sums.yy - sums.y * sums.xy) / by,
    y: middle.y + (sums.y * sums.xx - sums.x * sums.xy) / by,
  };
  const sewn = edges.filter((_, i) => place.rim[i] !== true);
  const [only] = sewn;
  const slid = sewn.length === 1 && only !== undefined ? slideAlong(only, moved(part, bySeams), place) : 0;
  const along = only === undefined ? { x: 0, y: 0 } : { x: -only.line.out.y, y: only.line.out.x };
  const shift = { x: bySeams.x + slid * along.x, y: bySeams.y + slid * along.y };
  const laid = moved(part, shift);
  const past = ({ edge, like }: (typeof pairs)[number]): number =>
    like.line.at + dot(shift, edge.line.out) - edge.line.at - seam;
  return {
    beside: Math.max(0, ...pairs.filter(({ rim }) => !rim).map(past)),
    beyond: Math.max(0, ...pairs.filter(({ rim }) => rim).map(past)),
    enough: covers(laid, place.wanted, NEAR),
  };
}

/** Sides rounded up one by one tilt a slanting edge by less than so many degrees; it is sewn along itself all the same. */
const TILT = 2;

/**
 * The ways to turn a part: as told, but for the tilt of a slanting edge; or, where nothing is told but that it fits, by
 * sixths of a right angle and by its edges.
 */
export function waysToTurn(part: Polygon, patch: Polygon, fixed: number | null): number[] {
  const angle = ({ line: { out } }: Edge): number => (Math.atan2(out.y, out.x) * 180) / Math.PI;
  if (fixed !== null) {
    const own = edgesOf(turnedBy(part, fixed)).map(angle);
    const tilts = edgesOf(patch).flatMap((edge) =>
      own
        .map((each) => ((angle(edge) - each + 540) % 360) - 180)
        .filter((tilt) => Math.abs(tilt) > 1e-3 && Math.abs(tilt) < TILT),
    );
    return [fixed, ...tilts.map((tilt) => fixed + tilt)];
  }
  const quarters = [0, 90, 180, 270];
  const between = Array.from({ length: 24 }, (_, i) => 15 * i).filter((turn) => turn % 90 !== 0);
  const longest = edgesOf(patch).reduce((best, each) => (each.length > best.length ? each : best));
  const edges = edgesOf(part).map((edge) => angle(longest) - angle(edge));
  return [...quarters, ...between, ...edges];
}

/** The best way to lay a part on a patch, the part as it is handed in (`mirrored` false): none of the others wastes less. */
export function layBest(part: Polygon, place: Place, turns: readonly number[], seam: number): Laid {
  let best: Laid | null = null;
  const cost = ({ enough, beside, beyond }: Laid): number => (enough ? 0 : 1e9) + beside + beyond;
  for (const turn of turns) {
    const laid = { ...lay(turnedBy(part, turn), place, seam), turn, mirrored: false };
    if (best === null || cost(laid) < cost(best)) best = laid;
    if (laid.enough && laid.beside <= NEAR && laid.beyond <= NEAR) return laid;
  }
  return best ?? { turn: 0, mirrored: false, beside: 0, beyond: 0, enough: false };
}
