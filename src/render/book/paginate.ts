import type { Block, Book, Card, Section, Step, StepGroup } from "./content.ts";
import { balanced, balancedHeight, gridItem, type Item, items, scaled, single } from "./leaf-items.ts";
import {
  blockHigh,
  cardForm,
  cardHigh,
  cautionHigh,
  cautionParts,
  columnsOf,
  coverHigh,
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
} from "./measure.ts";

/** A block as it stands on its page: the whole of one, or what fits of it. */
export interface LaidBlock {
  block: Block;
  /** Begins a page. */
  fresh: boolean;
  /** Points it is high. */
  height: number;
  /** Points above it, none at the top of a page. */
  gap: number;
  /** Of a picture: points to its own unit. */
  scale: number;
}

export interface LaidSection extends Omit<Section, "blocks"> {
  /** Its title begins a page. */
  fresh: boolean;
  gap: number;
  head: number;
  blocks: LaidBlock[];
}

/** A book broken into pages. */
export interface LaidBook extends Omit<Book, "sections"> {
  sections: LaidSection[];
  /** Share of its height that is used of every page after the first; 1 for one that holds a template. */
  fill: number[];
  /** Templates that stand on the last pages, after all that is read. */
  sheets: number;
}

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

function stepItem(groups: readonly StepGroup[], columns: number): Item | null {
  const width = (LEAF.width - GAP.column * (columns - 1)) / columns;
  const one = singleSteps(groups);
  return balanced(
    one,
    one.map((group) => groupHigh(group, width) + stepHigh(group.steps[0] as Step, width)),
    columns,
    (some): Block => ({ kind: "steps", groups: joined(some), ...(columns === 2 ? { columns: 2 } : {}) }),
  );
}

/** Share of a page up to which a drawing and all its steps stay together. */
const KEPT_BESIDE = 0.36;

/** A drawing with as many of its steps beside it as fit; the rest follows below in two columns. */
function besideItem(block: Block & { kind: "beside" }, count: { steps: number }): Item {
  const { width, height } = sizeOf(block.svg);
  const left = width * PER_UNIT;
  const room = LEAF.width - left - GAP.column;
  const groups = singleSteps(numbered(block.groups, count));
  const heights = groups.map((group) => groupHigh(group, room) + stepHigh(group.steps[0] as Step, room));
  const picture = height * PER_UNIT;
  const whole = heights.reduce((total, each) => total + each, 0);
  // A small diagram keeps all its steps beside it.
  const kept = whole <= LEAF.height * KEPT_BESIDE ? whole : (heights[0] ?? 0);
  return {
    least: Math.max(picture, kept),
    take(free) {
      const most =
        whole <= Math.max(picture * 1.5, free) && whole <= free ? free : Math.max(picture, heights[0] ?? 0);
      let [taken, used] = [0, 0];
      while (taken < groups.length && used + (heights[taken] ?? 0) <= most + 0.01) {
        used += heights[taken] ?? 0;
        taken += 1;
      }
      if (taken === 0 && groups.length > 0) taken = 1;
      const rest = groups.slice(taken);
      return {
        block: { kind: "beside", svg: block.svg, groups: joined(groups.slice(0, taken)) },
        height: Math.max(picture, used, heights[0] ?? 0),
        scale: PER_UNIT,
        rest: rest.length === 0 ? null : stepItem(rest, 2),
      };
    },
  };
}

/** Cards in rows of three thirds, in order. */
function cardRows(cards: readonly Card[]): Card[][] {
  const rows: Card[][] = [];
  let left = 0;
  for (const card of cards) {
    const { span } = cardForm(card);
    if (span > left) {
      rows.push([]);
      left = 3;
    }
    rows.at(-1)?.push(card);
    left -= span;
  }
  return rows;
}

function tableItem(block: Block & { kind: "table" }): Item | null {
  const { table } = block;
  const widths = columnsOf(table, LEAF.width);
  const head = tableHead(table, widths);
  const rows = table.rows.map((row, r) => ({ row, tick: table.ticks[r], last: r === table.rows.length - 1 }));
  const heights = rows.map((_, r) => rowHigh(table, r, widths));
  return items(rows, heights, head, (some, first): Block => {
    const ticks = some.flatMap(({ tick }) => (tick === undefined ? [] : [tick]));
    const summed = table.summed && some.at(-1)?.last === true;
    const captionSeen = table.captionSeen && first;
    return {
      kind: "table",
      table: { ...table, rows: some.map(({ row }) => row), ticks, summed, captionSeen },
    };
  });
}

/** Share of its size that a drawing without words may be set smaller. */
const SNUG = 0.6;
/** Points of the smallest letters. */
const SMALLEST_LETTERS = 6;

/** The smallest scale at which the words of a drawing can be read. */
function leastScale(svg: string, full: number): number {
  const sizes = [...svg.matchAll(/font-size="([\d.]+)"/g)].map(([, size]) => Number(size));
  const readable = sizes.length === 0 ? 0 : SMALLEST_LETTERS / Math.min(...sizes);
  return Math.min(full, Math.max(full * SNUG, readable));
}

/** A block as something that can be laid on pages. */
function itemOf(block: Block, count: { steps: number }, tightness: number): Item | null {
  switch (block.kind) {
    case "list": {
      const columns = block.columns ?? 1;
      const width = (LEAF.width - GAP.column * (columns - 1)) / columns - 10;
      const heights = block.items.map((item) => high(item, width, TYPE.body) + GAP.item);
      return balanced(block.items, heights, columns, (some) => ({ ...block, items: some }));
    }
    case "terms": {
      const width = (LEAF.width - 2 * GAP.column) / 3;
      const heights = block.terms.map(
        ({ term, meaning }) => high(term, width, TYPE.small, true) + high(meaning, width, TYPE.small) + 4,
      );
      return balanced(block.terms, heights, 3, (some) => ({ ...block, terms: some }));
    }
    case "cautions": {
      const width = (LEAF.width - 2 * GAP.column) / 3;
      const heights = cautionParts(block).map((part) => cautionHigh(part, width));
      return single(block, balancedHeight(heights, 3));
    }
    case "steps":
      return stepItem(numbered(block.groups, count), block.columns ?? 1);
    case "beside":
      return besideItem(block, count);
    case "cards":
      return items(
        cardRows(block.cards),
        cardRows(block.cards).map((row) => Math.max(...row.map(cardHigh)) + GAP.card),
        0,
        (some) => ({ kind: "cards", cards: some.flat() }),
      );
    case "labels":
      return gridItem(block.labels, LABELS.columns, LABELS.height, (some) => ({ ...block, labels: some }));
    case "table":
      return tableItem(block);
    case "picture": {
      const size = sizeOf(block.svg);
      const full = Math.min((LEAF.width * (block.share ?? 1)) / size.width, PER_UNIT * 1.35);
      const least = leastScale(block.svg, full);
      return scaled(block, size, Math.max(least, full * tightness), least);
    }
    case "full-size":
      return null;
    default:
      return single(block, blockHigh(block));
  }
}

function headHigh({ over, title, swatch }: Section): number {
  const small = over === "" ? 0 : TYPE.small.line;
  return small + high(title, (LEAF.width - (swatch === null ? 0 : 22)) * 0.9, TYPE.title, true) + 7;
}

/** What stands above something and belongs to it. */
function isHead(block: Block, place: number, leading: number): boolean {
  if (block.kind === "text") return place < leading || block.tone === "lead";
  return block.kind === "heading" || ("keep" in block && block.keep === true);
}

/** Less of a page than this is left free only where nothing can be broken. */
const LEAST_KEPT = 40;

/** Shares of their size that drawings and gaps are tried at, where pages would be nearly empty. */
const TIGHTER = [0.94, 0.88, 0.8, 0.7] as const;
/** Less of a page than this is no page. */
const HALF_EMPTY = 0.55;

/** How full the emptiest page is, but for the last that is read. */
export const emptiest = ({ fill, sheets }: LaidBook): number =>
  Math.min(1, ...fill.slice(0, fill.length - sheets - 1));

/** A book on its pages, tighter where that saves a page or fills one. */
export function laidOut(book: Book): LaidBook {
  return TIGHTER.map((tightness) => laidAt(book, tightness)).reduce(
    (best, other) => {
      if (other.fill.length !== best.fill.length) return other.fill.length < best.fill.length ? other : best;
      return emptiest(best) < HALF_EMPTY && emptiest(other) > emptiest(best) ? other : best;
    },
    laidAt(book, 1),
  );
}

/** Breaks a book into pages: nothing that is done at one go is broken over two, and a heading stays with what it heads. */
function laidAt(book: Book, tightness: number): LaidBook {
  const fill: number[] = [];
  let first = true;
  let y: number = coverHigh(book);
  const turn = (): void => {
    if (!first) fill.push(y / LEAF.height);
    first = false;
    y = 0;
  };
  const sections = book.sections.map((section): LaidSection => {
    const blocks: LaidBlock[] = [];
    const count = { steps: 0 };
    const head = headHigh(section);
    const pending = section.blocks.map((block) => ({ block, item: itemOf(block, count, tightness) }));
    // Texts that open a section stand on the page of what they open.
    const found = section.blocks.findIndex(({ kind }) => kind !== "text");
    const leading = found < 0 ? section.blocks.length : found;
    const leastFrom = (i: number): number => {
      const next = pending[i];
      if (next === undefined || next.item === null) return 0;
      const own = next.item.least + GAP.block;
      return isHead(next.block, i, leading) ? own + leastFrom(i + 1) : own;
    };
    let fresh = false;
    let gap: number = y === 0 ? 0 : GAP.section * tightness;
    const wanted = head + Math.max(LEAST_KEPT, leastFrom(0));
    if (section.newSheet || y + gap + Math.min(wanted, LEAF.height) > LEAF.height) {
      turn();
      fresh = true;
      gap = 0;
    }
    y += gap + head;
    for (const [i, { block, item }] of pending.entries()) {
      if (item === null) {
        if (block.kind !== "full-size") continue;
        turn();
        y = LEAF.height;
        blocks.push({ block, fresh: true, height: LEAF.height, gap: 0, scale: 0.75 });
        continue;
      }
      let rest: Item | null = item;
      while (rest !== null) {
        let above: number = y === 0 ? 0 : GAP.block * tightness;
        const follows: number = rest === item && isHead(block, i, leading) ? leastFrom(i + 1) : 0;
        let begins = false;
        if (y > 0 && y + above + Math.min(rest.least + follows, LEAF.height) > LEAF.height + 0.01) {
          turn();
          begins = true;
          above = 0;
        }
        const taken = rest.take(LEAF.height - y - above);
        blocks.push({
          block: taken.block,
          fresh: begins,
          height: taken.height,
          gap: above,
          scale: taken.scale,
        });
        y += above + taken.height;
        rest = taken.rest;
      }
    }
    const { blocks: _, ...own } = section;
    return { ...own, fresh, gap, head, blocks };
  });
  turn();
  const last = sections.flatMap(({ blocks }) => blocks.map(({ block }) => block.kind));
  const sheets = last.length - 1 - last.findLastIndex((kind) => kind !== "full-size");
  return { ...book, sections, fill: fill.map((share) => Math.min(1, share)), sheets };
}
