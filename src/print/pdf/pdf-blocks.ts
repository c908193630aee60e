import type { Block, Label } from "../../content/book/content.ts";
import { safeColour } from "../../draw/scene/palette.ts";
import { DAY } from "../paper/inks.ts";
import {
  cautionHigh,
  cautionParts,
  FACT_COLUMNS,
  factHigh,
  GAP,
  high,
  LABEL_USE,
  LABELS,
  LEAF,
  labelUses,
  sizeOf,
  TYPE,
  termHigh,
  termLines,
  toolHigh,
} from "../paper/measure.ts";
import type { LaidBlock } from "../paper/paginate.ts";
import { drawingAt } from "./draw-scene.ts";
import { aside, marked, type Sheet, square, textAt, within } from "./sheet.ts";
import { drawCards, drawSteps, type Place } from "./steps.ts";
import { drawTable } from "./tables.ts";
import { lineWidth } from "./typesetter.ts";

/** Things in columns of this height, one column after another. */
function inColumns<T>(
  parts: readonly T[],
  columns: number,
  at: Place & { height: number },
  highOf: (part: T, width: number) => number,
  draw: (part: T, place: Place) => void,
): void {
  const width = (at.width - GAP.column * (columns - 1)) / columns;
  let [column, y] = [0, at.y];
  for (const part of parts) {
    const own = highOf(part, width);
    if (y > at.y && y + own > at.y + at.height + 0.5 && column < columns - 1)
      [column, y] = [column + 1, at.y];
    draw(part, { x: at.x + column * (width + GAP.column), y, width });
    y += own;
  }
}

function drawLabel(sheet: Sheet, label: Label, { x, y, width }: Place): void {
  const { document } = sheet;
  aside(sheet, () => {
    document.save().lineWidth(0.8).dash(3, { space: 2.5 }).strokeColor(DAY.quiet);
    document.rect(x, y, width, LABELS.height).stroke().restore();
    square(sheet, x + 34, y + 6, 7, safeColour(label.colour));
  });
  marked(sheet, "P", () => {
    document.save();
    document.rect(x + 2, y + 2, width - 4, LABELS.height - 4).clip();
    const large = { size: label.letter.length > 1 ? 15 : 21, line: 26 };
    textAt(sheet, label.letter, { x: x + 6, y: y + 3, width: 40 }, large, { title: true });
    const room = width - 38;
    const name = label.fabric.length > 40 ? `${label.fabric.slice(0, 39)}…` : label.fabric;
    let at = textAt(sheet, name, { x: x + 44, y: y + 4, width: room - 10 }, TYPE.small);
    at = textAt(sheet, `${label.size} · ${label.count}`, { x: x + 34, y: at, width: room }, TYPE.small, {
      bold: true,
    });
    for (const use of labelUses(label, width))
      at = textAt(sheet, use, { x: x + 34, y: at, width: room }, LABEL_USE, { colour: DAY.quiet });
    document.restore();
  });
}

type BlockOf<K extends LaidBlock["block"]["kind"]> = Extract<LaidBlock["block"], { kind: K }>;

function drawText(sheet: Sheet, { text, tone }: BlockOf<"text">, at: Place): void {
  const type = TYPE[tone === "plain" ? "body" : tone === "lead" ? "lead" : "small"];
  const colour = tone === "quiet" ? DAY.quiet : DAY.ink;
  marked(sheet, "P", () => textAt(sheet, text, at, type, { colour }));
}

function drawHeading(sheet: Sheet, { text, tick }: BlockOf<"heading">, at: Place, ticked: boolean): void {
  const inset = tick === undefined ? 0 : GAP.tick;
  if (inset > 0 && ticked) aside(sheet, () => square(sheet, at.x, at.y + 2, 10, null));
  const place = { ...at, x: at.x + (ticked ? inset : 0), width: at.width - inset };
  marked(sheet, "H3", () => textAt(sheet, text, place, TYPE.heading, { bold: true }));
}

function drawList(
  sheet: Sheet,
  { items, columns = 1 }: BlockOf<"list">,
  at: Place & { height: number },
): void {
  within(sheet, "L", () =>
    inColumns(
      items,
      columns,
      at,
      (item, width) => high(item, width - 10, TYPE.body) + GAP.item,
      (item, { x, y, width }) => {
        aside(sheet, () => textAt(sheet, "•", { x: x + 1, y, width: 9 }, TYPE.body, { colour: DAY.quiet }));
        within(sheet, "LI", () =>
          marked(sheet, "LBody", () => textAt(sheet, item, { x: x + 10, y, width: width - 10 }, TYPE.body)),
        );
      },
    ),
  );
}

function drawLabels(sheet: Sheet, { labels }: BlockOf<"labels">, at: Place): void {
  const width = LEAF.width / LABELS.columns;
  for (const [i, label] of labels.entries()) {
    const [row, column] = [Math.floor(i / LABELS.columns), i % LABELS.columns];
    drawLabel(sheet, label, { x: at.x + column * width, y: at.y + row * LABELS.height, width });
  }
}

/** One block of a page at its place; `ticked`: with boxes to tick. */
export function drawBlock(sheet: Sheet, { block, height, scale }: LaidBlock, ticked: boolean): void {
  const at = { x: sheet.left, y: sheet.y, width: LEAF.width, height };
  switch (block.kind) {
    case "text":
      drawText(sheet, block, at);
      break;
    case "heading":
      drawHeading(sheet, block, at, ticked);
      break;
    case "list":
      drawList(sheet, block, at);
      break;
    case "facts":
      drawFacts(sheet, block, at);
      break;
    case "cautions":
      drawCautions(sheet, block, at);
      break;
    case "table":
      drawTable(sheet, block.table, at);
      break;
    case "picture":
    case "full-size": {
      const wide = sizeOf(block.scene).width * scale;
      const x = (sheet.document.page.width - wide) / 2;
      drawingAt(sheet, block.scene, block.kind === "picture" ? Math.max(at.x, x) : x, at.y, scale);
      break;
    }
    case "steps":
      drawSteps(sheet, block.groups, at, block.columns ?? 1, ticked);
      break;
    case "beside": {
      const wide = sizeOf(block.scene).width * scale;
      drawingAt(sheet, block.scene, at.x, at.y, scale);
      const right = { ...at, x: at.x + wide + GAP.column, width: at.width - wide - GAP.column };
      drawSteps(sheet, block.groups, right, 1, ticked);
      break;
    }
    case "cards":
      drawCards(sheet, block.cards, at);
      break;
    case "labels":
      drawLabels(sheet, block, at);
      break;
    case "terms":
      inColumns(block.terms, 3, at, termHigh, (entry, place) =>
        marked(sheet, "P", () => drawTerm(sheet, entry, place)),
      );
      break;
  }
}

/** The term in bold, what it means run on after it. */
function drawTerm(sheet: Sheet, entry: { term: string; meaning: string }, { x, y, width }: Place): void {
  const head = `${entry.term}:`;
  const lines = termLines(entry, width);
  const runOn = lines[0]?.startsWith(head) === true;
  for (const [i, line] of lines.entries()) {
    const at = { x, y: y + i * TYPE.small.line, width: Number.POSITIVE_INFINITY };
    if (i > 0 || !runOn) textAt(sheet, line, at, TYPE.small, { bold: !runOn && i === 0 });
    else {
      textAt(sheet, head, at, TYPE.small, { bold: true });
      const inset = lineWidth(sheet.setter, `${head} `, "bodyBold", TYPE.small.size);
      textAt(sheet, line.slice(head.length).trimStart(), { ...at, x: x + inset }, TYPE.small);
    }
  }
}

function drawFacts(sheet: Sheet, { facts }: Block & { kind: "facts" }, at: Place): void {
  const width = (at.width - GAP.column * (FACT_COLUMNS - 1)) / FACT_COLUMNS;
  let { y } = at;
  for (let first = 0; first < facts.length; first += FACT_COLUMNS) {
    const row = facts.slice(first, first + FACT_COLUMNS);
    for (const [c, { caption, value }] of row.entries()) {
      const place = { x: at.x + c * (width + GAP.column), y, width };
      marked(sheet, "P", () => {
        const down = textAt(sheet, caption, place, TYPE.small, { colour: DAY.quiet });
        textAt(sheet, value, { ...place, y: down }, TYPE.body, { bold: true });
      });
    }
    y += Math.max(...row.map(factHigh));
  }
}

function drawCautions(
  sheet: Sheet,
  block: Block & { kind: "cautions" },
  at: Place & { height: number },
): void {
  inColumns(cautionParts(block), 3, at, cautionHigh, ({ tool, rule }, { x, y, width }) => {
    if (tool !== null)
      marked(sheet, "H3", () =>
        textAt(sheet, tool, { x, y, width }, TYPE.body, { bold: true, colour: DAY.alarm }),
      );
    const under = y + toolHigh(tool, width);
    aside(sheet, () => textAt(sheet, "•", { x, y: under, width: 9 }, TYPE.small, { colour: DAY.alarm }));
    marked(sheet, "P", () => textAt(sheet, rule, { x: x + 9, y: under, width: width - 9 }, TYPE.small));
  });
}
