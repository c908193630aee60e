import { familyOf, formatLength, formatSize, METRE, type Ticks, YARD } from "../../length/index.ts";
import type {
  BlockPressing,
  JoinStep,
  Making,
  Press,
  Pressing,
  RawSize,
  RowPressing,
} from "../../making/types.ts";
import type { Plan } from "../../plan/types.ts";
import { finishingLines } from "./making-finishing.ts";
import { makingWords } from "./making-words.ts";

/** Un-nested places told in words; the drawing shows all. */
const MOST_TOLD = 12;

/** Columns of a line. */
const WIDEST = 98;

/** A line broken between words, what follows set in as far as the first and two more. */
function wrapped(line: string): string[] {
  const margin = " ".repeat(
    line.length - line.trimStart().length + (line.trimStart().startsWith("[ ]") ? 4 : 2),
  );
  const lines: string[] = [];
  let rest = line;
  while (rest.length > WIDEST) {
    const cut = rest.lastIndexOf(" ", WIDEST);
    if (cut <= margin.length) break;
    lines.push(rest.slice(0, cut));
    rest = margin + rest.slice(cut + 1);
  }
  return [...lines, rest];
}

function indented(lines: readonly string[]): string[] {
  return lines.map((line) => (line === "" ? "" : `  ${line}`));
}

/** Seams and thread in whole yards or metres, rounded up. */
export function longLength(length: Ticks, plan: Plan): string {
  return familyOf(plan.ruler.unit) === "imperial"
    ? `${Math.ceil(length / YARD)} yd`
    : `${Math.ceil(length / METRE)} m`;
}

function designName(plan: Plan, design: number): string {
  const { name = "", colourway = "" } = plan.top?.designs[design] ?? {};
  return colourway === "" ? name : `${name} ${colourway}`;
}

/** `2 x square, flying geese`: runs of like parts gathered. */
function partsTold(from: readonly string[]): string {
  const runs: { part: string; count: number }[] = [];
  for (const part of from) {
    const last = runs.at(-1);
    if (last?.part === part) last.count += 1;
    else runs.push({ part, count: 1 });
  }
  return runs.map(({ part, count }) => makingWords.run(count, part)).join(", ");
}

function joinTold(join: JoinStep, makes: string, making: Making, plan: Plan): string {
  const size = ({ across, down }: RawSize): string =>
    formatSize(Math.round(across / making.scale), Math.round(down / making.scale), plan.ruler);
  const length = formatLength(join.seamLength, plan.ruler);
  return makingWords.join(makes, partsTold(join.from), join.seams, length, size(join.size));
}

export function unitLines(making: Making, plan: Plan): string[] {
  if (making.units.length === 0) return [];
  const blocks = making.units.map((batch) => {
    const { units, text, method, sets, perSet, steps, trimTo } = batch;
    const size = formatSize(trimTo.across, trimTo.along, plan.ruler);
    return [
      `[ ] ${makingWords.unit(units, text, method)}`,
      ...indented(indented([makingWords.sets(sets, perSet), ...steps])),
      ...indented(indented([trimTo.needed ? makingWords.trim(size) : makingWords.comesOut(size)])),
    ];
  });
  return [makingWords.unitsTitle, ...indented(blocks.flat()), ""];
}

/** Blocks sewn alike in different colours are told together. */
export function blockLines(making: Making, plan: Plan): string[] {
  const bySteps = new Map<string, { designs: Map<number, number>; lines: string[] }>();
  const designs = new Map<number, JoinStep[]>();
  for (const join of making.joins) {
    if (join.design === null) continue;
    designs.set(join.design, [...(designs.get(join.design) ?? []), join]);
  }
  for (const [design, joins] of designs) {
    const { name = "" } = plan.top?.designs[design] ?? {};
    const lines = joins.map((join) => joinTold(join, join.makes, making, plan));
    const key = `${name}\n${lines.join("\n")}`;
    const group = bySteps.get(key) ?? { designs: new Map(), lines };
    group.designs.set(design, joins[0]?.count ?? 0);
    bySteps.set(key, group);
  }
  const partial = making.partial.map(({ design }) => makingWords.partial(designName(plan, design)));
  return [
    ...[...bySteps.values()].flatMap(({ designs: own, lines }) => {
      const names = [...own].map(([design, count]) => makingWords.block(designName(plan, design), count));
      return [makingWords.blockTitle(names.join(", ")), ...indented(lines.map((line) => `[ ] ${line}`)), ""];
    }),
    ...(partial.length === 0 ? [] : [...partial, ""]),
  ];
}

/** Rows of the top; rows sewn alike are told once. */
export function topLines(making: Making, plan: Plan): string[] {
  const joins = making.joins.filter(({ stage }) => stage === "top");
  const alike = new Map<string, { join: JoinStep; rows: string[] }>();
  for (const join of joins) {
    const row = /^row (\d+)$/.exec(join.makes)?.[1];
    const key = joinTold(join, row === undefined ? join.makes : "", making, plan);
    const group = alike.get(key) ?? { join, rows: [] };
    if (row !== undefined) group.rows.push(row);
    alike.set(key, group);
  }
  const lines = [...alike.values()].map(({ join, rows }) => {
    const from = join.from.every((part, i) => part === `row ${i + 1}`)
      ? [`rows 1 to ${join.from.length}`]
      : join.from;
    const makes = rows.length === 0 ? join.makes : makingWords.sameRows(rows);
    return `[ ] ${joinTold({ ...join, from }, makes, making, plan)}`;
  });
  if (plan.top?.centre.onPoint === true) lines.push(`[ ] ${makingWords.diagonalRows}`);
  return lines.length === 0 ? [] : [makingWords.rowsTitle, ...indented(lines), ""];
}

export function borderLines(making: Making, plan: Plan): string[] {
  const lines = making.joins
    .filter(({ stage }) => stage === "border")
    .map((join) => `[ ] ${joinTold(join, join.makes, making, plan)}`);
  const mitred = (plan.top?.borders ?? [])
    .filter(({ kind }) => kind === "mitred")
    .map(({ name }) => `[ ] ${makingWords.mitred(name, formatLength(making.seam, plan.ruler))}`);
  if (lines.length + mitred.length === 0) return [];
  return [makingWords.bordersTitle, ...indented([makingWords.measure, ...lines, ...mitred]), ""];
}

/** Rows pressed one way gathered: `rows 1, 3 and 5 to the right`. */
export function rowsPressed(rows: readonly RowPressing[], diagonal: boolean): string[] {
  const ways = new Map<RowPressing["press"], number[]>();
  for (const { row, press } of rows) ways.set(press, [...(ways.get(press) ?? []), row]);
  const [only] = ways.keys();
  if (ways.size === 1 && only !== null && only !== undefined && rows.length > 1) {
    return [makingWords.press([makingWords.pressEvery(only)], diagonal)];
  }
  const parts = [...ways].flatMap(([press, own]) =>
    press === null ? [] : [makingWords.pressRows(own, press)],
  );
  const rest = ways.get(null);
  return [
    ...(parts.length === 0 ? [] : [makingWords.press(parts, diagonal)]),
    ...(rest === undefined ? [] : [makingWords.asDrawn(rest)]),
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

/** The pressing told: rows, blocks, how many places nest, and those that do not. */
export function pressingLines(pressing: Pressing, plan: Plan): string[] {
  const { junctions, open, proven, variants, placed, alike, blocks, rows } = pressing;
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
    ...rowsPressed(rows, plan.top?.centre.onPoint === true),
    ...blocksPressed(blocks, plan),
    ...(variants === 2 ? [makingWords.variants(placed, alike.open)] : []),
    ...nest,
    ...(junctions === 0 ? [] : [makingWords.pin]),
    ...(inside ? [makingWords.before] : []),
  ];
}

/** The sewing as a handout in text: units, blocks, rows, borders, pressing; empty for a plain cut list. */
export function makingSteps(plan: Plan): string {
  const { making } = plan;
  if (making === undefined) return "";
  const { pressing, totals, thread } = making;
  const perSeam = String(thread.perSeam / 1000);
  return [
    makingWords.title(plan.name),
    "",
    `${makingWords.cautionsTitle}:`,
    ...indented(makingWords.cautions),
    "",
    makingWords.estimates,
    makingWords.seam(formatLength(making.seam, plan.ruler)),
    makingWords.total(longLength(totals.total, plan), totals.seams),
    makingWords.thread(longLength(thread.length, plan), perSeam, thread.wastePercent),
    "",
    ...unitLines(making, plan),
    ...blockLines(making, plan),
    ...topLines(making, plan),
    ...borderLines(making, plan),
    ...(pressing === null ? [] : [makingWords.pressTitle, ...indented(pressingLines(pressing, plan)), ""]),
    ...finishingLines(making, plan),
  ]
    .flatMap(wrapped)
    .join("\n");
}
