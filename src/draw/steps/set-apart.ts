import type { Corner } from "../quilt/patches.ts";
import type { Segment } from "./cloth-layer.ts";
import { sharedEdges } from "./geometry.ts";
import { type JoinWork, SLACK } from "./join-work.ts";

export interface Met {
  part: string;
  edges: Segment[];
}

/** Edges along which a part meets what is there. */
export function meeting(part: string, others: readonly string[], work: JoinWork): Met[] {
  const outlines = (name: string) =>
    (work.parts.get(name) ?? []).map((spot) => work.patches.get(spot)?.corners ?? []);
  return others
    .map((other) => ({
      part: other,
      edges: outlines(other).flatMap((one) =>
        outlines(part).flatMap((mine) => sharedEdges(one, mine, SLACK)),
      ),
    }))
    .filter(({ edges }) => edges.length > 0);
}

export const lengthOf = ([a, b]: Segment): number => Math.hypot(b[0] - a[0], b[1] - a[1]);
export const total = (edges: readonly Segment[]): number =>
  edges.reduce((sum, edge) => sum + lengthOf(edge), 0);

/** Out of what is there: square to the edges met, each by its length. Edges run clockwise round what is there. */
function outwards(edges: readonly Segment[]): Corner {
  let [x, y] = [0, 0];
  for (const [a, b] of edges) {
    x += b[1] - a[1];
    y -= b[0] - a[0];
  }
  const far = Math.hypot(x, y);
  return far < 1 ? [0, 0] : [x / far, y / far];
}

export interface Opened {
  /** Shift of every part. */
  shift: Map<string, Corner>;
  /** Seams by the part that is added: on what is there, with the direction out of it. */
  seams: { part: string; onto: string; edges: Segment[]; out: Corner; number: number }[];
}

/** Sets parts apart, each from what it is sewn to. */
export function setApart(
  added: readonly { part: string; number: number }[],
  base: string,
  gap: number,
  work: JoinWork,
): Opened {
  const shift = new Map<string, Corner>([[base, [0, 0]]]);
  const seams: Opened["seams"] = [];
  for (const { part, number } of added) {
    const met = meeting(part, [...shift.keys()], work).sort((a, b) => total(b.edges) - total(a.edges));
    const [first] = met;
    const from = first === undefined ? ([0, 0] as const) : (shift.get(first.part) ?? [0, 0]);
    const out = outwards(met.flatMap(({ edges }) => edges).length === 0 ? [] : (first?.edges ?? []));
    const away = outwards(met.flatMap(({ edges }) => edges));
    const way = met.length > 1 && (away[0] !== 0 || away[1] !== 0) ? away : out;
    shift.set(part, [from[0] + way[0] * gap, from[1] + way[1] * gap]);
    for (const each of met)
      seams.push({ part, onto: each.part, edges: each.edges, out: outwards(each.edges), number });
  }
  return { shift, seams };
}

export const moved = ([a, b]: Segment, [dx, dy]: Corner): Segment => [
  [a[0] + dx, a[1] + dy],
  [b[0] + dx, b[1] + dy],
];

/** Corners of the seam where it turns. */
export function turns(edges: readonly Segment[]): Corner[] {
  const found: Corner[] = [];
  for (const [i, [a, b]] of edges.entries())
    for (const [c, d] of edges.slice(i + 1)) {
      const cross = (b[0] - a[0]) * (d[1] - c[1]) - (b[1] - a[1]) * (d[0] - c[0]);
      if (Math.abs(cross) < 1e-3 * lengthOf([a, b]) * lengthOf([c, d])) continue;
      for (const p of [a, b])
        for (const q of [c, d]) if (Math.hypot(p[0] - q[0], p[1] - q[1]) < SLACK) found.push(p);
    }
  return found;
}
