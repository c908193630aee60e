import type { Block, Card, Step, StepGroup } from "../../content/book/content.ts";
import { type Scene, textsOf } from "../../draw/scene/scene.ts";
import { nth } from "../../length/nth.ts";
import { arranged } from "./arrange-cards.ts";
import {
  type Breakable,
  balanced,
  balancedHeight,
  inRows,
  type Standing,
  stretched,
  whole,
  worked,
} from "./breakable.ts";
import {
  blockHigh,
  COLUMNS,
  cardForm,
  cardHigh,
  cautionHigh,
  cautionParts,
  columnsOf,
  GAP,
  groupHigh,
  high,
  LABELS,
  LEAF,
  PER_UNIT,
  rowHigh,
  sizeOf,
  stepHigh,
  TYPE,
  tableHead,
  termHigh,
} from "./measure.ts";

/* How each kind of block may be broken, and how high what is left of it stands. */

/** Steps of a section are numbered through. */
function numbered(groups: readonly StepGroup[], count: { steps: number }): StepGroup[] {
  return groups.map(({ title, steps }) => ({
    title,
    steps: steps.map((step): Step => {
      count.steps += 1;
      return { ...step, number: count.steps };
    }),
  }));
}

/** Groups cut into one step each, the first of a group with its title. */
function singleSteps(groups: readonly StepGroup[]): StepGroup[] {
  return groups.flatMap(({ title, steps }) =>
    steps.map((step, i) => ({ title: i === 0 ? title : "", steps: [step] })),
  );
}

function joined(groups: readonly StepGroup[]): StepGroup[] {
  const found: StepGroup[] = [];
  for (const { title, steps } of groups) {
    const last = found.at(-1);
    if (title === "" && last !== undefined) last.steps.push(...steps);
    else found.push({ title, steps: [...steps] });
  }
  return found;
}

const stepsBlock = (groups: readonly StepGroup[], columns: number): Block => ({
  kind: "steps",
  groups: joined(groups),
  ...(columns === 2 ? { columns: 2 as const } : {}),
});

function stepHeights(groups: readonly StepGroup[], width: number): number[] {
  return groups.map((group) => groupHigh(group, width) + stepHigh(nth(group.steps, 0), width));
}

const columnWidth = (columns: number): number => (LEAF.width - GAP.column * (columns - 1)) / columns;

function stepParts(groups: readonly StepGroup[], columns: number, again = ""): Breakable | null {
  const one = singleSteps(groups);
  const width = columnWidth(columns);
  return worked(one.length, (from, to) => {
    const some = one.slice(from, to).map((group, i) => {
      // What goes on over the page is headed once more.
      return from > 0 && i === 0 && group.title === "" ? { ...group, title: again } : group;
    });
    const height = balancedHeight(stepHeights(some, width), columns);
    return [{ block: stepsBlock(some, columns), height, scale: 1 }];
  });
}

/** Points of the smallest letters. */
const SMALLEST_LETTERS = 6;

/** The smallest scale at which the words of a drawing can be read, and no smaller than this. */
function leastScale(scene: Scene, least: number): number {
  const sizes = textsOf(scene.nodes).map(({ size }) => size);
  const readable = sizes.length === 0 ? 0 : SMALLEST_LETTERS / Math.min(...sizes);
  return Math.max(least, readable);
}

/** Shares of its size that a drawing may be set smaller and larger. */
const SNUG = 0.6;
const AMPLE = 1.25;

/** Shares of its size that a drawing beside its steps is tried at. */
const BESIDE = [1, 0.92, 0.84, 0.76] as const;

/** Page units from which a drawing is stretched: small ones of one kind stand alike. */
const WIDE_ENOUGH = 300;
/** Shares of its size to which a drawing beside its steps grows on a page with room. */
const LARGER = [1.35, 1.25, 1.15, 1.08] as const;

/** How far a drawing may be set smaller and larger while the words beside it stand no higher than it. */
function stretchOf(
  room: { width: number; height: number; words: (scale: number) => number },
  scale: number,
  readable: number,
): Pick<Standing, "stretch"> {
  const holds = (at: number): boolean =>
    room.words(at) <= room.height * at && room.width * at <= LEAF.width * 0.62;
  if (room.width < WIDE_ENOUGH || !holds(scale)) return {};
  const most = LARGER.map((share) => share * scale).find(holds) ?? scale;
  const least = Math.min(scale, Math.max(readable, scale * SNUG, room.words(scale) / room.height));
  return { stretch: { high: room.height, least, most } };
}

/** A drawing with its steps beside it, and below in two columns those that would stand lower than it. */
function besideParts(block: Block & { kind: "beside" }, count: { steps: number }): Breakable {
  const { scene } = block;
  const size = sizeOf(scene);
  const groups = singleSteps(numbered(block.groups, count));
  const below = stepHeights(groups, columnWidth(2));
  const readable = leastScale(scene, 0);
  const scales = BESIDE.map((share) => share * PER_UNIT).filter(
    (scale) => scale === PER_UNIT || scale >= readable,
  );
  const widthAt = (scale: number): number => LEAF.width - size.width * scale - GAP.column;
  const right = scales.map((scale) => stepHeights(groups, widthAt(scale)));
  const wordsHigh = (some: readonly StepGroup[], scale: number): number =>
    stepHeights(some, widthAt(scale)).reduce((sum, own) => sum + own, 0);
  const opening = (to: number): Standing[] => {
    let best: Standing[] = [];
    let least = Number.POSITIVE_INFINITY;
    for (const [s, scale] of scales.entries()) {
      let beside = 0;
      for (let taken = Math.min(1, to); taken <= to; taken += 1) {
        beside += right[s]?.[taken - 1] ?? 0;
        const height = Math.max(size.height * scale, beside);
        const rest = below.slice(taken, to);
        const all = height + (rest.length === 0 ? 0 : GAP.block + balancedHeight(rest, 2));
        // A drawing is set smaller only where that saves a line or more.
        if (all >= least - TYPE.body.line) continue;
        least = all;
        const own: Block = { kind: "beside", scene, groups: joined(groups.slice(0, taken)) };
        const room = { ...size, words: (at: number) => wordsHigh(groups.slice(0, taken), at) };
        best = [
          { block: own, height, scale, ...stretchOf(room, scale, readable) },
          ...(rest.length === 0
            ? []
            : [{ block: stepsBlock(groups.slice(taken, to), 2), height: balancedHeight(rest, 2), scale: 1 }]),
        ];
      }
    }
    return best;
  };
  const parts = Math.max(1, groups.length);
  return (
    worked(parts, (from, to) =>
      from === 0
        ? opening(Math.min(to, groups.length))
        : [
            {
              block: stepsBlock(groups.slice(from, to), 2),
              height: balancedHeight(below.slice(from, to), 2),
              scale: 1,
            },
          ],
    ) ?? whole(block, size.height * PER_UNIT)
  );
}

/** Cards in rows of columns, in order. */
export function cardRows(cards: readonly Card[]): Card[][] {
  const rows: Card[][] = [];
  let left = 0;
  for (const card of cards) {
    const { span } = cardForm(card);
    if (span > left) {
      rows.push([]);
      left = COLUMNS;
    }
    rows.at(-1)?.push(card);
    left -= span;
  }
  return rows;
}

function cardParts(cards: readonly Card[]): Breakable | null {
  return worked(cards.length, (from, to) => {
    const some = arranged(cards.slice(from, to));
    const rows = cardRows(some).map((row) => Math.max(...row.map(cardHigh)));
    const height = rows.reduce((total, row) => total + row + GAP.card, -GAP.card);
    return [{ block: { kind: "cards", cards: some }, height, scale: 1 }];
  });
}

function tableParts(block: Block & { kind: "table" }): Breakable | null {
  const { table } = block;
  const widths = columnsOf(table, LEAF.width);
  const rows = table.rows.map((row, r) => ({ row, tick: table.ticks[r], last: r === table.rows.length - 1 }));
  const heights = rows.map((_, r) => rowHigh(table, r, widths));
  return worked(rows.length, (from, to) => {
    const some = rows.slice(from, to);
    const ticks = some.flatMap(({ tick }) => (tick === undefined ? [] : [tick]));
    const summed = table.summed && some.at(-1)?.last === true;
    const goesOn = from > 0 && block.again !== undefined;
    const caption = goesOn ? (block.again ?? "") : table.caption;
    const captionSeen = goesOn || (table.captionSeen && from === 0);
    const own = { ...table, caption, captionSeen, widths, rows: some.map(({ row }) => row), ticks, summed };
    const height = heights.slice(from, to).reduce((sum, each) => sum + each, tableHead(own, widths));
    return [{ block: { kind: "table", table: own }, height, scale: 1 }];
  });
}

/** Largest scale of a drawing among words. */
const LARGEST = PER_UNIT * 1.35;

function pictureParts(block: Block & { kind: "picture" }): Breakable {
  const size = sizeOf(block.scene);
  const whole = LEAF.width / size.width;
  const shared = Math.min(whole * (block.share ?? 1), LARGEST);
  const usual = Math.min(whole, Math.max(shared, leastScale(block.scene, 0)));
  const least = Math.min(usual, leastScale(block.scene, usual * SNUG));
  const most = Math.max(usual, Math.min(whole, LARGEST, usual * AMPLE));
  return stretched(block, size, { least, usual, most });
}

/** A block as it may be broken; null for a sheet at full size, which has a page of its own. */
export function breakable(block: Block, count: { steps: number }): Breakable | null {
  switch (block.kind) {
    case "list": {
      const columns = block.columns ?? 1;
      const width = columnWidth(columns) - 10;
      const heights = block.items.map((item) => high(item, width, TYPE.body) + GAP.item);
      return balanced(block.items, heights, columns, (some) => ({ ...block, items: some }));
    }
    case "terms": {
      const width = columnWidth(3);
      const heights = block.terms.map((entry) => termHigh(entry, width));
      return balanced(block.terms, heights, 3, (some) => ({ ...block, terms: some }));
    }
    case "cautions": {
      const heights = cautionParts(block).map((part) => cautionHigh(part, columnWidth(3)));
      return whole(block, balancedHeight(heights, 3));
    }
    case "steps":
      return stepParts(numbered(block.groups, count), block.columns ?? 1, block.again);
    case "beside":
      return besideParts(block, count);
    case "cards":
      return cardParts(block.cards);
    case "labels":
      return inRows(block.labels, LABELS.columns, LABELS.height, (some) => ({ ...block, labels: some }));
    case "table":
      return tableParts(block);
    case "picture":
      return pictureParts(block);
    case "full-size":
      return null;
    default:
      return whole(block, blockHigh(block));
  }
}
