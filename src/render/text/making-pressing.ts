import { formatLength, type Ticks } from "../../length/index.ts";
import type { BlockPressing, Press, Pressing, RowPressing } from "../../making/types.ts";
import type { Plan } from "../../plan/types.ts";
import { indented } from "./making-lines.ts";
import { makingWords } from "./making-words.ts";

/** Un-nested places told in words; the drawing shows all. */
const MOST_TOLD = 12;
/** Thick places told in words. */
const MOST_THICK = 6;
/** Groups of pinning places told one by one; more are told by where they begin. */
const MOST_ROUNDS = 6;

export function designName(plan: Plan, design: number): string {
  const { name = "", colourway = "" } = plan.top?.designs[design] ?? {};
  return colourway === "" ? name : `${name} ${colourway}`;
}

/** Rows pressed one way gathered: `rows 1, 3 and 5 to the right`. */
export function rowsPressed(
  rows: readonly RowPressing[],
  diagonal: boolean,
  lines: Pressing["lines"] = "rows",
): string[] {
  const ways = new Map<RowPressing["press"], number[]>();
  for (const { row, press } of rows) ways.set(press, [...(ways.get(press) ?? []), row]);
  const [only] = ways.keys();
  if (ways.size === 1 && only !== null && only !== undefined && rows.length > 1) {
    return [makingWords.press([makingWords.pressEvery(only, lines, diagonal)], diagonal)];
  }
  const parts = [...ways].flatMap(([press, own]) =>
    press === null ? [] : [makingWords.pressRows(own, press, lines, diagonal)],
  );
  const rest = ways.get(null);
  return [
    ...(parts.length === 0 ? [] : [makingWords.press(parts, diagonal)]),
    ...(rest === undefined ? [] : [makingWords.asDrawn(rest, lines)]),
  ];
}

/** How a block's own seams are pressed: by row where a row is pressed one way. */
function blockPressed({ seams }: BlockPressing): string[] | null {
  const own = seams.filter(({ level }) => level !== "unit");
  const rows = new Map<string, Set<Press>>();
  const right = Math.max(0, ...own.map(({ x2 }) => x2));
  const lines = own.filter(({ level, x1, x2 }) => level === "rows" && x1 === 0 && x2 === right);
  for (const { level, y1, press } of own) {
    const row = 1 + lines.filter((line) => line.y1 <= y1).length;
    const key = level === "row" ? `row ${row}` : "the seams between rows";
    rows.set(key, (rows.get(key) ?? new Set()).add(press));
  }
  const upright = own.some(({ level }) => level === "rows");
  if (own.length === 0 || !upright || [...rows.values()].some((ways) => ways.size > 1)) return null;
  const ordered = [...rows].sort(([a], [b]) => (a < b ? -1 : 1));
  const parts = ordered.flatMap(([row, ways]) =>
    [...ways].map((press) => makingWords.inBlock(row, makingWords.toward[press])),
  );
  return parts;
}

/** One line for all blocks that are pressed in the same words. */
function blocksPressed(blocks: readonly BlockPressing[], plan: Plan): string[] {
  const names = new Map<string, { parts: string[]; of: string[] }>();
  for (const block of blocks) {
    const parts = blockPressed(block);
    if (parts === null) continue;
    const group = names.get(parts.join()) ?? { parts, of: [] };
    const { design, variant } = block;
    group.of.push(`${designName(plan, design)}${variant === "" ? "" : ` ${variant}`}`);
    names.set(parts.join(), group);
  }
  return [...names.values()].map(({ parts, of }) => makingWords.blockPress(of.join(", "), parts));
}

/** Which places to pin first along the long seams, seams with like places told together. */
function pinLines({ pins, lines }: Pressing): string[] {
  if (pins.length === 0) return [];
  const alike = new Map<string, { rows: number[]; count: number; order: number[][] }>();
  for (const { row, places, order } of pins) {
    const key = JSON.stringify([places.length, order]);
    const group = alike.get(key) ?? { rows: [], count: places.length, order };
    group.rows.push(row);
    alike.set(key, group);
  }
  const told = [...alike.values()].map(({ rows, count, order }) =>
    makingWords.pinSeam(
      rows,
      count,
      order.length > MOST_ROUNDS ? order.slice(0, 1) : order,
      order.length > MOST_ROUNDS,
      lines,
    ),
  );
  return [makingWords.pinTitle(lines), ...indented(told)];
}

/** How thick the top gets, and where thicker than wanted. */
function bulkLines({ bulk }: Pressing, plan: Plan): string[] {
  const { limit, most, places, atMost, over, overCount, proven } = bulk;
  if (places === 0) return [];
  const say = (value: Ticks): string =>
    formatLength(Math.round(value / plan.ruler.mark) * plan.ruler.mark, plan.ruler);
  const told = over
    .slice(0, MOST_THICK)
    .map(({ x, y, layers, opened }) => makingWords.thickAt(say(x), say(y), layers, opened));
  if (overCount > MOST_THICK) told.push(makingWords.moreThick(overCount - MOST_THICK));
  return [
    makingWords.bulk(most, atMost, places, proven),
    ...(overCount === 0 ? [makingWords.thinEnough(limit)] : [makingWords.tooThick(limit), ...indented(told)]),
  ];
}

/** The pressing told: rows, blocks, how many places nest, those that do not, bulk, and what is pinned first. */
export function pressingLines(pressing: Pressing, plan: Plan): string[] {
  const { junctions, open, proven, variants, placed, alike, blocks, rows, lines } = pressing;
  const length = (value: Ticks): string => formatLength(value, plan.ruler);
  const places = open.slice(0, MOST_TOLD).map(({ x, y }) => makingWords.openAt(length(x), length(y)));
  if (open.length > MOST_TOLD) places.push(makingWords.more(open.length - MOST_TOLD));
  const nest =
    junctions === 0
      ? [makingWords.noJunctions]
      : open.length === 0
        ? [makingWords.nestAll(junctions)]
        : [makingWords.nestSome(junctions, open.length, proven), ...indented(places)];
  const inside = blocks.some(({ seams }) => seams.some(({ level }) => level === "unit"));
  return [
    ...rowsPressed(rows, plan.top?.centre.onPoint === true, lines),
    ...blocksPressed(blocks, plan),
    ...(variants === 2 ? [makingWords.variants(placed, alike.open)] : []),
    ...nest,
    ...bulkLines(pressing, plan),
    ...pinLines(pressing),
    ...(inside ? [makingWords.before] : []),
  ];
}
