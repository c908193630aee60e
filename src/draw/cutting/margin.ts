import { nth } from "../../length/nth.ts";
import { keyMark, numberMark } from "../scene/marks.ts";
import { textWidth } from "../scene/metrics.ts";
import { QUIET_INK, RULE } from "../scene/palette.ts";
import { path, type SceneNode } from "../scene/scene.ts";
import { lineHeight, textIn } from "../scene/text.ts";
import { spread } from "./labels.ts";

/** A label that stands beside the cloth and is tied to it by a fine line. */
export interface MarginLabel {
  /** Page place of what it speaks of: down the page, or across it for labels below the cloth. */
  target: number;
  mark: { kind: "number" | "key"; text: string } | null;
  lines: string[];
}

const PRINT = 9;
const MARK_HEIGHT = 12;
const LEADER = 12;
const AFTER_MARK = 4;
const GAP = 2;

function markWidth(label: MarginLabel): number {
  return label.mark === null ? 0 : Math.max(15, textWidth(label.mark.text, 8.5, true) + 7);
}

function depth(label: MarginLabel): number {
  const lines = label.lines.length * lineHeight(PRINT);
  return Math.max(label.mark === null ? 0 : MARK_HEIGHT, lines) + GAP;
}

/** Room the labels need away from the cloth. */
export function marginWidth(labels: readonly MarginLabel[]): number {
  const widths = labels.map((label) => {
    const print = Math.max(0, ...label.lines.map((text) => textWidth(text, PRINT)));
    return LEADER + markWidth(label) + (label.mark === null ? 0 : AFTER_MARK) + print + 1;
  });
  return Math.min(130, Math.max(0, ...widths));
}

function ordered(labels: readonly MarginLabel[]): MarginLabel[] {
  return [...labels].sort((a, b) => a.target - b.target);
}

/** Labels to the right of `edge`, none above `top`; they may run below the cloth, as far as `bottom`. */
export function labelsBeside(
  labels: readonly MarginLabel[],
  edge: number,
  top: number,
  width: number,
): { nodes: SceneNode[]; bottom: number } {
  const sorted = ordered(labels);
  const sizes = sorted.map((label) => ({ target: label.target, size: depth(label) }));
  const middles = spread(sizes, top);
  const nodes = sorted.flatMap((label, i): SceneNode[] => {
    const middle = nth(middles, i);
    const left = edge + LEADER;
    const inMark = markWidth(label);
    const leader = path(
      [
        [edge + 1, label.target],
        [edge + 4, label.target],
        [left - 3, middle],
        [left - 1, middle],
      ],
      false,
      { fill: "none", stroke: RULE, strokeWidth: 0.7 },
    );
    const box = { x: left, y: middle - MARK_HEIGHT / 2, width: inMark, height: MARK_HEIGHT };
    const { mark } = label;
    const marks =
      mark === null ? [] : mark.kind === "key" ? keyMark(mark.text, box) : numberMark(mark.text, box);
    const from = left + (mark === null ? 0 : inMark + AFTER_MARK);
    const high = lineHeight(PRINT);
    const first = middle - (label.lines.length * high) / 2;
    const print = label.lines.map((text, n) =>
      textIn(
        text,
        { x: from, y: first + n * high, width: edge + width - from, height: high },
        { size: PRINT, fill: mark === null ? QUIET_INK : "#1d2733" },
      ),
    );
    return [leader, ...marks, ...print];
  });
  const last = sizes.length - 1;
  return { nodes, bottom: last < 0 ? top : nth(middles, last) + nth(sizes, last).size / 2 };
}

/** Labels below `edge`, reading upwards, none left of `from`; for strips that stand on end. */
export function labelsBelow(
  labels: readonly MarginLabel[],
  edge: number,
  from: number,
  height: number,
): { nodes: SceneNode[]; right: number } {
  const sorted = ordered(labels);
  const sizes = sorted.map((label) => ({ target: label.target, size: Math.max(13, markWidth(label)) + GAP }));
  const middles = spread(sizes, from);
  const nodes = sorted.flatMap((label, i): SceneNode[] => {
    const middle = nth(middles, i);
    const top = edge + LEADER;
    const inMark = markWidth(label);
    const leader = path(
      [
        [label.target, edge + 1],
        [label.target, edge + 4],
        [middle, top - 3],
        [middle, top - 1],
      ],
      false,
      { fill: "none", stroke: RULE, strokeWidth: 0.7 },
    );
    const box = { x: middle - inMark / 2, y: top, width: inMark, height: MARK_HEIGHT };
    const marks = label.mark === null ? [] : numberMark(label.mark.text, box);
    const start = top + (label.mark === null ? 0 : MARK_HEIGHT + AFTER_MARK);
    const print = textIn(
      label.lines.join(" "),
      { x: middle - 6, y: start, width: 12, height: edge + height - start },
      { size: PRINT, anchor: "end" },
      true,
    );
    return [leader, ...marks, print];
  });
  const last = sizes.length - 1;
  return { nodes, right: last < 0 ? from : nth(middles, last) + nth(sizes, last).size / 2 };
}
