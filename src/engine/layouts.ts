import { dealer, type Frames, type StripCount, toSections } from "./assemble.ts";
import type { Filling } from "./oracle.ts";
import type { SheetGroup } from "./sheet-groups.ts";
import type { Section, StockLayout } from "./types.ts";

/**
 * Lays strips on the roll and fillings on the problem's sheets. `step` is what sizes were divided by;
 * `groupOf` tells the sheet group of a filling.
 */
export function toLayouts(
  frames: Frames,
  strips: readonly StripCount[],
  groups: readonly SheetGroup[],
  groupOf: (filling: Filling) => number,
  step: number,
): StockLayout[] {
  const deal = dealer(frames.upright);
  const layouts: StockLayout[] = [];
  const onRoll = strips.filter(({ filling }) => filling.sheet === undefined);
  if (onRoll.length > 0)
    layouts.push({
      stock: "roll",
      sheet: -1,
      count: 1,
      firstCut: "across",
      sections: scale(toSections(frames.upright, onRoll, deal), step),
    });
  const used = groups.map((group) => group.members.map(() => 0));
  for (const { filling, count } of strips) {
    if (filling.sheet === undefined) continue;
    const { transposed, strips: parts } = filling.sheet;
    const kinds = transposed ? frames.transposed : frames.upright;
    const index = groupOf(filling);
    for (let n = 0; n < count; n++) {
      const member = nextMember(groups[index]!, used[index]!);
      const layout: StockLayout = {
        stock: "sheet",
        sheet: member,
        count: 1,
        firstCut: transposed ? "along" : "across",
        sections: scale(
          toSections(
            kinds,
            parts.map((part) => ({ filling: part, count: 1 })),
            deal,
          ),
          step,
        ),
      };
      const twin = layouts.find((other) => JSON.stringify({ ...other, count: 1 }) === JSON.stringify(layout));
      if (twin === undefined) layouts.push(layout);
      else twin.count++;
    }
  }
  return layouts;
}

function nextMember(group: SheetGroup, used: number[]): number {
  const at = group.members.findIndex(({ available }, m) => available === null || used[m]! < available);
  used[at]!++;
  return group.members[at]!.sheet;
}

function scale(sections: readonly Section[], step: number): Section[] {
  return sections.map((section) => {
    if (section.kind === "bands")
      return {
        ...section,
        along: section.along * step,
        restAcross: section.restAcross * step,
        bands: section.bands.map((band) => ({ ...band, across: band.across * step })),
        rest: scale(section.rest, step) as typeof section.rest,
      };
    return {
      ...section,
      column: {
        along: section.column.along * step,
        segments: section.column.segments.map((segment) => ({ ...segment, across: segment.across * step })),
      },
    };
  });
}
