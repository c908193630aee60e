import type { FabricPlan, Plan } from "../../planning.ts";
import { outlinePath } from "./picture.ts";

type Patch = NonNullable<Plan["top"]>["patches"][number];

/** Letters of the bags that a patch of a block comes out of, as the making record has it. */
function lettersOf(patch: Patch, { making, top }: Plan): readonly string[] {
  const { block, unit, part } = patch.origin;
  if (making === undefined || top === null || block === null || unit === null) return [];
  const kind = making.kinds[making.kindOf[block] ?? -1];
  const design = top.blocks[block]?.design ?? -1;
  const made = making.blocks[kind?.making ?? -1] ?? making.blocks.find((each) => each.design === design);
  const place = made?.units[unit] ?? null;
  const heap = place === null ? undefined : making.units[place.unit]?.heaps[place.heap];
  return heap?.patches.find(({ spot }) => spot === part)?.letters ?? [];
}

/**
 * Where what is cut from a fabric lies in the quilt, by bag: the patches as one path. Of sashes, setting triangles and
 * borders the record names no bag; their patches are those of the fabric that no block has, and stand for the bags that no
 * unit takes.
 */
export function placesOf(plan: Plan, fabric: FabricPlan): string[] {
  const byLetter = new Map<string, string[]>();
  const others: string[] = [];
  for (const patch of plan.top?.patches ?? []) {
    if (patch.fabric !== fabric.name) continue;
    const letters = lettersOf(patch, plan);
    const d = outlinePath(patch.outline);
    if (letters.length === 0) others.push(d);
    for (const letter of letters) byLetter.set(letter, [...(byLetter.get(letter) ?? []), d]);
  }
  return fabric.pieces.map(({ letter }) => (byLetter.get(letter) ?? others).join(""));
}
