import type { StepRecord, UnitRecord } from "../../cutlist/record/unit-record.ts";
import { said, seenBehind } from "./compare.ts";
import { dot, edgesOf, moved, NEAR, type Polygon, turnedBy } from "./polygon.ts";
import type { Group } from "./strips.ts";
import type { DesignedUnit, Workroom } from "./types.ts";

type Join = Extract<StepRecord, { do: "join" }>;

export function joinsOf(record: UnitRecord): Join[] {
  return record.steps.filter((step): step is Join => step.do === "join");
}

/**
 * Whether the joins take every part once and end in one unit: a seam told twice or never. By name of what is made, the
 * parts in it; null when the order does not come out.
 */
export function followJoins(
  record: UnitRecord,
  parts: readonly string[],
  room: Workroom,
): Map<string, string[]> | null {
  const free = new Map<string, string[]>(parts.map((part) => [part, [part]]));
  const made = new Map<string, string[]>(free);
  const before = room.faults.length;
  for (const { makes, parts: from } of joinsOf(record)) {
    const where = `${record.name}, joining ${from.join(", ")}`;
    if (from.length < 2) room.faults.push(`${where}: a join of fewer than two parts`);
    const whole: string[] = [];
    for (const part of from) {
      const own = free.get(part);
      if (own === undefined)
        room.faults.push(
          made.has(part) ? `${where}: ${part} is sewn in already` : `${where}: there is no ${part} yet`,
        );
      whole.push(...(own ?? []));
      free.delete(part);
    }
    if (made.has(makes)) room.faults.push(`${where}: ${makes} is made twice`);
    free.set(makes, whole);
    made.set(makes, whole);
  }
  const left = [...free.keys()];
  if (left.length > 1) room.faults.push(`${record.name}: never sewn together: ${left.join(", ")}`);
  return room.faults.length > before ? null : made;
}

/** Seams of an edge-to-edge unit: neighbours only, each along one straight line unless told to be set in. */
export function checkEdges(
  record: UnitRecord,
  designed: DesignedUnit,
  made: ReadonlyMap<string, string[]>,
  room: Workroom,
): void {
  const outlines = new Map(designed.patches.map(({ spot, polygon }) => [spot, polygon]));
  const group = (name: string): Polygon[] =>
    (made.get(name) ?? []).flatMap((spot) => {
      const outline = outlines.get(spot);
      return outline === undefined ? [] : [outline];
    });
  for (const { parts, setIn } of joinsOf(record)) {
    const where = `${record.name}, joining ${parts.join(", ")}`;
    parts.forEach((part, i) => {
      for (const [j, other] of parts.entries()) {
        if (j <= i) continue;
        const lines = seamLines(group(part), group(other));
        if (j === i + 1 && lines.length === 0)
          room.faults.push(`${where}: ${part} and ${other} do not touch`);
        if (j === i + 1 && lines.length > 1 && setIn !== true)
          room.faults.push(`${where}: the seam goes round a corner, and nobody says so`);
        if (j > i + 1 && lines.length > 0)
          room.faults.push(`${where}: the seam of ${part} and ${other} is never sewn`);
      }
    });
  }
}

/** Straight lines along which two groups of patches lie against each other. */
function seamLines(
  one: readonly Polygon[],
  other: readonly Polygon[],
): { x: number; y: number; at: number }[] {
  const lines: { x: number; y: number; at: number }[] = [];
  const others = other.flatMap((polygon) => edgesOf(polygon));
  for (const edge of one.flatMap((polygon) => edgesOf(polygon))) {
    const { out, at } = edge.line;
    const along = { x: -out.y, y: out.x };
    for (const { line, from, to } of others) {
      if (
        dot(line.out, out) > -0.9999 ||
        Math.abs(dot(from, out) - at) > NEAR ||
        Math.abs(dot(to, out) - at) > NEAR
      )
        continue;
      const [a, b] = [dot(edge.from, along), dot(edge.to, along)];
      const [c, d] = [dot(from, along), dot(to, along)];
      const run = Math.min(Math.max(a, b), Math.max(c, d)) - Math.max(Math.min(a, b), Math.min(c, d));
      if (run <= NEAR) continue;
      const known = lines.some(
        (each) =>
          Math.abs(each.x * out.y - each.y * out.x) < 0.001 &&
          Math.abs(Math.abs(each.at) - Math.abs(at)) <= 2 * NEAR,
      );
      if (!known) lines.push({ x: out.x, y: out.y, at });
    }
  }
  return lines;
}

/** Cut off beyond a size, at the right and below. */
function cutLevel({ across, along, seen }: Group): Group {
  const within = seenBehind(seen, { out: { x: 1, y: 0 }, at: across });
  return { across, along, seen: seenBehind(within, { out: { x: 0, y: 1 }, at: along }) };
}

/** Trimmed alike on all sides; what is smaller already keeps its size. */
function trimmedRound(group: Group, to: { across: number; along: number }): Group {
  const across = Math.min(group.across, to.across);
  const along = Math.min(group.along, to.along);
  const shift = { x: (across - group.across) / 2, y: (along - group.along) / 2 };
  let { seen } = group;
  seen = seen.map((one) => ({ ...one, polygon: moved(one.polygon, shift) }));
  seen = seenBehind(seen, { out: { x: -1, y: 0 }, at: 0 });
  seen = seenBehind(seen, { out: { x: 0, y: -1 }, at: 0 });
  return cutLevel({ across, along, seen });
}

/**
 * Rectangles side by side or one below another, right sides together, their edges equal; or, where the step says that
 * what stands out is cut level, unequal by less than a ruler mark.
 */
function joined(parts: readonly Group[], way: "across" | "down", seam: number, mark = 0): Group | string {
  const side = Math.min(...parts.map((part) => (way === "across" ? part.along : part.across)));
  const [first, ...rest] = parts.map((part) => {
    const out = (way === "across" ? part.along : part.across) - side;
    if (out <= NEAR || out >= mark) return part;
    return cutLevel(way === "across" ? { ...part, along: side } : { ...part, across: side });
  });
  if (first === undefined) return "nothing is joined";
  let whole = first;
  for (const next of rest) {
    const level = way === "across";
    const [edge, other] = level ? [whole.along, next.along] : [whole.across, next.across];
    if (Math.abs(edge - other) > NEAR) return `unequal edges, ${said(edge)} to ${said(other)}`;
    const reach = level ? whole.across : whole.along;
    const out = level ? { x: 1, y: 0 } : { x: 0, y: 1 };
    const at = reach - seam;
    const shift = level ? { x: reach - 2 * seam, y: 0 } : { x: 0, y: reach - 2 * seam };
    const laid = next.seen.map((one) => ({ ...one, polygon: moved(one.polygon, shift) }));
    const size = reach + (level ? next.across : next.along) - 2 * seam;
    whole = {
      across: level ? size : whole.across,
      along: level ? whole.along : size,
      seen: [
        ...seenBehind(whole.seen, { out, at }),
        ...seenBehind(laid, { out: { x: -out.x, y: -out.y }, at: -at }),
      ],
    };
  }
  return whole;
}

/** A group turned by half a turn on the spot. */
export function halfTurned({ across, along, seen }: Group): Group {
  return {
    across,
    along,
    seen: seen.map((one) => ({
      ...one,
      polygon: moved(turnedBy(one.polygon, 180), { x: across, y: along }),
      up: one.up === null ? null : one.up + 180,
    })),
  };
}

/**
 * Sews upright rectangles as the joins say. Null when edges are not equal or a step says another size than it comes
 * to; that is told.
 */
export function sewGroups(
  record: UnitRecord,
  start: ReadonlyMap<string, Group>,
  room: Workroom,
  quiet = false,
): Group | null {
  const groups = new Map(start);
  let last: Group | null = start.size === 1 ? ([...start.values()][0] ?? null) : null;
  let before: string | null = null;
  for (const step of record.steps) {
    if (step.do === "trim" && step.to !== undefined) {
      const group: Group | null = before === null ? null : (groups.get(before) ?? null);
      if (group === null || before === null) {
        if (!quiet) room.faults.push(`${record.name} trims what is not joined yet`);
        return null;
      }
      if (!quiet) checkTrim(record, step.to, step.size, group, room);
      last = trimmedRound(group, step.to);
      groups.set(before, last);
    }
    if (step.do !== "join") continue;
    const { makes, parts, way, size, level } = step;
    before = makes;
    const own = parts.map((part) => groups.get(part));
    const known = own.filter((group) => group !== undefined);
    if (known.length < own.length || way === "edge") return null;
    const whole = joined(known, way, room.seam, level === true ? room.mark : 0);
    if (typeof whole === "string") {
      if (!quiet) room.faults.push(`${record.name}, joining ${parts.join(", ")}: ${whole}`);
      return null;
    }
    if (!quiet && size !== null && !sameSize(size, whole))
      room.faults.push(
        `${record.name}: ${makes} is said to measure ${said(size.across)} x ${said(size.along)}, and is ${said(whole.across)} x ${said(whole.along)}`,
      );
    groups.set(makes, whole);
    last = whole;
  }
  return last;
}

/** A trim on the way: never larger than what is there, never by more than rounding up can make of it. */
function checkTrim(
  record: UnitRecord,
  to: { across: number; along: number },
  told: { across: number; along: number } | null,
  group: Group,
  room: Workroom,
): void {
  const where = `${record.name}: trimmed on the way to ${said(to.across)} x ${said(to.along)}`;
  if (to.across > group.across + NEAR || to.along > group.along + NEAR)
    room.faults.push(`${where}, it is only ${said(group.across)} x ${said(group.along)}`);
  if (told !== null && !sameSize(told, to))
    room.faults.push(`${where}, it is said to measure ${said(told.across)} x ${said(told.along)}`);
}

export function sameSize(
  a: { across: number; along: number },
  b: { across: number; along: number },
): boolean {
  return Math.abs(a.across - b.across) <= NEAR && Math.abs(a.along - b.along) <= NEAR;
}
