import type { BorderName } from "../../diagnostics/purposes.ts";
import type { Ticks } from "../../length/types.ts";
import { exactToNumber, layOutQuilt } from "../../quilt/index.ts";
import type { BorderSpec, QuiltSpec } from "../../spec/index.ts";
import { type InBlocks, MOST_BLOCKS, type Target } from "./read-sizes.ts";

/** The same quilt with so many blocks, its drawing repeated or cut short to fill them. */
export function inBlocks(spec: QuiltSpec, blocks: InBlocks): QuiltSpec {
  return { ...spec, setting: { ...spec.setting, fill: { ...blocks } } };
}

/** A number of blocks and the finished size they come to, in ticks, which need not be whole. */
export interface Sized {
  blocks: InBlocks;
  across: number;
  down: number;
}

/** The outer border made another width. */
interface Widened {
  name: BorderName;
  side: Ticks;
  end: Ticks;
}

/** How near whole blocks, and a plain outer border, come to a target. */
export interface Fit {
  spec: QuiltSpec;
  taken: Sized;
  /** Null where every border is as the file has it. */
  border: Widened | null;
  /** The target is met to within two marks of the ruler. */
  met: boolean;
  /** Whole blocks, all borders as the file has them, no larger and no smaller than the target; null: there are none. */
  below: Sized | null;
  above: Sized | null;
}

/** A border may be made from half as wide to twice as wide as it was drawn before the design is another. */
const NARROWEST = 1 / 2;
const WIDEST = 2;
/** Numbers of blocks tried on either side, where borders of blocks do not come out with the nearest. */
const TRIED = 2;

type Axis = "across" | "down";

const widthOf = ({ side, end }: BorderSpec, axis: Axis): number =>
  axis === "across" ? side.n / side.d : end.n / end.d;

/** The outermost border, when it is plain cloth: only that can be made wider and everything else stay. */
function outerBorder({ borders }: QuiltSpec): BorderSpec | null {
  const last = borders.at(-1);
  return last === undefined || last.row !== null || last.fit ? null : last;
}

/** Sizes one way by number of blocks, from one block until the target is passed by two. */
interface Ladder {
  axis: Axis;
  target: Ticks;
  steps: { count: number; size: number }[];
}

/** Found from a quilt of one row, or one column: as quick to lay out as it is small. */
function ladder(spec: QuiltSpec, axis: Axis, target: Ticks): Ladder {
  const bare = { ...spec, borders: [], binding: null, backing: null, wadding: null };
  const borders = spec.borders.reduce((sum, border) => sum + 2 * widthOf(border, axis), 0);
  const steps: Ladder["steps"] = [];
  for (let count = 1, past = 0; count <= MOST_BLOCKS && past < 2; count += 1) {
    const blocks = axis === "across" ? { across: count, down: 1 } : { across: 1, down: count };
    const top = layOutQuilt(inBlocks(bare, blocks)).value?.top;
    if (top === undefined) continue;
    const size = exactToNumber(top[axis]) + borders;
    steps.push({ count, size });
    if (size > target) past += 1;
  }
  return { axis, target, steps };
}

/** Counts by how near they come to the target; the larger first among equals. */
function byNearness({ steps, target }: Ladder): number[] {
  return [...steps]
    .sort((a, b) => Math.abs(a.size - target) - Math.abs(b.size - target) || b.size - a.size)
    .map(({ count }) => count);
}

interface Bordered {
  count: number;
  width: Ticks;
  change: number;
}

/** Counts that an outer border of a width within reason brings to the target. */
function withBorder({ axis, target, steps }: Ladder, border: BorderSpec, mark: Ticks): Bordered[] {
  const own = widthOf(border, axis);
  return steps.flatMap(({ count, size }) => {
    const width = Math.floor((target - size + 2 * own) / 2 / mark) * mark;
    const good = width >= Math.max(mark, own * NARROWEST) && width <= own * WIDEST;
    return good ? [{ count, width, change: Math.abs(width - own) }] : [];
  });
}

/** The pair that changes the border least and leaves it most even, where it was drawn even. */
function evenest(x: readonly Bordered[], y: readonly Bordered[], even: boolean): [Bordered, Bordered] | null {
  const pairs = x.flatMap((side) =>
    y.map((end) => {
      const uneven = even ? Math.abs(side.width - end.width) : 0;
      return { side, end, cost: side.change + end.change + uneven, blocks: side.count * end.count };
    }),
  );
  const [best] = pairs.sort((a, b) => a.cost - b.cost || b.blocks - a.blocks);
  return best === undefined ? null : [best.side, best.end];
}

function sized(spec: QuiltSpec, blocks: InBlocks): Sized | null {
  const top = layOutQuilt(inBlocks(spec, blocks)).value?.top;
  return top === undefined
    ? null
    : { blocks, across: exactToNumber(top.across), down: exactToNumber(top.down) };
}

/** The counts just below and just above the target both ways; the same twice where it is met. */
function beside(spec: QuiltSpec, x: Ladder, y: Ladder, side: "below" | "above"): Sized | null {
  const half = spec.ruler.mark / 2;
  const of = ({ steps, target }: Ladder): number | undefined =>
    side === "below"
      ? steps.filter(({ size }) => size <= target + half).at(-1)?.count
      : steps.find(({ size }) => size >= target - half)?.count;
  const [across, down] = [of(x), of(y)];
  return across === undefined || down === undefined ? null : sized(spec, { across, down });
}

/**
 * The blocks, and the width of a plain outer border, that come nearest to a finished size.
 * @returns null when the design cannot be made in any number of blocks near it
 */
export function fitSize(spec: QuiltSpec, target: Target): Fit | null {
  const { mark } = spec.ruler;
  const [x, y] = [ladder(spec, "across", target.across), ladder(spec, "down", target.down)];
  const [below, above] = [beside(spec, x, y, "below"), beside(spec, x, y, "above")];
  const near = ({ across, down }: Sized): boolean =>
    Math.abs(across - target.across) <= 2 * mark && Math.abs(down - target.down) <= 2 * mark;
  const border = outerBorder(spec);
  if (border !== null) {
    const even = widthOf(border, "across") === widthOf(border, "down");
    const pair = evenest(withBorder(x, border, mark), withBorder(y, border, mark), even);
    if (pair !== null) {
      const [side, end] = pair;
      const widened = { ...border, side: { n: side.width, d: 1 }, end: { n: end.width, d: 1 } };
      const changed = { ...spec, borders: [...spec.borders.slice(0, -1), widened] };
      const blocks = { across: side.count, down: end.count };
      const taken = sized(changed, blocks);
      const same = side.width === widthOf(border, "across") && end.width === widthOf(border, "down");
      const told = same ? null : { name: border.name, side: side.width, end: end.width };
      if (taken !== null && near(taken))
        return { spec: inBlocks(changed, blocks), taken, border: told, met: true, below, above };
    }
  }
  const most = 2 * TRIED + 1;
  for (const across of byNearness(x).slice(0, most)) {
    for (const down of byNearness(y).slice(0, most)) {
      const taken = sized(spec, { across, down });
      if (taken === null) continue;
      return { spec: inBlocks(spec, taken.blocks), taken, border: null, met: near(taken), below, above };
    }
  }
  return null;
}
