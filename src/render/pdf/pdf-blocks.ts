import type { Block, Label, Step, StepGroup, Table } from "../book/content.ts";
import { DAY } from "../book/style.ts";
import { bookWords } from "../book/words.ts";
import { safeColour } from "../svg/palette.ts";
import {
  drawing,
  ensure,
  fullSizePage,
  heightOf,
  paragraph,
  rule,
  type Sheet,
  square,
  textAt,
} from "./sheet.ts";
import { drawTable } from "./tables.ts";

const BODY = 9.5;
const SMALL = 8;

/** Every line of a step with where it stands, so that a step is measured before it is drawn. */
function stepLines(
  step: Step,
  number: number,
): { text: string; indent: number; size: number; bold: boolean; colour: string }[] {
  const base = { size: BODY, bold: false, colour: DAY.ink };
  const then = (details: readonly string[]) =>
    details.map((text) => ({ ...base, text: `→ ${text}`, indent: 30 }));
  return [
    { ...base, text: `${number}. ${step.title}`, indent: 22, bold: true },
    ...then(step.details),
    ...step.parts.flatMap(({ title, details }) => [
      { ...base, text: title, indent: 22, size: SMALL, bold: true },
      ...then(details),
    ]),
    ...(step.where === "" ? [] : [{ ...base, text: step.where, indent: 22, size: SMALL, colour: DAY.quiet }]),
    ...step.warnings.map((text) => ({ ...base, text, indent: 30, size: SMALL, colour: DAY.alarm })),
  ];
}

/** About as high as a row of a table is. */
const ROW = 20;
const STEP_INDENT = 22;

function drawInStep(sheet: Sheet, table: Table): void {
  const { left, width } = sheet;
  sheet.y += 3;
  sheet.left = left + STEP_INDENT;
  sheet.width = width - STEP_INDENT;
  drawTable(sheet, table);
  sheet.left = left;
  sheet.width = width;
}

function drawSteps(sheet: Sheet, groups: readonly StepGroup[]): void {
  let number = 0;
  for (const { title, steps } of groups) {
    if (title !== "") heading(sheet, title);
    for (const step of steps) {
      number += 1;
      const lines = stepLines(step, number);
      const heights = lines.map(({ text, ...style }) => heightOf(sheet, text, style));
      const tableHigh = step.table === undefined ? 0 : (step.table.rows.length + 2) * ROW;
      ensure(
        sheet,
        Math.min(
          heights.reduce((sum, high) => sum + high + 1, 12 + tableHigh),
          sheet.bottom - sheet.top,
        ),
      );
      rule(sheet, sheet.y);
      sheet.y += 5;
      square(sheet, sheet.left, sheet.y, 13, null);
      for (const [i, { text, ...style }] of lines.entries()) {
        paragraph(sheet, text, { ...style, after: 1 });
        if (i === 0 && step.table !== undefined) drawInStep(sheet, step.table);
      }
      sheet.y += 5;
    }
  }
}

/** The steps at the mat under their heading. */
export function drawBenchSteps(sheet: Sheet, groups: readonly StepGroup[]): void {
  heading(sheet, bookWords.cutting.steps);
  drawSteps(sheet, groups);
}

function heading(sheet: Sheet, text: string): void {
  ensure(sheet, 60);
  sheet.y += 6;
  paragraph(sheet, text, { size: 11, bold: true, after: 4 });
}

/** Items in columns of equal width, row by row; a row is never broken. */
function grid(
  sheet: Sheet,
  columns: number,
  count: number,
  draw: (i: number, x: number, y: number, width: number, measure: boolean) => number,
): void {
  const gap = 14;
  const width = (sheet.width - gap * (columns - 1)) / columns;
  for (let first = 0; first < count; first += columns) {
    const cells = Array.from({ length: Math.min(columns, count - first) }, (_, c) => ({
      i: first + c,
      x: sheet.left + c * (width + gap),
    }));
    const high = Math.max(...cells.map(({ i, x }) => draw(i, x, sheet.y, width, true)));
    ensure(sheet, high);
    for (const { i, x } of cells) draw(i, x, sheet.y, width, false);
    sheet.y += high + 8;
  }
}

/** Texts one under another in a cell; their height. */
function stack(
  sheet: Sheet,
  x: number,
  y: number,
  width: number,
  measure: boolean,
  lines: readonly { text: string; size: number; bold?: boolean; colour?: string }[],
): number {
  let at = y;
  for (const { text, ...style } of lines) {
    const high = heightOf(sheet, text, { ...style, width });
    if (!measure) textAt(sheet, text, x, at, { ...style, width });
    at += high + 1;
  }
  return at - y;
}

const LABEL = { columns: 3, height: 94 };

/** Bag labels between dashed lines; long names are cut off at the label's edge. */
function drawLabels(sheet: Sheet, labels: readonly Label[]): void {
  const { document } = sheet;
  const width = sheet.width / LABEL.columns;
  for (const [i, label] of labels.entries()) {
    const column = i % LABEL.columns;
    if (column === 0) ensure(sheet, LABEL.height);
    const x = sheet.left + column * width;
    document.save().lineWidth(0.8).dash(3, { space: 2.5 }).strokeColor(DAY.quiet);
    document.rect(x, sheet.y, width, LABEL.height).stroke().restore();
    document
      .save()
      .rect(x + 3, sheet.y + 3, width - 6, LABEL.height - 6)
      .clip();
    textAt(sheet, label.letter, x + 9, sheet.y + 8, {
      size: label.letter.length > 1 ? 19 : 28,
      title: true,
      width: 44,
    });
    square(sheet, x + 48, sheet.y + 11, 8, safeColour(label.colour));
    const name = { size: SMALL, width: width - 70 };
    const cut = label.fabric.length > 60 ? `${label.fabric.slice(0, 59)}…` : label.fabric;
    textAt(sheet, cut, x + 60, sheet.y + 10, name);
    stack(sheet, x + 48, sheet.y + 12 + heightOf(sheet, cut, name), width - 56, false, [
      { text: label.size, size: BODY, bold: true },
      { text: label.count, size: BODY },
      ...label.uses.map((text) => ({ text, size: 7, colour: DAY.quiet })),
    ]);
    document.restore();
    if (column === LABEL.columns - 1 || i === labels.length - 1) sheet.y += LABEL.height;
  }
  sheet.y += 10;
}

/** One block of a section on paper. */
export function drawBlock(sheet: Sheet, block: Block): void {
  const whole = { width: sheet.width, height: sheet.bottom - sheet.top - 40 };
  switch (block.kind) {
    case "text": {
      const quiet = block.tone === "quiet";
      paragraph(sheet, block.text, {
        size: quiet ? SMALL : block.tone === "lead" ? 10.5 : BODY,
        colour: quiet ? DAY.quiet : DAY.ink,
        after: 7,
      });
      break;
    }
    case "heading":
      heading(sheet, block.text);
      break;
    case "list":
      for (const item of block.items) {
        ensure(sheet, Math.min(60, heightOf(sheet, item, { size: BODY, indent: 12 })));
        textAt(sheet, "•", sheet.left, sheet.y, { size: BODY });
        paragraph(sheet, item, { size: BODY, indent: 12, after: 3 });
      }
      sheet.y += 4;
      break;
    case "facts":
      grid(sheet, 3, block.facts.length, (i, x, y, width, measure) => {
        const { caption = "", value = "" } = block.facts[i] ?? {};
        return stack(sheet, x, y, width, measure, [
          { text: caption, size: SMALL, colour: DAY.quiet },
          { text: value, size: 10.5, bold: true },
        ]);
      });
      break;
    case "cautions":
      grid(sheet, 3, block.tools.length, (i, x, y, width, measure) => {
        const { tool = "", rules = [] } = block.tools[i] ?? {};
        return stack(sheet, x, y, width, measure, [
          { text: tool, size: BODY, bold: true, colour: DAY.alarm },
          ...rules.map((rule) => ({ text: `• ${rule}`, size: 8.6 })),
        ]);
      });
      break;
    case "table":
      drawTable(sheet, block.table);
      break;
    case "picture":
      drawing(sheet, block.svg, whole, { snug: true });
      break;
    case "full-size":
      fullSizePage(sheet, block.svg);
      break;
    case "bench":
      drawing(sheet, block.svg, whole);
      drawTable(sheet, block.table);
      drawBenchSteps(sheet, block.groups);
      break;
    case "steps":
      drawSteps(sheet, block.groups);
      break;
    case "labels":
      drawLabels(sheet, block.labels);
      break;
    case "terms":
      grid(sheet, 3, block.terms.length, (i, x, y, width, measure) => {
        const { term = "", meaning = "" } = block.terms[i] ?? {};
        return stack(sheet, x, y, width, measure, [
          { text: term, size: BODY, bold: true },
          { text: meaning, size: 8.6 },
        ]);
      });
      break;
  }
}
