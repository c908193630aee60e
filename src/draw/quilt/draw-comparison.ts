import type { Comparison } from "../../choices/methods/comparison.ts";
import type { Figures } from "../../choices/methods/making-figures.ts";
import { money } from "../../content/buying/money.ts";
import type { Words } from "../../words/index.ts";
import { toSvg } from "../scene/canvas.ts";
import { PAGE_WIDTH } from "../scene/frame.ts";
import { INK, QUIET_INK, RULE } from "../scene/palette.ts";
import { onPaper } from "../scene/paper.ts";
import { line, rect, type Scene, type SceneNode } from "../scene/scene.ts";
import { textIn } from "../scene/text.ts";
import { cleanText, wrap } from "../scene/text-fit.ts";

/** One thing that is measured, on one scale in all panels. */
interface Measure {
  caption: string;
  of: (figures: Figures) => number;
  said: (value: number) => string;
}

/** One choice. */
interface Panel {
  over: string;
  name: string;
  /** Null when it cannot be made so; `why` then says why. */
  figures: Figures | null;
  why: string;
}

const COLUMNS = 3;
const GAP = 18;
const ROW = 17;
const HEAD = 34;
const BELOW = 14;
const CAPTION = 62;
const VALUE = 52;
const WIDTH = (PAGE_WIDTH - (COLUMNS - 1) * GAP) / COLUMNS;

/** Bars are one middle grey, which holds its own in print; the file's own way is a line across them. */
const BAR = "#8a939c";
const LESS = "#4a545e";

const SQUARE_METRE = 640_000 ** 2;
const SQUARE_YARD = 585_216 ** 2;

function measuresOf({ measure, currency }: Comparison, inches: boolean, words: Words): Measure[] {
  const buy: Measure =
    measure === "cost"
      ? {
          caption: words.drawings.comparison.price,
          of: ({ cost }) => cost ?? 0,
          said: (value) => money(value, currency, words),
        }
      : {
          caption: words.drawings.comparison.cloth,
          of: ({ bought }) => bought,
          said: (value) =>
            words.drawings.comparison.area(
              (value / (inches ? SQUARE_YARD : SQUARE_METRE)).toFixed(2),
              inches,
            ),
        };
  return [
    buy,
    {
      caption: words.drawings.comparison.time,
      of: ({ minutes }) => minutes,
      said: words.drawings.comparison.hours,
    },
    {
      caption: words.drawings.comparison.cuts,
      of: ({ strips, subcuts, apart }) => strips + subcuts + apart,
      said: String,
    },
    { caption: words.drawings.comparison.seams, of: ({ seams }) => seams, said: String },
    { caption: words.drawings.comparison.bias, of: ({ biasEdges }) => biasEdges, said: String },
  ];
}

function panelsOf({ best, filed, rows, units }: Comparison, words: Words): Panel[] {
  const chosen = Object.keys(best.methods).length;
  return [
    { over: words.drawings.comparison.whole, name: words.drawings.comparison.filed, figures: filed, why: "" },
    ...(chosen === 0
      ? []
      : [
          {
            over: words.drawings.comparison.whole,
            name: words.drawings.comparison.best,
            figures: best.figures,
            why: "",
          },
        ]),
    // The way of the file has its panel already.
    ...rows.flatMap(({ unit, method, filed: own, figures, why }): Panel[] => {
      const used = units.find((one) => one.unit === unit)?.filed ?? [];
      return own
        ? []
        : [
            {
              over: words.drawings.comparison.unit(words.unitNames.unit(unit), used),
              name: method,
              figures,
              why: why === null ? "" : words.whyNot(why),
            },
          ];
    }),
  ];
}

function panelNodes(
  panel: Panel,
  filed: Figures,
  measures: readonly (Measure & { most: number })[],
  at: { x: number; y: number },
  words: Words,
): SceneNode[] {
  const { x, y } = at;
  const nodes: SceneNode[] = [
    line(x, y, x + WIDTH, y, { stroke: RULE, strokeWidth: 1 }),
    textIn(cleanText(panel.over), { x, y: y + 3, width: WIDTH, height: 12 }, { size: 9, fill: QUIET_INK }),
    textIn(cleanText(panel.name), { x, y: y + 15, width: WIDTH, height: 15 }, { size: 11, bold: true }),
  ];
  const { figures } = panel;
  if (figures === null) {
    const lines = wrap(cleanText(`${words.drawings.comparison.not} ${panel.why}`), WIDTH, 9, 6);
    for (const [i, text] of lines.entries()) {
      nodes.push(textIn(text, { x, y: y + HEAD + i * 13, width: WIDTH, height: 13 }, { size: 9 }));
    }
    return nodes;
  }
  const room = WIDTH - CAPTION - VALUE - 6;
  for (const [i, { caption, of, said, most }] of measures.entries()) {
    const top = y + HEAD + i * ROW;
    const value = of(figures);
    const wide = most === 0 ? 0 : (value / most) * room;
    const own = most === 0 ? 0 : (of(filed) / most) * room;
    const left = x + CAPTION;
    const bar = { x: left, y: top + 3, width: wide, height: ROW - 7 };
    const frame = { y: top, height: ROW - 1 };
    nodes.push(
      textIn(caption, { x, width: CAPTION - 4, ...frame }, { size: 9 }),
      ...(wide > 0 ? [rect(bar, { fill: value < of(filed) ? LESS : BAR })] : []),
      line(left, top + 1, left, top + ROW - 2, { stroke: RULE, strokeWidth: 1 }),
      line(left + own, top, left + own, top + ROW - 1, { stroke: INK, strokeWidth: 1.6 }),
      textIn(
        said(value),
        { x: left + room + 6, width: VALUE, ...frame },
        { size: 9, bold: value < of(filed), anchor: "end" },
      ),
    );
  }
  return nodes;
}

/**
 * Ways of making side by side: a panel for each choice, all bars of one kind on one scale, the way the file has it
 * as a line across every bar.
 */
export function drawComparison(comparison: Comparison, inches: boolean, words: Words): string {
  return toSvg(comparisonScene(comparison, inches, words));
}

export function comparisonScene(comparison: Comparison, inches: boolean, words: Words): Scene {
  const panels = panelsOf(comparison, words);
  const shown = panels.flatMap(({ figures }) => (figures === null ? [] : [figures]));
  const measures = measuresOf(comparison, inches, words)
    .map((measure) => ({ ...measure, most: Math.max(...shown.map(measure.of)) }))
    .filter(({ most }) => most > 0);
  const title = cleanText(words.drawings.comparison.title(comparison.name));
  const height = HEAD + measures.length * ROW + BELOW;
  const legend = wrap(words.drawings.comparison.legend, PAGE_WIDTH, 9.5, 3);
  const top = 24 + legend.length * 13 + 6;
  const nodes: SceneNode[] = [
    textIn(title, { x: 0, y: 0, width: PAGE_WIDTH, height: 20 }, { size: 15, bold: true }),
    ...legend.map((text, i) =>
      textIn(text, { x: 0, y: 22 + i * 13, width: PAGE_WIDTH, height: 13 }, { size: 9.5, fill: QUIET_INK }),
    ),
    ...panels.flatMap((panel, i) =>
      panelNodes(
        panel,
        comparison.filed,
        measures,
        {
          x: (i % COLUMNS) * (WIDTH + GAP),
          y: top + Math.floor(i / COLUMNS) * height,
        },
        words,
      ),
    ),
  ];
  const bottom = top + Math.ceil(panels.length / COLUMNS) * height;
  return {
    idPrefix: "compare-",
    title,
    description: words.drawings.comparison.description(panels.length),
    ...onPaper(nodes, bottom),
  };
}
