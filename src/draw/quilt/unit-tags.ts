import type { Making, UnitInPlace } from "../../making/types.ts";
import type { Patch } from "../../quilt/types.ts";
import { textWidth } from "../scene/metrics.ts";
import { INK, PAPER } from "../scene/palette.ts";
import { type Box, rect, type SceneNode } from "../scene/scene.ts";
import { textIn } from "../scene/text.ts";
import { type Corner, centreOf, clearance, outlineOf, type Placing } from "./patches.ts";

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

/** Where the arrows of directional prints lie, as `patchNodes` draws them: a name must not cover one. */
export function arrowBoxes(
  patches: readonly Patch[],
  at: Placing,
  shift: (patch: Patch) => Corner = () => [0, 0],
): Box[] {
  return patches.flatMap((patch): Box[] => {
    if (patch.up === null) return [];
    const [dx, dy] = shift(patch);
    const corners = outlineOf(patch.outline).map(([x, y]): Corner => [x + dx, y + dy]);
    const centre = centreOf(corners);
    const reach = Math.min(14, clearance(centre, corners) * at.scale * 0.7) + 1;
    const [x, y] = [at.x + centre[0] * at.scale, at.y + centre[1] * at.scale];
    return [{ x: x - reach, y: y - reach, width: 2 * reach, height: 2 * reach }];
  });
}

/** Whether two boxes have a place in common. */
export const touch = (a: Box, b: Box): boolean =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;

/**
 * A name on a small ground of its own in the middle of the lower edge of what it names; none where it does not fit or
 * would cover an arrow.
 */
export function tag(text: string, box: Box, arrows: readonly Box[] = []): SceneNode[] {
  const width = textWidth(text, SIZE, true) + 5;
  if (text === "" || width > box.width - 2 || HIGH > box.height - 2) return [];
  const own = {
    x: box.x + (box.width - width) / 2,
    y: box.y + box.height - HIGH - 1.5,
    width,
    height: HIGH,
  };
  if (arrows.some((arrow) => touch(arrow, own))) return [];
  return [
    rect(own, { fill: PAPER, stroke: INK, strokeWidth: 0.5 }, 2.5),
    textIn(text, own, { size: SIZE, bold: true, anchor: "middle" }),
  ];
}
