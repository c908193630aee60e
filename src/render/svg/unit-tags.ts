import type { Making, UnitInPlace } from "../../making/types.ts";
import { textWidth } from "./metrics.ts";
import { INK, PAPER } from "./palette.ts";
import { type Box, rect, type SceneNode } from "./scene.ts";
import { textIn } from "./text.ts";

/** Page units of a tag's letters: 6 pt where a drawing is set among words. */
const SIZE = 8.4;
const HIGH = 10.4;

/** What the words call a unit in its place: its heap, or the bag of a single patch; empty where nothing does. */
export function tagOfUnit(place: UnitInPlace | null | undefined, making: Making): string {
  const unit = place == null ? undefined : making.units[place.unit];
  const heap = place == null ? undefined : unit?.heaps[place.heap];
  if (unit === undefined || heap === undefined) return "";
  if (unit.steps.length > 0) return heap.name;
  const [patch, more] = heap.patches;
  return more === undefined ? (patch?.letters.join("/") ?? "") : "";
}

/** A name on a small ground of its own in the middle of the lower edge of what it names; none where it does not fit. */
export function tag(text: string, box: Box): SceneNode[] {
  const width = textWidth(text, SIZE, true) + 5;
  if (text === "" || width > box.width - 2 || HIGH > box.height - 2) return [];
  const own = {
    x: box.x + (box.width - width) / 2,
    y: box.y + box.height - HIGH - 1.5,
    width,
    height: HIGH,
  };
  return [
    rect(own, { fill: PAPER, stroke: INK, strokeWidth: 0.5 }, 2.5),
    textIn(text, own, { size: SIZE, bold: true, anchor: "middle" }),
  ];
}
