import type { Cut, FabricPlan, Part } from "../plan/types.ts";
import { at } from "./walk.ts";

/** Every cut the parts need is listed once, and only after the cloth it goes through has been freed. */
export function checkCuts({ lays, cuts }: FabricPlan): string[] {
  const faults: string[] = [];
  const listed = cutsByPlace(cuts);
  cuts.forEach((cut, index) => {
    if (cut.number !== index + 1) faults.push(`cut ${cut.number} is the ${index + 1}. in the list`);
    if (listed(cut) !== index) faults.push(`cut ${cut.number} is listed twice`);
  });
  let needed = 0;
  let lastLay = 0;
  lays.forEach(({ root }, lay) => {
    const visit = (part: Part, free: number) => {
      const order = cutsBetween(part, lay).map((cut) => {
        needed += 1;
        const index = listed(cut);
        if (index === undefined) faults.push(`${at(part)} is not cut at ${cut.x1}, ${cut.y1}`);
        else if (index <= free) faults.push(`cut ${index + 1} goes through cloth that is not free yet`);
        return index ?? -1;
      });
      order.forEach((index, i) => {
        if (i > 0 && index <= order[i - 1]!) faults.push(`cut ${index + 1} takes more off than its setting`);
      });
      part.parts.forEach((inner, i) => {
        visit(inner, Math.max(free, order[i - 1] ?? -1, order[i] ?? -1));
      });
    };
    visit(root, -1);
  });
  if (cuts.length !== needed) faults.push(`${cuts.length} cuts are listed, the parts need ${needed}`);
  for (const { lay, number } of cuts) {
    if (lay < lastLay) faults.push(`cut ${number} goes back to a cloth laid aside`);
    lastLay = lay;
  }
  return faults;
}

/** The cuts between a part's parts, from the one cut off first. */
function cutsBetween(part: Part, lay: number): Omit<Cut, "number">[] {
  return part.parts.slice(0, -1).map((inner) =>
    part.cut === "across"
      ? {
          lay,
          direction: "across",
          x1: part.x,
          y1: inner.y + inner.along,
          x2: part.x + part.across,
          y2: inner.y + inner.along,
          setting: inner.along,
        }
      : {
          lay,
          direction: "along",
          x1: inner.x + inner.across,
          y1: part.y,
          x2: inner.x + inner.across,
          y2: part.y + part.along,
          setting: inner.across,
        },
  );
}

/**
 * Says at which index the very same cut is listed first. Cuts are found by where they begin, which few share: a text for
 * each would take more memory than the plan.
 */
function cutsByPlace(cuts: readonly Cut[]): (cut: Omit<Cut, "number">) => number | undefined {
  const first = new Map<number, number>();
  const next = new Int32Array(cuts.length).fill(-1);
  // A place two cuts share by chance costs a look at both, no more.
  const placeOf = ({ lay, x1, y1 }: Omit<Cut, "number">): number => (lay * 8191 + y1) * 1048573 + x1;
  for (let index = cuts.length - 1; index >= 0; index--) {
    const place = placeOf(cuts[index]!);
    next[index] = first.get(place) ?? -1;
    first.set(place, index);
  }
  return (cut) => {
    let index = first.get(placeOf(cut)) ?? -1;
    while (index >= 0 && !isSame(cuts[index]!, cut)) index = next[index]!;
    return index < 0 ? undefined : index;
  };
}

function isSame(a: Omit<Cut, "number">, b: Omit<Cut, "number">): boolean {
  return (
    a.lay === b.lay &&
    a.direction === b.direction &&
    a.x1 === b.x1 &&
    a.y1 === b.y1 &&
    a.x2 === b.x2 &&
    a.y2 === b.y2 &&
    a.setting === b.setting
  );
}
