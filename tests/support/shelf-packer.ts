import type { EngineJob } from "../../src/engine/index.ts";
import type {
  PackingItem,
  PackingProblem,
  PackingResult,
  Section,
  StripColumn,
} from "../../src/engine/types.ts";
import type { Solve } from "../../src/plan/index.ts";

/**
 * A packer that only piles: highest first, each in the first strip with room. It is instant and never
 * changes, which pictures kept for comparison need; it has nothing to do with the engine.
 */

interface Open {
  column: StripColumn;
  free: number;
}

interface Turned {
  item: number;
  turned: boolean;
  across: number;
  along: number;
  demand: number;
}

function lie({ across, along, demand, turnable }: PackingItem, item: number, width: number): Turned {
  const turned = turnable && (across < along || across > width) && along <= width;
  return turned
    ? { item, turned, across: along, along: across, demand }
    : { item, turned, across, along, demand };
}

function pile(items: readonly Turned[], width: number): StripColumn[] {
  const open: Open[] = [];
  for (const { item, turned, across, along, demand } of [...items].sort((a, b) => b.along - a.along)) {
    for (let left = demand; left > 0; ) {
      let strip = open.find((candidate) => candidate.free >= across && candidate.column.along >= along);
      if (strip === undefined) {
        strip = { column: { along, segments: [] }, free: width };
        open.push(strip);
      }
      const high = Math.floor(strip.column.along / along);
      const wide = Math.min(Math.floor(strip.free / across), Math.ceil(left / high));
      const full = Math.min(wide, Math.floor(left / high));
      if (full > 0) {
        strip.column.segments.push({ across, count: full, stack: [{ item, turned, count: high }] });
      }
      const rest = left - full * high;
      if (wide > full)
        strip.column.segments.push({ across, count: 1, stack: [{ item, turned, count: rest }] });
      strip.free -= wide * across;
      left -= wide > full ? left : full * high;
    }
  }
  return open.map(({ column }) => column);
}

function bandSections(items: readonly Turned[], width: number): Section[] {
  return items.flatMap(({ item, turned, across, along, demand }) => {
    const sections: Section[] = [];
    for (let left = demand; left > 0; ) {
      const count = Math.min(left, Math.floor(width / across));
      const bands = [{ across, count, stack: [{ item, turned, count: 1 }] }];
      sections.push({ kind: "bands", along, count: 1, bands, restAcross: width - count * across, rest: [] });
      left -= count;
    }
    return sections;
  });
}

/** Piles the items of a roll. */
function shelfPack({ items, roll, style }: PackingProblem): PackingResult {
  const width = roll?.width ?? 0;
  const strips = items.flatMap((item, i) => (item.place === "bands" ? [] : [lie(item, i, width)]));
  const bands = items.flatMap((item, i) =>
    item.place === "bands" ? [{ ...item, item: i, turned: false }] : [],
  );
  const sections: Section[] = [
    ...bandSections(bands, width),
    ...pile(strips, width).map((column): Section => ({ kind: "strips", column, count: 1 })),
  ];
  const length = sections.reduce((sum, s) => sum + (s.kind === "strips" ? s.column.along : s.along), 0);
  const area = items.reduce((sum, { across, along, demand }) => sum + across * along * demand, 0);
  return {
    status: "best-found",
    objective: length,
    rollLength: length,
    bound: { value: Math.ceil(area / width), kind: "area", style },
    layouts: [{ stock: "roll", sheet: -1, count: 1, firstCut: "across", sections }],
    missing: [],
    stats: { milliseconds: 0, cutShort: null },
  };
}

/** Stands in for the engine. */
export const solveByShelves: Solve = async (jobs) =>
  jobs.map((job: EngineJob) => (job.kind === "lessen-work" ? job.result : shelfPack(job.problem)));
