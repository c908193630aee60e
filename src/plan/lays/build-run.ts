import type { NestedCut } from "../../cutlist/types.ts";
import { nestLength } from "../../engine/index.ts";
import type { StackUse } from "../../engine/types.ts";
import type { Ticks } from "../../length/types.ts";
import type { Part } from "../types.ts";
import { runLeaf } from "./parts.ts";

/**
 * A run of equal shapes in a strip, at the origin, lying as the strip does.
 * @param length what the run takes of the strip
 * @param height of the strip
 * @param along the strip runs along the cloth
 * @throws Error when no lie of the shape makes a run of that length: the layout is then wrong
 */
export function buildRun(
  nest: Pick<NestedCut, "across" | "along">,
  { item, turned, count }: StackUse,
  length: Ticks,
  height: Ticks,
  along: boolean,
): Part {
  const lie = (along ? nest.along : nest.across).find(
    (each) =>
      each.turned === turned &&
      each.height <= height &&
      nestLength(each.first, each.advances, count) === length,
  );
  if (lie === undefined) throw new Error(`no run of ${count} of item ${item} takes ${length} of a strip`);
  const shapes = Array.from({ length: count }, (_, i) => ({
    x: nestLength(0, lie.advances, i + 1),
    y: 0,
    halfTurned: lie.alternates && (i % 2 === 1) !== lie.startsTurned,
  }));
  return runLeaf(item, length, lie.height, turned, shapes);
}
