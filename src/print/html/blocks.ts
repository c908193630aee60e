import type { Block, Card, Cell, Label, Step, StepGroup, Table } from "../../content/book/content.ts";
import { toSvg } from "../../draw/scene/canvas.ts";
import { safeColour } from "../../draw/scene/palette.ts";
import type { Scene } from "../../draw/scene/scene.ts";
import type { Words } from "../../words/index.ts";
import {
  COLUMNS,
  cardForm,
  cardLines,
  columnShares,
  LABELS,
  LEAF,
  labelUses,
  pictureRows,
} from "../paper/measure.ts";
import { type Child, element, type Markup, trusted } from "./markup.ts";

/** A small square in a fabric's own colour. It says nothing that the name beside it does not. */
export function swatchMark(colour: string): Markup {
  const box = { x: 0.5, y: 0.5, width: 15, height: 15, rx: 3, fill: safeColour(colour) };
  return element(
    "svg",
    { class: "swatch", viewBox: "0 0 16 16", width: 16, height: 16, "aria-hidden": "true" },
    element("rect", { ...box, stroke: "currentColor" }),
  );
}

function paragraphs(texts: readonly string[], tag: string, className: string): Markup[] {
  return texts.map((text) => element(tag, { class: className, dir: "auto" }, text));
}

/** Boxes stand in the bench book only: a pattern is for many makers. */
function tickBox(id: string, ticked = true): Markup | null {
  if (!ticked) return null;
  return element("input", { type: "checkbox", class: "tick", id, "data-tick": true });
}

function cellMarkup(cell: Cell): Child {
  const name = element("span", { class: "said", dir: "auto" }, cell.text);
  const swatch = cell.swatch === null ? null : swatchMark(cell.swatch);
  return [swatch, name, paragraphs(cell.notes, "span", "note")];
}

function tableMarkup(table: Table, id: string): Markup {
  const ticked = table.ticks.length > 0;
  const head = table.columns.map(({ heading, align }) =>
    element("th", { scope: "col", class: align === "right" ? "number" : null }, heading),
  );
  const rows = table.rows.map((row, r) => {
    const sum = table.summed && r === table.rows.length - 1;
    const tick = table.ticks[r];
    const box =
      tick === undefined
        ? null
        : element(
            "label",
            { class: "tick-cell" },
            tickBox(`${id}-${r + 1}`),
            element("span", { class: "heard" }, tick),
          );
    const cells = row.map((cell, c) => {
      const column = table.columns[c];
      const classes = [column?.align === "right" ? "number" : "", column?.wordy === true ? "wordy" : ""];
      const shape = { class: classes.join(" ").trim() || null };
      if (c === 0) return element("th", { scope: "row", ...shape }, cellMarkup(cell));
      return element("td", { "data-heading": column?.heading ?? "", ...shape }, cellMarkup(cell));
    });
    const first = ticked ? element("td", { class: "ticks" }, box) : null;
    return element("tr", { class: sum ? "sum" : null }, first, cells);
  });
  const corner = ticked ? element("td", { class: "ticks" }) : null;
  return element(
    "table",
    { class: table.widths === undefined ? null : "measured" },
    element("caption", { class: table.captionSeen ? null : "heard" }, table.caption),
    // A browser would share the width otherwise than it was measured.
    table.widths === undefined
      ? null
      : element(
          "colgroup",
          {},
          columnShares(table, table.widths).map((share) => element("col", { class: shareClass(share) })),
        ),
    element("thead", {}, element("tr", {}, corner, head)),
    element("tbody", {}, rows),
  );
}

function stepMarkup(step: Step, ticked: boolean): Markup {
  const lines = (texts: readonly string[]) =>
    texts.length === 0
      ? null
      : element(
          "ul",
          { class: "then" },
          texts.map((text) => element("li", {}, text)),
        );
  return element(
    "li",
    { class: step.light === true ? "step light" : "step" },
    tickBox(step.id, ticked),
    element(
      "div",
      { class: "told" },
      element(
        ticked ? "label" : "p",
        ticked ? { for: step.id } : { class: "label-like" },
        element("span", { class: "count" }, `${step.number ?? ""}.`),
        " ",
        element("span", { class: "what" }, step.title),
      ),
      step.table === undefined ? null : tableMarkup(step.table, step.id),
      lines(step.details),
      step.parts.map(({ title, details }) =>
        element("div", { class: "part" }, element("p", { class: "where" }, title), lines(details)),
      ),
      step.where === "" ? null : element("p", { class: "where" }, step.where),
      paragraphs(step.warnings, "p", "warning"),
    ),
  );
}

function groupsMarkup(groups: readonly StepGroup[], ticked: boolean): Markup[] {
  return groups.map(({ title, steps }) =>
    element(
      "div",
      { class: "group" },
      title === "" ? null : element("h3", { dir: "auto" }, title),
      element(
        "ol",
        { class: "steps" },
        steps.map((step) => stepMarkup(step, ticked)),
      ),
    ),
  );
}

/** Tells how much of a section is done. */
export function progressMark(words: Words): Markup {
  return element("p", { class: "progress", role: "status", "data-progress": words.book.bench.progress });
}

/** A drawing as part of the page: the namespace is for files of their own. */
export function inlined(scene: Scene): Markup {
  return trusted(toSvg(scene).replace(' xmlns="http://www.w3.org/2000/svg"', ""));
}

function drawing(scene: Scene, label: string, id: string): Markup {
  return element(
    "figure",
    { class: "drawing", id: `${id}-figure`, "aria-label": label, tabindex: 0 },
    inlined(scene),
  );
}

/** Class of a picture of a step by its width, so that print knows it. */
export function widthClass(width: number): string {
  return `wide-${Math.round(width)}`;
}

function cardMarkup(card: Card): Markup {
  const { span, beside, low } = cardForm(card);
  const pictures = pictureRows(card, beside ?? span).flat();
  const wide = span * 2 > COLUMNS ? " wide" : "";
  return element(
    "div",
    {
      class: `card span-${span}${wide}${beside === null ? "" : ` aside of-${beside}`}${low === true ? " low" : ""}`,
    },
    pictures.length === 0
      ? null
      : element(
          "div",
          { class: "card-pictures" },
          pictures.map(({ scene, width, caption }) =>
            element(
              "figure",
              { class: widthClass(width) },
              caption === "" ? null : element("figcaption", {}, caption),
              inlined(scene),
            ),
          ),
        ),
    element(
      "div",
      { class: "card-words" },
      cardLines(card).map(({ text, inset }) => element("p", { class: inset > 0 ? "inset" : null }, text)),
    ),
  );
}

function labelMarkup(label: Label): Markup {
  const printed = new Set(labelUses(label, LEAF.width / LABELS.columns));
  return element(
    "li",
    { class: "label" },
    element("p", { class: "letter" }, label.letter),
    element(
      "div",
      {},
      element("p", { class: "fabric" }, swatchMark(label.colour), element("bdi", {}, label.fabric)),
      element("p", { class: "size" }, label.size),
      element("p", { class: "amount" }, label.count),
      label.uses.map((use) =>
        element("p", { class: printed.has(use) ? "use" : "use more", dir: "auto" }, use),
      ),
    ),
  );
}

/** Class of a column of a table by its share of the width, in thousandths, so that print knows it. */
function shareClass(share: number): string {
  return `share-${Math.round(share * 1000)}`;
}

const LIST_COLUMNS = { 1: "", 2: " two", 3: " two three" } as const;

function headingMarkup({ text, tick }: Extract<Block, { kind: "heading" }>, ticked: boolean): Child {
  if (tick === undefined || !ticked) return element("h3", {}, text);
  const label = element(
    "label",
    { class: "heading-tick" },
    tickBox(tick),
    " ",
    element("span", { class: "what" }, text),
  );
  return element("h3", { class: "ticked" }, label);
}

function cautionMarkup({ tool, rules }: Extract<Block, { kind: "cautions" }>["tools"][number]): Child {
  const items = rules.map((rule) => element("li", {}, rule));
  return element("div", { class: "caution" }, element("h3", {}, tool), element("ul", {}, items));
}

/** One block of a section as HTML; `id` starts the ids inside it, `ticked`: with boxes to tick. */
export function blockMarkup(block: Block, id: string, ticked: boolean, words: Words): Child {
  switch (block.kind) {
    case "text":
      return element("p", { class: block.tone, dir: "auto" }, block.text);
    case "heading":
      return headingMarkup(block, ticked);
    case "list":
      return element(
        "ul",
        { class: `plain-list${LIST_COLUMNS[block.columns ?? 1]}` },
        block.items.map((item) => element("li", {}, element("bdi", {}, item))),
      );
    case "facts":
      return element(
        "dl",
        { class: "facts" },
        block.facts.map(({ caption, value }) =>
          element("div", {}, element("dt", {}, caption), element("dd", {}, value)),
        ),
      );
    case "cautions":
      return element("div", { class: "cautions" }, block.tools.map(cautionMarkup));
    case "table":
      return element("div", { class: "table" }, tableMarkup(block.table, `${id}-row`));
    case "picture":
      return drawing(block.scene, words.book.bench.drawingArea, id);
    case "full-size":
      return element(
        "figure",
        { class: "full-size", "aria-label": words.book.templates.area, tabindex: 0 },
        inlined(block.scene),
      );
    case "steps":
      return element(
        "div",
        { class: block.columns === 2 ? "work two" : "work" },
        groupsMarkup(block.groups, ticked),
      );
    case "beside":
      return element(
        "div",
        { class: "beside" },
        drawing(block.scene, words.book.bench.drawingArea, id),
        element("div", { class: "work" }, groupsMarkup(block.groups, ticked)),
      );
    case "cards":
      return element("div", { class: "cards" }, block.cards.map(cardMarkup));
    case "labels":
      return element("ul", { class: "labels" }, block.labels.map(labelMarkup));
    case "terms":
      return element(
        "dl",
        { class: "terms" },
        block.terms.map(({ term, meaning }) =>
          element("div", {}, element("dt", {}, `${term}:`), " ", element("dd", {}, meaning)),
        ),
      );
  }
}
