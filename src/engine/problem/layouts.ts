import type { BandGroup } from "../bands/band-sections.ts";
import type { Filling } from "../oracles/oracle.ts";
import type { StockAnswer } from "../search/stock.ts";
import type { BandSection, Section, SegmentUse, StockLayout } from "../types.ts";
import {
  dealer,
  type Frames,
  gatherSegments,
  type ItemDealer,
  type StripCount,
  toSections,
} from "./assemble.ts";
import type { SheetGroup } from "./sheet-groups.ts";

/**
 * Lays an answer out on the roll and on the problem's sheets: band groups first, longest first, then the
 * strips. `step` is what sizes were divided by.
 */
export function toLayouts(
  frames: Frames,
  answer: StockAnswer,
  groups: readonly SheetGroup[],
  run: number,
  step: number,
): StockLayout[] {
  const deal = dealer(frames.upright);
  const layouts: StockLayout[] = [];
  const banded = answer.bands
    .map((group, g) => ({ group, rest: restBeside(answer, groups.length + g) }))
    .sort((p, q) => q.group.along - p.group.along || q.group.across - p.group.across);
  const sections: Section[] = banded.map(({ group, rest }) => bandSection(frames, group, rest, run, deal));
  const onRoll = answer.strips.filter(({ filling }) => filling.sheet === undefined);
  sections.push(...toSections(frames.upright, onRoll, deal));
  if (sections.length > 0)
    layouts.push({
      stock: "roll",
      sheet: -1,
      count: 1,
      firstCut: "across",
      sections: scale(sections, step),
    });
  const used = groups.map((group) => group.members.map(() => 0));
  const onSheets = new Map<string, StockLayout>();
  // Where every kind stands for one item, like sheets are alike to the letter and need no dealing one by one.
  const alike = frames.upright.every((kind) => kind.sources.length === 1);
  for (const { filling, count } of answer.strips) {
    const index = filling.sheet === undefined ? Infinity : answer.groupOf(filling);
    if (index >= groups.length) continue;
    const { transposed, strips: parts } = filling.sheet!;
    const kinds = transposed ? frames.transposed : frames.upright;
    for (let left = count; left > 0; ) {
      const { sheet, times } = nextMember(groups[index]!, used[index]!, alike ? left : 1);
      left -= times;
      const layout: StockLayout = {
        stock: "sheet",
        sheet,
        count: times,
        firstCut: transposed ? "along" : "across",
        sections: scale(toSections(kinds, once(parts), deal), step),
      };
      const key = JSON.stringify({ ...layout, count: 1 });
      const twin = onSheets.get(key);
      if (twin === undefined) onSheets.set(key, layout);
      else twin.count += times;
    }
  }
  return [...layouts, ...onSheets.values()];
}

function once(strips: readonly Filling[]): StripCount[] {
  return strips.map((filling) => ({ filling, count: 1 }));
}

/** Strips in the width beside a band group. */
function restBeside(answer: StockAnswer, index: number): Filling[] {
  return answer.strips.flatMap(({ filling }) =>
    filling.sheet !== undefined && answer.groupOf(filling) === index ? filling.sheet.strips : [],
  );
}

function bandSection(
  frames: Frames,
  group: BandGroup,
  rest: readonly Filling[],
  run: number,
  deal: ItemDealer,
): BandSection {
  const bands: SegmentUse[] = [];
  const sorted = group.bands
    .slice()
    .sort(
      (p, q) => q.width - p.width || JSON.stringify(p.items).localeCompare(JSON.stringify(q.items), "en"),
    );
  for (const band of sorted) {
    const placed: Filling = {
      level: -1,
      height: group.along,
      counts: [],
      segments: [{ width: band.width, stack: band.items }],
    };
    for (const use of gatherSegments(frames.upright, placed, deal)) {
      const last = bands.at(-1);
      const same = last !== undefined && JSON.stringify({ ...last, count: 1 }) === JSON.stringify(use);
      if (same) last.count += use.count;
      else bands.push(use);
    }
  }
  return {
    kind: "bands",
    along: group.along,
    count: 1,
    bands,
    restAcross: run - group.across,
    rest: toSections(frames.upright, once(rest), deal),
  };
}

/** The next of the problem's sheets with some left, and how many of those wanted it can give. */
function nextMember(group: SheetGroup, used: number[], wanted: number): { sheet: number; times: number } {
  const at = group.members.findIndex(({ available }, m) => available === null || used[m]! < available);
  const { sheet, available } = group.members[at]!;
  const times = available === null ? wanted : Math.min(wanted, available - used[at]!);
  used[at]! += times;
  return { sheet, times };
}

/** Sections with every size so many times as large. */
export function scale(sections: readonly Section[], step: number): Section[] {
  const times = <T extends { across: number }>(uses: readonly T[]): T[] =>
    uses.map((use) => ({ ...use, across: use.across * step }));
  return sections.map((section) => {
    if (section.kind === "bands") {
      const { along, restAcross, bands, rest } = section;
      return {
        ...{ ...section, along: along * step, restAcross: restAcross * step, bands: times(bands) },
        rest: scale(rest, step) as typeof rest,
      };
    }
    const { along, segments, end } = section.column;
    const ended = end === undefined ? {} : { end: { ...end, across: end.across * step } };
    return { ...section, column: { along: along * step, ...ended, segments: times(segments) } };
  });
}
