import {
  areaOf,
  between,
  boxOf,
  clipped,
  dot,
  edgesOf,
  girth,
  isConvex,
  moved,
  NEAR,
  type Polygon,
  rectangleOf,
  type Spot,
  turnedBy,
  within,
} from "./polygon.ts";
import type { DesignedPatch, DesignedUnit, Seen, Workroom } from "./types.ts";

/** How what is sewn is brought to its size. */
export interface Finish {
  /** A step trims it; else it must come out true. */
  trimmed: boolean;
  /** By how much seams may lie beside their lines: rounded widths, where the rest is trimmed off. */
  play: number;
}

/** Lengths as people hear them: millimetres, to a tenth. */
export function said(ticks: number): string {
  return `${(ticks / 640).toFixed(2)} mm`;
}

/** Whether a print points as designed; a fabric without direction always does. */
function pointsAlike(seen: number | null, designed: number | null, same: 0 | 180 | 360): boolean {
  if (same === 0 || designed === null) return true;
  return seen !== null && between(seen, designed, same) < 0.5;
}

/**
 * What is wrong with a sewn unit against its design, the sewn one turned as suits best by quarter-turns; null when
 * nothing is.
 */
export function unlike(
  sewn: readonly Seen[],
  designed: DesignedUnit,
  finish: Finish,
  room: Workroom,
  minded: boolean,
): string | null {
  let first: string | null = null;
  for (const degrees of [0, 90, 180, 270]) {
    const lies = sewn.map((seen) => ({
      ...seen,
      polygon: turnedBy(seen.polygon, degrees),
      up: seen.up === null ? null : seen.up + degrees,
    }));
    const fault = unlikeAsItLies(lies, designed, finish, room, minded);
    if (fault === null) return null;
    // Of four ways to lay it down, the one as it was sewn is the one to speak of.
    first ??= fault;
  }
  return first;
}

function unlikeAsItLies(
  sewn: readonly Seen[],
  designed: DesignedUnit,
  { trimmed, play }: Finish,
  room: Workroom,
  minded: boolean,
): string | null {
  const { seam } = room;
  const raw = { across: designed.across + 2 * seam, along: designed.along + 2 * seam };
  const box = boxOf(sewn.map(({ polygon }) => polygon));
  const [wide, high] = [box.across - raw.across, box.along - raw.along];
  if (wide < -NEAR || high < -NEAR)
    return `comes out ${said(box.across)} x ${said(box.along)}, too small for ${said(raw.across)} x ${said(raw.along)}`;
  if (!trimmed && (wide > NEAR || high > NEAR))
    return `comes out ${said(box.across)} x ${said(box.along)}, and nothing brings it to ${said(raw.across)} x ${said(raw.along)}`;
  const middle = { x: -box.x - wide / 2, y: -box.y - high / 2 };
  const centred = sewn.map((seen) => ({ ...seen, polygon: moved(seen.polygon, middle) }));
  const targets = designed.patches.map((patch) => ({
    ...patch,
    polygon: moved(patch.polygon, { x: seam, y: seam }),
  }));
  const fits = (seen: Seen, patch: DesignedPatch): boolean =>
    seen.fabric === patch.fabric &&
    (!minded || pointsAlike(seen.up, patch.up, room.same.get(patch.fabric) ?? 0));
  const by = trimmed ? ontoSeams(centred, targets, fits, raw, seam) : { x: 0, y: 0 };
  const laid = centred.map((seen) => ({ ...seen, polygon: moved(seen.polygon, by) }));
  const frame = rectangleOf(raw.across, raw.along);
  const filled = laid.reduce((sum, { polygon }) => sum + areaOf(within(polygon, frame)), 0);
  if (filled < areaOf(frame) - NEAR * girth(frame))
    return "does not reach its raw edges everywhere once it is trimmed";
  for (const patch of targets) {
    const shown = laid
      .filter((seen) => fits(seen, patch))
      .reduce((sum, { polygon }) => sum + shared(polygon, patch.polygon), 0);
    const area = areaOf(patch.polygon);
    if (shown < area - Math.min((NEAR + play) * girth(patch.polygon), area / 3)) {
      const cloth = laid
        .filter(({ fabric }) => fabric === patch.fabric)
        .reduce((sum, { polygon }) => sum + shared(polygon, patch.polygon), 0);
      return cloth >= area * 0.66 && cloth > shown + 1
        ? `the print of ${patch.fabric} in ${patch.spot} points another way than designed`
        : `${patch.spot} is not ${patch.fabric} where it was designed`;
    }
  }
  return null;
}

/** Area of two outlines together; one of them turns no corner inwards. */
export function shared(one: Polygon, other: Polygon): number {
  return areaOf(isConvex(other) ? within(one, other) : within(other, one));
}

/**
 * How to lay the ruler for a trim: by the seams, so that those of the sewn unit come to lie on those designed (least
 * squares over patches of one fabric that lie nearest); where seams leave it free, by the middle.
 */
function ontoSeams(
  sewn: readonly Seen[],
  targets: readonly DesignedPatch[],
  fits: (seen: Seen, patch: DesignedPatch) => boolean,
  raw: { across: number; along: number },
  seam: number,
): Spot {
  const sums = { xx: 1e-6, xy: 0, yy: 1e-6, x: 0, y: 0 };
  const onRim = ({ x, y }: Spot, { x: u, y: v }: Spot): boolean => {
    const at = (a: number, b: number, line: number): boolean =>
      Math.abs(a - line) < NEAR && Math.abs(b - line) < NEAR;
    return at(x, u, seam) || at(x, u, raw.across - seam) || at(y, v, seam) || at(y, v, raw.along - seam);
  };
  for (const patch of targets) {
    let best: Seen | null = null;
    let most = 0;
    for (const seen of sewn) {
      const area = fits(seen, patch) ? shared(seen.polygon, patch.polygon) : 0;
      if (area > most) [best, most] = [seen, area];
    }
    if (best === null) continue;
    const own = edgesOf(best.polygon);
    for (const edge of edgesOf(patch.polygon)) {
      if (onRim(edge.from, edge.to)) continue;
      const like = own.find(({ line }) => dot(line.out, edge.line.out) > 0.9999);
      if (like === undefined) continue;
      const { out } = edge.line;
      const gap = edge.line.at - like.line.at;
      sums.xx += out.x * out.x;
      sums.xy += out.x * out.y;
      sums.yy += out.y * out.y;
      sums.x += out.x * gap;
      sums.y += out.y * gap;
    }
  }
  const { xx, xy, yy, x, y } = sums;
  const by = xx * yy - xy * xy;
  return { x: (x * yy - y * xy) / by, y: (y * xx - x * xy) / by };
}

/** What is to be seen of a polygon on one side of a line. */
export function seenBehind(seen: readonly Seen[], line: { out: Spot; at: number }): Seen[] {
  return seen
    .map((one) => ({ ...one, polygon: clipped(one.polygon, line) }))
    .filter(({ polygon }) => polygon.length > 2 && areaOf(polygon) > 1);
}
