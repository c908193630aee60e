import { formatLength, formatSize } from "../../length/index.ts";
import type { CuttingStep, FabricPlan, Plan } from "../../plan/types.ts";
import type { StripGroup, Taken } from "./strip-reading.ts";
import { findStrip, gathered, readStrip } from "./strip-reading.ts";
import type { ItemWords } from "./words.ts";
import { words } from "./words.ts";

interface Table {
  plan: Plan;
  fabric: FabricPlan;
}

/** How many of a piece a step gives over all its strips, in words. */
function itemWords({ piece, count }: Taken, strips: number, { plan, fabric }: Table): ItemWords {
  const cut = fabric.pieces[piece];
  if (cut === undefined) throw new Error(`a step cuts piece ${piece}, which ${fabric.name} does not have`);
  const square = cut.across === cut.along;
  const size = square ? formatLength(cut.across, plan.ruler) : formatSize(cut.across, cut.along, plan.ruler);
  return { count: count * strips, size, square, letter: cut.letter };
}

/** What to do with one group of a strip, said for all `strips` of the step. */
function groupPhrase(group: StripGroup, first: boolean, strips: number, table: Table): string {
  const said = (items: readonly Taken[], times: number) => items.map((item) => itemWords(item, times, table));
  const { ruler } = table.plan;
  switch (group.kind) {
    case "uncut":
      return words.keepWhole(strips, table.fabric.pieces[group.piece]?.letter ?? "");
    case "whole": {
      const each = strips > 1 && group.items.some(({ count }) => count > 1);
      const counts = group.items.map(({ count }) => count);
      return words.subcut(said(group.items, strips)) + (each ? words.eachStrip(counts) : "");
    }
    case "trimmed": {
      const trim = first ? words.trim : words.trimRest;
      return trim(formatLength(group.height, ruler)) + words.subcut(said(group.items, strips));
    }
    case "stacked": {
      const segments = group.count * strips;
      const single = group.rows.every(({ count, items }) => items.length === 1 && items[0]?.count === count);
      if (single) {
        const merged = gathered(group.rows.flatMap(({ items }) => items));
        return words.stack(segments, formatLength(group.run, ruler), said(merged, 1));
      }
      const rows = group.rows.map(({ height, count, items }) =>
        words.rows(count, formatLength(height, ruler), said(items, 1)),
      );
      return words.stackOfRows(segments, formatLength(group.run, ruler), rows);
    }
  }
}

/**
 * One step in phrases that follow one another, as a maker writes it: `Cut 3 strips 4 1/2 in x WOF`,
 * `subcut 26 squares 4 1/2 in [A]`, `trim the rest to 2 1/2 in and subcut 4 squares 2 1/2 in [C]`.
 */
export function stepPhrases(plan: Plan, fabric: FabricPlan, step: CuttingStep): string[] {
  const width = formatLength(step.width, plan.ruler);
  if (step.kind === "straighten") return [words.straighten(width)];
  const lay = fabric.lays[step.lay];
  const found = lay === undefined ? null : findStrip(lay.root, step.strips[0] ?? 0);
  if (lay === undefined || found === null)
    throw new Error(`step ${step.number} of ${fabric.name} cuts no strip`);
  const run = formatLength(step.run, plan.ruler);
  const wholeWidth = lay.source === "bolt" && step.run === lay.across;
  const start =
    step.kind === "bands"
      ? words.cutBands(step.count, width, run)
      : words.cutStrips(step.count, width, wholeWidth ? null : run, found.besideBands);
  const groups = readStrip(found.strip);
  const table = { plan, fabric };
  return [start, ...groups.map((group, index) => groupPhrase(group, index === 0, step.count, table))];
}
