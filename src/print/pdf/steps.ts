import type { Card, Step, StepGroup } from "../../content/book/content.ts";
import { nth } from "../../length/nth.ts";
import { cardRows } from "../paper/break-block.ts";
import { DAY } from "../paper/inks.ts";
import {
  cardForm,
  cardHigh,
  cardLines,
  columnsFor,
  GAP,
  groupHigh,
  PER_UNIT,
  pictureHigh,
  pictureRows,
  spanWidth,
  stepHigh,
  stepRoom,
  TYPE,
  tableHigh,
} from "../paper/measure.ts";
import { drawingAt } from "./draw-scene.ts";
import { aside, marked, rule, type Sheet, square, textAt, within } from "./sheet.ts";
import { drawTable } from "./tables.ts";

export interface Place {
  x: number;
  y: number;
  width: number;
}

function drawStep(sheet: Sheet, step: Step, at: Place, ticked: boolean): void {
  aside(sheet, () => {
    rule(sheet, at);
    if (ticked) square(sheet, at.x, at.y + GAP.step + 1, 10, null);
  });
  const left = at.x + GAP.tick;
  const room = stepRoom(at.width);
  let y = at.y + GAP.step;
  within(sheet, "LI", () => {
    marked(sheet, "LBody", () => {
      y = textAt(sheet, `${step.number ?? ""}. ${step.title}`, { x: left, y, width: room }, TYPE.body, {
        bold: step.light !== true,
      });
    });
    if (step.table !== undefined) {
      drawTable(sheet, step.table, { x: left, y: y + 2, width: room });
      y += tableHigh(step.table, room) + 4;
    }
    const details = (texts: readonly string[]): void => {
      for (const text of texts) {
        aside(sheet, () => textAt(sheet, "→", { x: left, y, width: 12 }, TYPE.small, { colour: DAY.quiet }));
        marked(sheet, "LBody", () => {
          y = textAt(sheet, text, { x: left + 10, y, width: room - 10 }, TYPE.body);
        });
      }
    };
    details(step.details);
    for (const part of step.parts) {
      marked(sheet, "LBody", () => {
        y = textAt(sheet, part.title, { x: left, y, width: room }, TYPE.small, { bold: true });
      });
      details(part.details);
    }
    const quiet = (text: string, inset: number, colour: string): void =>
      marked(sheet, "LBody", () => {
        y = textAt(sheet, text, { x: left + inset, y, width: room - inset }, TYPE.small, { colour });
      });
    if (step.where !== "") quiet(step.where, 0, DAY.quiet);
    for (const text of step.warnings) quiet(text, 10, DAY.alarm);
  });
}

/** Groups of one step or more, one under another; where the next would go. */
function drawColumn(sheet: Sheet, groups: readonly StepGroup[], at: Place, ticked: boolean): void {
  let { y } = at;
  for (const group of groups) {
    if (group.title !== "") {
      marked(sheet, "H3", () =>
        textAt(sheet, group.title, { ...at, y: y + 2 }, TYPE.heading, { bold: true }),
      );
      y += groupHigh(group, at.width);
    }
    within(sheet, "L", () => {
      for (const step of group.steps) {
        drawStep(sheet, step, { ...at, y }, ticked);
        y += stepHigh(step, at.width);
      }
    });
  }
}

/** One step after another, in columns of this height. */
export function drawSteps(
  sheet: Sheet,
  groups: readonly StepGroup[],
  at: Place & { height: number },
  columns: number,
  ticked: boolean,
): void {
  const width = (at.width - GAP.column * (columns - 1)) / columns;
  const one = groups.flatMap(({ title, steps }) =>
    steps.map((step, i) => ({ title: i === 0 ? title : "", steps: [step] })),
  );
  let [column, used] = [0, 0];
  const filled: StepGroup[][] = [[]];
  for (const group of one) {
    const own = groupHigh(group, width) + stepHigh(nth(group.steps, 0), width);
    if (used > 0 && used + own > at.height + 0.5 && column < columns - 1) {
      [column, used] = [column + 1, 0];
      filled.push([]);
    }
    used += own;
    filled.at(-1)?.push(group);
  }
  for (const [c, some] of filled.entries())
    drawColumn(sheet, some, { x: at.x + c * (width + GAP.column), y: at.y, width }, ticked);
}

function drawCard(sheet: Sheet, card: Card, at: Place): void {
  const { span, beside } = cardForm(card);
  let { y } = at;
  const lines = (x: number, from: number, width: number): void => {
    let down = from;
    for (const { text, inset } of cardLines(card)) {
      marked(sheet, "P", () => {
        down = textAt(sheet, text, { x: x + inset, y: down, width: width - inset }, TYPE.body);
      });
    }
  };
  within(sheet, "Div", () => {
    for (const row of pictureRows(card, beside ?? span)) {
      let { x } = at;
      for (const picture of row) {
        if (picture.caption !== "")
          marked(sheet, "P", () =>
            textAt(sheet, picture.caption, { x, y, width: picture.width * PER_UNIT }, TYPE.small, {
              bold: true,
            }),
          );
        drawingAt(sheet, picture.scene, x, y + pictureHigh(picture) - picture.height * PER_UNIT, PER_UNIT);
        x += spanWidth(columnsFor(picture)) + GAP.card;
      }
      y += Math.max(...row.map(pictureHigh)) + 3;
    }
    if (beside === null) lines(at.x, y, spanWidth(span));
    else lines(at.x + spanWidth(beside) + GAP.card, at.y, spanWidth(span - beside));
  });
}

/** Cards in rows of columns, in order. */
export function drawCards(sheet: Sheet, cards: readonly Card[], at: Place): void {
  let { y } = at;
  for (const row of cardRows(cards)) {
    const high = Math.max(...row.map(cardHigh));
    let { x } = at;
    for (const card of row) {
      const { span, low } = cardForm(card);
      const top = low === true ? y + high - cardHigh(card) : y;
      drawCard(sheet, card, { x, y: top, width: spanWidth(span) });
      x += spanWidth(span) + GAP.card;
    }
    y += high + GAP.card;
  }
}
