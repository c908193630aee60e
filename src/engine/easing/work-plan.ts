import { countKinds, type Filling, type Segment } from "../oracles/oracle.ts";
import { dealer, type StripCount, toSections } from "../problem/assemble.ts";
import { gatherKinds, gcd, type Kind } from "../problem/reduce.ts";
import type { PackingProblem, PackingResult, Section, StockLayout } from "../types.ts";
import { type SegmentShape, type StripShape, segmentShape, shapesOf } from "./work-measure.ts";

/** What of a result may be cut otherwise: the strips of its roll, as fillings of kinds. */
export interface OpenStrips {
  kinds: readonly Kind[];
  run: number;
  /** Sizes are divided by this. */
  step: number;
  /** What the strips hold now: exactly what they must go on holding. */
  demand: readonly number[];
  strips: StripCount[];
  /** Strips of the whole width, which stay as they are. */
  set: StripCount[];
  /** Length of the roll taken by all else, in the problem's own steps. */
  elsewhere: number;
  /** All else in the result, sizes divided likewise: its ruler settings are already paid for. */
  fixed: { shape: StripShape; count: number }[];
}

/** Takes the strips of the roll apart; null when there are none to rearrange. */
export function openStrips(problem: PackingProblem, result: PackingResult): OpenStrips | null {
  const sections = result.layouts.filter(isOpen).flatMap((layout) => layout.sections);
  const step = problem.items.reduce((g, item) => gcd(gcd(g, item.across), item.along), 0) || 1;
  const held = problem.items.map(() => 0);
  for (const section of sections)
    if (section.kind === "strips")
      for (const segment of section.column.segments)
        for (const use of segment.stack) held[use.item]! += use.count * segment.count * section.count;
  const items = problem.items.map((item, i) => ({
    ...item,
    across: item.across / step,
    along: item.along / step,
    demand: held[i]!,
  }));
  const kinds = gatherKinds(items);
  if (kinds.length === 0 || problem.roll === null) return null;
  const run = Math.floor(problem.roll.width / step);
  const all = sections.flatMap((section) =>
    section.kind === "strips"
      ? [{ filling: readStrip(kinds, section.column, step), count: section.count }]
      : [],
  );
  const isSet = ({ filling: { segments } }: StripCount): boolean => {
    const only = segments.length === 1 ? segments[0]! : null;
    return only !== null && only.width === run && only.stack.length === 1;
  };
  const strips = all.filter((strip) => !isSet(strip));
  const demand = kinds.map((_, k) =>
    strips.reduce((sum, { filling, count }) => sum + filling.counts[k]! * count, 0),
  );
  if (strips.length === 0) return null;
  const set = all.filter(isSet);
  const scaled = { ...problem, items };
  const untouched = result.layouts.flatMap((layout) => {
    const transposed = layout.firstCut === "along";
    const sheet = layout.stock === "sheet" ? problem.sheets[layout.sheet] : undefined;
    const width = sheet ? (transposed ? sheet.along : sheet.across) : problem.roll!.width;
    const kept = isOpen(layout) ? layout.sections.filter(({ kind }) => kind === "bands") : layout.sections;
    return shapesOf(scaled, divided(kept, step), Math.floor(width / step), transposed, layout.count);
  });
  const taken = sections.reduce(
    (sum, section) => (section.kind === "strips" ? sum + section.column.along * section.count : sum),
    0,
  );
  const elsewhere = result.rollLength - taken;
  return { kinds, run, step, demand, strips, set, elsewhere, fixed: untouched };
}

/** The result with other strips on its roll. Everything else, and the bound, stays. */
export function closeStrips(
  problem: PackingProblem,
  result: PackingResult,
  open: OpenStrips,
  strips: readonly StripCount[],
): PackingResult {
  const sections = multiplied(
    toSections(open.kinds, [...strips, ...open.set], dealer(open.kinds)),
    open.step,
  );
  const layouts: StockLayout[] = [];
  let placed = false;
  for (const layout of result.layouts) {
    if (!isOpen(layout)) {
      layouts.push(layout);
      continue;
    }
    const kept = layout.sections.filter(({ kind }) => kind === "bands");
    if (placed && kept.length === 0) continue;
    layouts.push({ ...layout, sections: placed ? kept : [...kept, ...sections] });
    placed = true;
  }
  const rollLength = open.elsewhere + lengthOfStrips([...strips, ...open.set]) * open.step;
  const objective = result.objective + (rollLength - result.rollLength) * (problem.roll?.costPerLength ?? 0);
  const status = objective === result.bound.value ? "proven" : "best-found";
  return { ...result, status, objective, rollLength, layouts };
}

/** Length the strips take from the roll. */
export function lengthOfStrips(strips: readonly StripCount[]): number {
  return strips.reduce((sum, { filling, count }) => sum + filling.height * count, 0);
}

/** The shape of a filling, sizes from the kinds. */
export function shapeOf(kinds: readonly Kind[], run: number, filling: Filling): StripShape {
  const stacks = new Map<string, { segment: Segment; count: number }>();
  for (const segment of filling.segments) {
    const text = segment.stack.map(({ kind, lie }) => `${kind}.${lie}`).join("+");
    const known = stacks.get(text);
    if (known === undefined) stacks.set(text, { segment, count: 1 });
    else known.count++;
  }
  const segments = new Map<string, SegmentShape>();
  for (const { segment, count } of stacks.values()) {
    const shape = segmentShape(
      segment.width,
      count,
      segment.stack.map(({ kind, lie }) => ({ ...sizeOf(kinds, kind, lie), count: 1 })),
    );
    const known = segments.get(shape.key);
    segments.set(shape.key, known === undefined ? shape : { ...shape, count: known.count + count });
  }
  return { run, height: filling.height, segments: [...segments.values()] };
}

function sizeOf(kinds: readonly Kind[], kind: number, lie: number): { width: number; height: number } {
  const { width, height } = kinds[kind]!.lies[lie]!;
  return { width, height };
}

function isOpen(layout: StockLayout): boolean {
  return layout.stock === "roll" && layout.count === 1;
}

function readStrip(
  kinds: readonly Kind[],
  column: { along: number; segments: readonly { across: number; count: number; stack: readonly Use[] }[] },
  step: number,
): Filling {
  const segments: Segment[] = column.segments.flatMap(({ across, count, stack }) => {
    const placed = stack.flatMap((use) => {
      const kind = kinds.findIndex(({ sources }) => sources.some(({ item }) => item === use.item));
      const { lies, sources } = kinds[kind]!;
      const { swapped } = sources.find(({ item }) => item === use.item)!;
      const lie = lies.length === 1 ? 0 : lies.findIndex(({ turned }) => turned === (use.turned !== swapped));
      return Array.from({ length: use.count }, () => ({ kind, lie }));
    });
    return Array.from({ length: count }, () => ({ width: Math.floor(across / step), stack: placed }));
  });
  return {
    level: -1,
    height: Math.floor(column.along / step),
    counts: countKinds(segments, kinds.length),
    segments,
  };
}

interface Use {
  item: number;
  turned: boolean;
  count: number;
}

function divided(sections: readonly Section[], step: number): Section[] {
  return multiplied(sections, 1 / step);
}

function multiplied(sections: readonly Section[], step: number): Section[] {
  const times = (size: number): number => Math.round(size * step);
  return sections.map((section): Section => {
    if (section.kind === "bands")
      return {
        ...section,
        along: times(section.along),
        restAcross: times(section.restAcross),
        bands: section.bands.map((band) => ({ ...band, across: times(band.across) })),
        rest: multiplied(section.rest, step).filter((rest) => rest.kind === "strips"),
      };
    const { along, segments } = section.column;
    const column = {
      along: times(along),
      segments: segments.map((segment) => ({ ...segment, across: times(segment.across) })),
    };
    return { ...section, column };
  });
}
