import type { Template } from "../../plan/template-types.ts";
import type { Plan } from "../../plan/types.ts";
import type { Words } from "../../words/index.ts";
import { arrow } from "../scene/marks.ts";
import { textWidth } from "../scene/metrics.ts";
import { INK } from "../scene/palette.ts";
import type { SceneNode } from "../scene/scene.ts";
import { lineHeight, textIn } from "../scene/text.ts";
import { cleanText, shorten, wrap } from "../scene/text-fit.ts";
import type { Said } from "./template-head.ts";
import { type FullSize, fullSize, insideMarks, outlineLines, type Spot } from "./template-outline.ts";
import { countWords, fromWords, purposeWords } from "./template-words.ts";

/** A caption is at least this wide, so that it can be read beside a narrow template. */
const CAPTION = 230;
const NAME = 14;
const LINE = 9;
const SMALL = 8;
/** Room for a fabric's name inside a template, at the size of its counts. */
const NAME_ROOM = 150;
/** Room for a grain arrow beside a template too small to hold one. */
const BESIDE = 16;

/** One template with its caption above it, ready to be put anywhere. */
export interface Cell {
  template: Template;
  shape: FullSize;
  width: number;
  height: number;
  /** Height of the caption. */
  above: number;
  nodesAt: (x: number, y: number) => SceneNode[];
}

/** What stands above a template: its name, what it is cut from and how often, and what for. */
function captionOf(template: Template, plan: Plan, width: number, words: Words): Said[] {
  const lines = (text: string, size: number, most: number, bold = false): Said[] =>
    wrap(cleanText(text), width, size, most, bold).map((said) => ({ text: said, size, bold }));
  const uses = template.uses.flatMap((use) => [
    ...lines(`${fromWords(use, plan, words)}: ${countWords(use, words)}`, LINE, 3),
  ]);
  return [
    ...lines(template.name, NAME, 1, true),
    ...uses,
    ...lines(purposeWords(template, plan, words), SMALL, 3),
  ];
}

/** The same unbroken, for a column beside the template. */
export function captionBeside(template: Template, plan: Plan, words: Words): Said[] {
  return captionOf(template, plan, Number.POSITIVE_INFINITY, words);
}

/** A template by itself at a place, its corner at `x` and `y`. */
export function templateAlone(
  template: Template,
  plan: Plan,
  turned: boolean,
  [x, y]: Spot,
  words: Words,
): SceneNode[] {
  const shape = fullSize(template, turned);
  const room = { x: 0, y: 0, width: shape.width, height: shape.height };
  return [
    ...outlineLines(shape, x, y),
    ...insideMarks(shape, insideWords(template, plan, words), room, x, y).nodes,
  ];
}

/** What is written inside a template: counts for each letter, as short as can be. */
export function insideWords(template: Template, plan: Plan, words: Words): { name: string; more: string[] } {
  const more = template.uses.map((use) => {
    const letter = plan.fabrics[use.fabric]?.pieces[use.piece]?.letter ?? "";
    return `${shorten(cleanText(plan.fabrics[use.fabric]?.name ?? ""), NAME_ROOM, 8.5)} [${letter}]: ${countWords(use, words)}`;
  });
  return { name: template.name, more: more.slice(0, 4) };
}

/** The template at full size under its caption. */
export function templateCell(
  template: Template,
  plan: Plan,
  turned: boolean,
  most: number,
  words: Words,
): Cell {
  const shape = fullSize(template, turned);
  const inside = insideWords(template, plan, words);
  const room = { x: 0, y: 0, width: shape.width, height: shape.height };
  const { grainDrawn } = insideMarks(shape, inside, room, 0, 0);
  const drawnWide = shape.width + (grainDrawn ? 0 : BESIDE);
  const natural = captionOf(template, plan, most, words).map(({ text, size, bold }) =>
    textWidth(text, size, bold),
  );
  const width = Math.min(most, Math.max(drawnWide, Math.min(CAPTION, Math.max(...natural) + 2)) + 1);
  const caption = captionOf(template, plan, width, words);
  const above = caption.reduce((sum, { size }) => sum + lineHeight(size) + 1, 0) + 5;
  return {
    template,
    shape,
    width,
    height: above + shape.height + 2,
    above,
    nodesAt: (x, y) => {
      const nodes: SceneNode[] = [];
      let top = y;
      for (const { text, size, bold } of caption) {
        const frame = { x, y: top, width, height: lineHeight(size) + 1 };
        nodes.push(textIn(text, frame, { size, bold }));
        top += frame.height;
      }
      const [left, upper] = [x + 1, y + above];
      nodes.push(...outlineLines(shape, left, upper), ...insideMarks(shape, inside, room, left, upper).nodes);
      if (!grainDrawn) {
        const [ax, ay] = [left + shape.width + BESIDE / 2 + 2, upper + Math.max(9, shape.height / 2)];
        nodes.push(
          ...(shape.turned
            ? arrow([ax - 7, ay], [ax + 7, ay], INK, 2, 0.9)
            : arrow([ax, ay - 9], [ax, ay + 9], INK, 2, 0.9)),
        );
      }
      return nodes;
    },
  };
}
