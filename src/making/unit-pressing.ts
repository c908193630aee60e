import type { UnitRecord } from "../cutlist/record/unit-record.ts";
import { exactToNumber } from "../quilt/index.ts";
import { asQuarterTurn } from "../quilt/turning/whole-turns.ts";
import type { DesignUnit, QuiltTop } from "../quilt/types.ts";
import type { BlockKind, BlockMaking, Press, PressedSeam, Pressing, UnitPressing } from "./types.ts";

/** Ticks by which rounded places may be off. */
const NEAR = 2;

const ROUND: readonly Press[] = ["up", "right", "down", "left"];

/** A seam inside a unit, as the unit lies at turn 0. */
interface Inside {
  upright: boolean;
  /** Place of its line, and from where to where it runs. */
  at: number;
  from: number;
  to: number;
  press: Press;
}

function turnedBack(press: Press, turn: number): Press {
  return ROUND[(ROUND.indexOf(press) + 4 - turn / 90) % 4] ?? press;
}

/** The seams of one unit of a block, turned back to how the unit lies by itself. */
function seamsInside(
  unit: DesignUnit,
  seams: readonly PressedSeam[],
): { seams: Inside[]; wide: number; high: number } {
  const [x, y] = [exactToNumber(unit.x), exactToNumber(unit.y)];
  const [across, down] = [exactToNumber(unit.across), exactToNumber(unit.down)];
  const turn = asQuarterTurn(unit.turn);
  const quarter = turn % 180 === 90;
  const [wide, high] = quarter ? [down, across] : [across, down];
  const back = (px: number, py: number): [number, number] => {
    const [a, b] = [px - x - across / 2, py - y - down / 2];
    const [c, d] = ({ 0: [a, b], 90: [b, -a], 180: [-a, -b], 270: [-b, a] } as const)[turn];
    return [c + wide / 2, d + high / 2];
  };
  const inside = ({ x1, y1, x2, y2, level }: PressedSeam): boolean =>
    level === "unit" &&
    Math.min(x1, x2) >= x - NEAR &&
    Math.max(x1, x2) <= x + across + NEAR &&
    Math.min(y1, y2) >= y - NEAR &&
    Math.max(y1, y2) <= y + down + NEAR;
  return {
    wide,
    high,
    seams: seams.filter(inside).map((seam): Inside => {
      const [a, b] = [back(seam.x1, seam.y1), back(seam.x2, seam.y2)];
      const upright = Math.abs(a[0] - b[0]) <= NEAR;
      const along = upright ? [a[1], b[1]] : [a[0], b[0]];
      return {
        upright,
        at: upright ? a[0] : a[1],
        from: Math.min(...along),
        to: Math.max(...along),
        press: turnedBack(seam.press, turn),
      };
    }),
  };
}

/**
 * True when a unit is sewn in columns first, as it lies in its block: its last joining goes across, or down where the
 * unit is turned on its side.
 */
export function sewnInColumns(
  top: QuiltTop,
  units: readonly UnitRecord[],
  blocks: readonly BlockMaking[],
  design: number,
  unit: number,
): boolean {
  const place = blocks.find((block) => block.design === design)?.units[unit];
  const last = units[place?.unit ?? -1]?.steps.findLast((step) => step.do === "join");
  if (last === undefined || last.do !== "join" || last.way === "edge") return false;
  const turn = top.designs[design]?.units[unit]?.turn ?? 0;
  return (last.way === "across") === (turn % 180 === 0);
}

type Way = Omit<UnitPressing["ways"][number], "places" | "count">;

/**
 * The seams read as rows (or columns) that are sewn first and then joined; null where the unit is not sewn so, as a
 * log cabin.
 */
function readAsLines(unit: DesignUnit, seams: readonly PressedSeam[]): Way | null | undefined {
  const { seams: own, wide, high } = seamsInside(unit, seams);
  if (own.length === 0) return undefined;
  const spans = ({ upright, from, to }: Inside): boolean =>
    from <= NEAR && to >= (upright ? high : wide) - NEAR;
  const whole = own.filter(spans);
  const [first] = whole;
  if (first === undefined || whole.some(({ upright }) => upright !== first.upright)) return null;
  const between = [...whole].sort((a, b) => a.at - b.at);
  const edges = [0, ...between.map(({ at }) => at), first.upright ? wide : high];
  const rest = own.filter((seam) => !spans(seam));
  const inner = edges.slice(1).map((to, i) => {
    const from = edges[i] ?? 0;
    return rest
      .filter(
        (seam) =>
          seam.upright !== first.upright &&
          Math.abs(seam.from - from) <= NEAR &&
          Math.abs(seam.to - to) <= NEAR,
      )
      .sort((a, b) => a.at - b.at)
      .map(({ press }) => press);
  });
  if (inner.reduce((sum, { length }) => sum + length, 0) !== rest.length) return null;
  return {
    lines: first.upright ? "columns" : "rows",
    inner: rest.length === 0 ? [] : inner,
    between: between.map(({ press }) => press),
  };
}

/** Units of a block along its rows from the upper left. */
function readingOrder(units: readonly DesignUnit[]): number[] {
  const at = units.map(({ x, y }) => [exactToNumber(y), exactToNumber(x)] as const);
  return [...units.keys()].sort((a, b) => {
    const [[ay = 0, ax = 0] = [], [by = 0, bx = 0] = []] = [at[a], at[b]];
    return Math.abs(ay - by) > NEAR ? ay - by : ax - bx;
  });
}

/**
 * How the seams inside units are pressed so that they nest in the blocks: for every record whose units are sewn in
 * rows or columns, in each way in which some of them are pressed. What is not told goes by the unit's own steps.
 */
export function unitPressings(
  top: QuiltTop,
  units: readonly UnitRecord[],
  blocks: readonly BlockMaking[],
  kinds: readonly BlockKind[],
  pressing: Pressing | null,
): UnitPressing[] {
  if (pressing === null) return [];
  const found = new Map<number, Map<string, UnitPressing["ways"][number]>>();
  const unread = new Set<number>();
  for (const [index, kind] of kinds.entries()) {
    const block = blocks[kind.making];
    const design = top.designs[block?.design ?? -1];
    const seams = pressing.blocks.find(
      (each) => each.design === block?.design && each.variant === kind.variant,
    )?.seams;
    if (block === undefined || design === undefined || seams === undefined) continue;
    const order = readingOrder(design.units);
    const met = new Map<number, number>();
    for (const i of order) {
      const unit = design.units[i];
      const place = block.units[i];
      if (
        place === undefined ||
        place === null ||
        unit === undefined ||
        (units[place.unit]?.steps.length ?? 0) === 0
      )
        continue;
      const number = (met.get(place.unit) ?? 0) + 1;
      met.set(place.unit, number);
      const way = readAsLines(unit, seams);
      if (way === undefined) continue;
      if (way === null) {
        unread.add(place.unit);
        continue;
      }
      const key = JSON.stringify(way);
      const ways = found.get(place.unit) ?? new Map<string, UnitPressing["ways"][number]>();
      const before = ways.get(key) ?? { ...way, places: [], count: 0 };
      before.count += kind.count;
      const own = before.places.find((each) => each.kind === index);
      if (own === undefined) before.places.push({ kind: index, which: [number] });
      else own.which?.push(number);
      ways.set(key, before);
      found.set(place.unit, ways);
    }
    for (const [unit, all] of met)
      for (const { places } of found.get(unit)?.values() ?? [])
        for (const own of places) if (own.kind === index && own.which?.length === all) own.which = null;
  }
  return [...found]
    .filter(([unit]) => !unread.has(unit))
    .map(([unit, ways]) => ({ unit, ways: [...ways.values()] }));
}
