import type {
  Block,
  Book,
  Card,
  CardForm,
  Cell,
  Fact,
  Label,
  Section,
  Step,
  StepGroup,
  Table,
} from "../../content/book/content.ts";
import { textWidth } from "../../draw/scene/metrics.ts";
import type { Scene } from "../../draw/scene/scene.ts";
import { wrap } from "../../draw/scene/text-fit.ts";
import { PICTURE_COLUMNS } from "../../draw/steps/draw-step-pictures.ts";

/*
 * How high things stand on paper, in points, worked out from the widths of letters alone: the web page and the PDF are
 * broken into the same pages by it, and both papers too, since the room is what A4 and Letter share.
 */

/** Room for a page's content: 184 mm, and what is left of 11 in. */
export const LEAF = { width: 521, height: 711 } as const;

/** Points a cover may be high: the pattern has a page for it, the bench book goes on under its own. */
export const COVERS = {
  pattern: [LEAF.height],
  bench: [318, 285, 250, LEAF.height],
} as const satisfies Record<Book["purpose"], readonly number[]>;

export interface Type {
  size: number;
  line: number;
}

/** Sizes of letters and their lines. Nothing is smaller than 6 pt. */
export const TYPE = {
  body: { size: 8.8, line: 10.6 },
  small: { size: 7.6, line: 9.4 },
  lead: { size: 9.8, line: 13 },
  heading: { size: 10.6, line: 14 },
  title: { size: 14, line: 17 },
} as const satisfies Record<string, Type>;

/** Points between things. */
export const GAP = {
  block: 7,
  section: 10,
  /** Below the title of a section. */
  head: 5,
  /** The same two on a page that is tight. */
  closeBlock: 4,
  closeSection: 7,
  item: 2,
  step: 3,
  column: 14,
  card: 8,
  tick: 17,
  cell: 8,
  row: 4.4,
} as const;

/** The condensed face is nine tenths as wide as the one that is measured. */
const CONDENSED = 0.9;

/** Lines of texts that were broken before: pages are tried at several tightnesses, and then printed. */
const known = new Map<string, string[]>();
const MOST_KNOWN = 20_000;

/** A text broken into lines in the face of the book. */
export function linesIn(text: string, width: number, { size }: Type, bold = false): string[] {
  const key = `${width} ${size} ${bold} ${text}`;
  const found = known.get(key);
  if (found !== undefined) return found;
  const lines = wrap(text, width / CONDENSED, size, Number.POSITIVE_INFINITY, bold);
  if (known.size >= MOST_KNOWN) known.clear();
  known.set(key, lines);
  return lines;
}

/** How high a text stands. */
export function high(text: string, width: number, type: Type, bold = false): number {
  return Math.max(1, linesIn(text, width, type, bold).length) * type.line;
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

/** Size of a drawing in its own units, as a file of it would say. */
export function sizeOf({ width, height }: Scene): { width: number; height: number } {
  return { width: Number(width.toFixed(3)), height: Number(height.toFixed(3)) };
}

/** Points to the page unit of a drawing as wide as the page: 700 units and a margin on either side. */
export const PER_UNIT = LEAF.width / 720;

/** Room of a step's words, right of its box and number. */
export function stepRoom(width: number): number {
  return width - GAP.tick;
}

export function stepHigh(step: Step, width: number): number {
  const room = stepRoom(width);
  const inner = room - 10;
  const lines = (texts: readonly string[], type: Type): number =>
    sum(texts.map((text) => high(text, inner, type)));
  return (
    high(`${step.number ?? 99}. ${step.title}`, room, TYPE.body, step.light !== true) +
    (step.table === undefined ? 0 : tableHigh(step.table, room) + 4) +
    lines(step.details, TYPE.body) +
    sum(step.parts.map((part) => high(part.title, room, TYPE.small, true) + lines(part.details, TYPE.body))) +
    (step.where === "" ? 0 : high(step.where, room, TYPE.small)) +
    sum(step.warnings.map((text) => high(text, inner, TYPE.small))) +
    2 * GAP.step
  );
}

/** Heading of a group of steps. */
export function groupHigh({ title }: StepGroup, width: number): number {
  return title === "" ? 0 : high(title, width, TYPE.heading, true) + 5;
}

/** Widths of the columns of a table: short ones as wide as they must be, the first or the wordy share the rest. */
export function columnsOf({ columns, rows, ticks, widths }: Table, width: number): number[] {
  if (widths !== undefined) return widths;
  const room = width - (ticks.length > 0 ? GAP.tick : 0) - GAP.cell * (columns.length - 1);
  const wide = widthOf;
  const natural = columns.map(({ heading }, c) => {
    const words = heading.split(" ").map((word) => wide(word, TYPE.small, false));
    const cells = rows.map(
      (row) => wide(row[c]?.text ?? "", TYPE.body, true) + (row[c]?.swatch == null ? 0 : 13),
    );
    return Math.max(14, ...words, ...cells) + 2;
  });
  const wordy = columns.some((column, c) => c > 0 && column.wordy === true);
  const flexible = columns.map((column, c) => (c === 0 ? !wordy : column.wordy === true));
  const most = room * Math.max(0.22, 0.8 / columns.length);
  const fixed = natural.map((own, c) => (flexible[c] === true ? 0 : Math.min(own, most)));
  const noted = rows.some((row) => (row[0]?.notes.length ?? 0) > 0);
  const whole = sum(natural);
  // Short cells stand near one another: what is left of the width is shared by all columns.
  if (!wordy && !noted && whole <= room) return natural.map((own) => own + (room - whole) / natural.length);
  const rest = room - sum(fixed);
  const shares = flexible.filter(Boolean).length || 1;
  return fixed.map((own, c) => (flexible[c] === true ? Math.max(50, rest / shares) : own));
}

/** Width of one line in the face of the book. */
function widthOf(line: string, { size }: Type, bold = false): number {
  return textWidth(line, size, bold) * CONDENSED;
}

export function cellHigh(cell: Cell | undefined, width: number, bold: boolean): number {
  if (cell === undefined) return 0;
  const room = width - (cell.swatch === null ? 0 : 13);
  return high(cell.text, room, TYPE.body, bold) + sum(cell.notes.map((note) => high(note, room, TYPE.small)));
}

export function rowHigh(table: Table, r: number, widths: readonly number[]): number {
  const summed = table.summed && r === table.rows.length - 1;
  const cells = (table.rows[r] ?? []).map((cell, c) => cellHigh(cell, widths[c] ?? 50, c === 0 || summed));
  return Math.max(table.ticks.length > 0 ? 14 : 0, ...cells) + GAP.row;
}

/** Caption of a table as wide as this. */
export function captionHigh({ caption, captionSeen }: Table, width: number): number {
  return captionSeen ? high(caption, width, TYPE.heading, true) + 3 : 0;
}

/** Caption and headings. */
export function tableHead(table: Table, widths: readonly number[]): number {
  const headings = table.columns.map(({ heading }, c) => high(heading, widths[c] ?? 50, TYPE.small));
  const wide = sum(widths) + GAP.cell * (widths.length - 1) + (table.ticks.length > 0 ? GAP.tick : 0);
  return captionHigh(table, wide) + Math.max(...headings) + 3;
}

/** Shares of its width that the columns of a table take on paper with the gaps after them, the boxes to tick first. */
export function columnShares({ ticks }: Table, widths: readonly number[]): number[] {
  const wide = [
    ...(ticks.length > 0 ? [GAP.tick] : []),
    ...widths.map((own, c) => own + (c < widths.length - 1 ? GAP.cell : 0)),
  ];
  return wide.map((own) => own / sum(wide));
}

export function tableHigh(table: Table, width: number): number {
  const widths = columnsOf(table, width);
  return tableHead(table, widths) + sum(table.rows.map((_, r) => rowHigh(table, r, widths)));
}

/** Columns of a page: pictures and what is told of them keep to them. */
export const COLUMNS = PICTURE_COLUMNS;

/** Width of so many columns with what is between them. */
export function spanWidth(span: number): number {
  const one = (LEAF.width - (COLUMNS - 1) * GAP.card) / COLUMNS;
  return one * span + GAP.card * (span - 1);
}

/** Columns that hold a picture at its full size: one set smaller has letters that nobody reads. */
export function columnsFor({ width }: Pick<Card["pictures"][number], "width">): number {
  const least = Math.ceil((width * PER_UNIT - 0.5 + GAP.card) / (spanWidth(1) + GAP.card));
  return Math.min(COLUMNS, Math.max(1, least));
}

/** How a card is set where nobody chose: its words under its pictures. */
export function cardForm({ pictures, form }: Card): CardForm {
  if (form !== undefined) return form;
  const wide = sum(pictures.map(columnsFor));
  return { span: wide === 0 ? COLUMNS : Math.min(COLUMNS, Math.max(8, wide)), beside: null };
}

/** Pictures of a card in rows of so many columns. */
export function pictureRows({ pictures }: Pick<Card, "pictures">, span: number): Card["pictures"][] {
  const rows: Card["pictures"][] = [];
  let left = 0;
  for (const picture of pictures) {
    const own = columnsFor(picture);
    if (own > left) {
      rows.push([]);
      left = span;
    }
    rows.at(-1)?.push(picture);
    left -= own;
  }
  return rows;
}

export function pictureHigh({ height, caption }: Card["pictures"][number]): number {
  return height * PER_UNIT + (caption === "" ? 0 : TYPE.small.line);
}

export function cardLines({ number, lines }: Card): { text: string; inset: number }[] {
  return lines.map((line, i) => ({
    text: i === 0 && number !== "" ? `${number}. ${line.trim()}` : line.trim(),
    inset: line.startsWith(" ") ? 9 : 0,
  }));
}

export function cardHigh(card: Card): number {
  const { span, beside } = cardForm(card);
  const across = beside ?? span;
  const pictures = sum(pictureRows(card, across).map((row) => Math.max(...row.map(pictureHigh)) + 3));
  const room = spanWidth(beside === null ? span : span - beside);
  const words = sum(cardLines(card).map(({ text, inset }) => high(text, room - inset, TYPE.body)));
  return beside === null ? pictures + words + 2 : Math.max(pictures, words);
}

/** A rule about a tool that can hurt; the first of a tool stands under its name, which never ends a column. */
export interface CautionPart {
  tool: string | null;
  rule: string;
}

/** Cautions one under another: they fill three columns. */
export function cautionParts({ tools }: Block & { kind: "cautions" }): CautionPart[] {
  return tools.flatMap(({ tool, rules }) => rules.map((rule, i) => ({ tool: i === 0 ? tool : null, rule })));
}

/** Height of a tool's name over its first rule. */
export function toolHigh(tool: string | null, width: number): number {
  return tool === null ? 0 : high(tool, width, TYPE.body, true) + 1;
}

export function cautionHigh({ tool, rule }: CautionPart, width: number): number {
  return toolHigh(tool, width) + high(rule, width - 9, TYPE.small) + 1.5;
}

export const LABELS = { columns: 4, height: 48 } as const;

/** Letters of the uses on a label. */
export const LABEL_USE: Type = { size: 6.4, line: 7.8 };
/** Left of a label's words stands its letter. */
const LABEL_INSET = 38;

/** Uses that fit under the fabric, size and count of a label. */
export function labelUses({ uses, fabric, size, count }: Label, width: number): string[] {
  const room = width - LABEL_INSET;
  const head = high(fabric, room - 10, TYPE.small) + high(`${size} · ${count}`, room, TYPE.small, true);
  let left = LABELS.height - 6 - head;
  const fitting: string[] = [];
  for (const use of uses) {
    left -= high(use, room, LABEL_USE);
    if (left < 0) break;
    fitting.push(use);
  }
  return fitting;
}

export const FACT_COLUMNS = 4;

export function factHigh({ value }: Fact): number {
  const width = (LEAF.width - GAP.column * (FACT_COLUMNS - 1)) / FACT_COLUMNS;
  return TYPE.small.line + high(value, width, TYPE.body, true) + 3;
}

/** Points that a term in bold letters takes more than it is measured. */
const BOLDER = 10;

/** A term and what it means, run on: where its lines are broken is measured as if all were plain. */
export function termLines({ term, meaning }: { term: string; meaning: string }, width: number): string[] {
  return linesIn(`${term}: ${meaning}`, width - BOLDER, TYPE.small);
}

export function termHigh(entry: { term: string; meaning: string }, width: number): number {
  return termLines(entry, width).length * TYPE.small.line + 3;
}

/** Height of the head of a section. */
export function headHigh({ over, title, swatch }: Section): number {
  const small = over === "" ? 0 : TYPE.small.line;
  return small + high(title, (LEAF.width - (swatch === null ? 0 : 22)) * 0.9, TYPE.title, true) + GAP.head;
}

/** Height of a block that is not broken, at the width of the page. */
export function blockHigh(block: Block): number {
  const { width } = LEAF;
  switch (block.kind) {
    case "text":
      return high(
        block.text,
        width,
        TYPE[block.tone === "plain" ? "body" : block.tone === "lead" ? "lead" : "small"],
      );
    case "heading":
      return high(block.text, width - (block.tick === undefined ? 0 : GAP.tick), TYPE.heading, true) + 2;
    case "facts": {
      const rows = Array.from({ length: Math.ceil(block.facts.length / FACT_COLUMNS) }, (_, r) =>
        Math.max(...block.facts.slice(r * FACT_COLUMNS, (r + 1) * FACT_COLUMNS).map(factHigh)),
      );
      return sum(rows);
    }
    default:
      return 0;
  }
}
