import type { Cut, FabricPlan, Part } from "../plan/types.ts";
import { at } from "./walk.ts";

/** Every cut the parts need is listed once, and only after the cloth it goes through has been freed. */
export function checkCuts({ lays, cuts }: FabricPlan): string[] {
  const faults: string[] = [];
  const listed = new Map<string, number>();
  cuts.forEach((cut, index) => {
    if (cut.number !== index + 1) faults.push(`cut ${cut.number} is the ${index + 1}. in the list`);
    if (listed.has(keyOf(cut))) faults.push(`cut ${cut.number} is listed twice`);
    listed.set(keyOf(cut), index);
  });
  let needed = 0;
  let lastLay = 0;
  lays.forEach(({ root }, lay) => {
    const visit = (part: Part, free: number) => {
      const order = cutsBetween(part, lay).map((cut) => {
        needed += 1;
        const index = listed.get(keyOf(cut));
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

function keyOf({ lay, direction, x1, y1, x2, y2, setting }: Omit<Cut, "number">): string {
  return [lay, direction, x1, y1, x2, y2, setting].join(" ");
}
