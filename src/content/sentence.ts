import { formatExact, formatExactSize, formatLength } from "../length/index.ts";
import type { CuttingStep, FabricPlan, Plan } from "../plan/types.ts";
import type { ItemWords } from "../words/en/cutting.ts";
import type { Words } from "../words/index.ts";
import type { FoundStrip, StripGroup, Taken } from "./cutting/strip-reading.ts";
import { findStrip, gathered, readStrip } from "./cutting/strip-reading.ts";

/** Whose steps are told. */
export interface Table {
  plan: Plan;
  fabric: FabricPlan;
  /** Letters of the bags whose lengths wait until the top is measured. */
  borders: ReadonlySet<string>;
}

/** How many of a piece a step gives over all its strips, in words. */
function itemWords(
  { piece, count }: Taken,
  strips: number,
  { plan, fabric, borders }: Table,
  words: Words,
): ItemWords {
  const cut = fabric.pieces[piece];
  if (cut === undefined) throw new Error(`a step cuts piece ${piece}, which ${fabric.name} does not have`);
  const square = cut.across === cut.along;
  const size = square
    ? formatExact(cut.across, plan.ruler)
    : formatExactSize(cut.across, cut.along, plan.ruler);
  const shape = cut.nest === undefined ? {} : { shape: words.shapes.shapeNoun(cut.nest) };
  const own = { count: count * strips, size, square, letter: cut.letter, ...shape };
  if (!borders.has(cut.letter) || cut.fullWidth) return own;
  const [width, long] = [Math.min(cut.across, cut.along), Math.max(cut.across, cut.along)];
  const say = (length: number): string => formatLength(length, plan.ruler);
  return { ...own, later: { width: say(width), long: say(long) } };
}

/** What to do with one group of a strip, said for all `strips` of the step. */
function groupPhrase(group: StripGroup, first: boolean, strips: number, table: Table, words: Words): string {
  const said = (items: readonly Taken[], times: number) =>
    items.map((item) => itemWords(item, times, table, words));
  const { ruler } = table.plan;
  switch (group.kind) {
    case "uncut":
      return words.cutting.keepWhole(strips, table.fabric.pieces[group.piece]?.letter ?? "");
    case "whole": {
      const each = strips > 1 && group.items.some(({ count }) => count > 1);
      const counts = group.items.map(({ count }) => count);
      return words.cutting.subcut(said(group.items, strips)) + (each ? words.cutting.eachStrip(counts) : "");
    }
    case "trimmed": {
      const height = formatExact(group.height, ruler);
      const rest = first ? words.cutting.trim : words.cutting.trimRest;
      const trim =
        group.cutOff === null
          ? rest(height)
          : words.cutting.trimOff(strips, formatLength(group.cutOff, ruler), height);
      return trim + words.cutting.subcut(said(group.items, strips));
    }
    case "stacked": {
      const segments = group.count * strips;
      const single = group.rows.every(({ count, items }) => items.length === 1 && items[0]?.count === count);
      if (single) {
        const merged = gathered(group.rows.flatMap(({ items }) => items));
        return words.cutting.stack(segments, formatLength(group.run, ruler), said(merged, 1));
      }
      const rows = group.rows.map(({ height, count, items }) =>
        words.cutting.rows(count, formatExact(height, ruler), said(items, 1)),
      );
      return words.cutting.stackOfRows(segments, formatLength(group.run, ruler), rows);
    }
  }
}

function found(fabric: FabricPlan, step: CuttingStep): FoundStrip {
  const lay = fabric.lays[step.lay];
  const strip = lay === undefined ? null : findStrip(lay.root, step.strips[0] ?? 0);
  if (strip === null) throw new Error(`step ${step.number} of ${fabric.name} cuts no strip`);
  return strip;
}

/** What the strips of a step give, each of them alike. */
export function groupsOf(fabric: FabricPlan, step: CuttingStep): StripGroup[] {
  return step.kind === "straighten" ? [] : readStrip(found(fabric, step).strip);
}

/** What to cut first: `Cut 3 strips 4 1/2 in x WOF`, for `count` strips of the step's width. */
export function cutPhrase({ plan, fabric }: Table, step: CuttingStep, count: number, words: Words): string {
  const width = formatExact(step.width, plan.ruler);
  if (step.kind === "straighten") {
    // A printed foundation has its own square lines: the selvage is no better a guide.
    return plan.making?.foundation?.fabric === fabric.name
      ? words.cutting.straightenToLine(width)
      : words.cutting.straighten(width);
  }
  const run = formatLength(step.run, plan.ruler);
  if (step.kind === "bands") return words.cutting.cutBands(count, width);
  if (found(fabric, step).besideBands) return words.cutting.cutBeside(count, width, run);
  const lay = fabric.lays[step.lay];
  const wholeWidth = lay?.source === "bolt" && step.run === lay.across;
  return words.cutting.cutStrips(count, width, wholeWidth ? null : run);
}

/** How a strip is cut up into the shapes among what it gives; where there are several, each by its letter. */
function slants(items: readonly Taken[], { plan, fabric }: Table, words: Words): string[] {
  const index = plan.fabrics.indexOf(fabric);
  return items.flatMap(({ piece: number }) => {
    const piece = fabric.pieces[number];
    if (piece?.nest === undefined) return [];
    const template = plan.templates?.find(({ uses }) =>
      uses.some((use) => use.fabric === index && use.piece === number),
    );
    const faceDown = template?.uses.some(
      (use) => use.fabric === index && use.piece === number && use.reversed > 0,
    );
    const named = { name: template?.name ?? "", faceDown: faceDown === true };
    const told = words.shapes.slantPhrases(piece, named, plan.ruler);
    return items.length === 1 ? told : told.map((phrase) => `[${piece.letter}]: ${phrase}`);
  });
}

/** `subcut 26 squares 4 1/2 in [A]`, `trim the rest to 2 1/2 in and subcut 4 squares 2 1/2 in [C]`. */
export function subcutPhrases(
  table: Table,
  groups: readonly StripGroup[],
  strips: number,
  words: Words,
): string[] {
  return groups.flatMap((group, index) => {
    const items = "items" in group ? group.items : [];
    return [groupPhrase(group, index === 0, strips, table, words), ...slants(items, table, words)];
  });
}

/**
 * Two runs of strips said as one, where the first is cut into one piece only and the single strip after it
 * begins with fewer of the same: `subcut 26 squares 4 1/2 in [A] (9 from each strip, 8 from the last)`,
 * then what the rest of the last strip gives. Null where that cannot be said.
 */
export function filledPhrases(
  table: Table,
  full: { groups: readonly StripGroup[]; strips: number },
  last: { groups: readonly StripGroup[]; strips: number },
  words: Words,
): string[] | null {
  const [all, more] = full.groups;
  const [begins, ...rest] = last.groups;
  if (all?.kind !== "whole" || more !== undefined || begins?.kind !== "whole" || last.strips !== 1)
    return null;
  // What is trimmed from the last strip alone would read as trimmed from all.
  if (rest.length > 0) return null;
  const [[each, other], [few, another]] = [all.items, begins.items];
  if (each === undefined || few === undefined || other !== undefined || another !== undefined) return null;
  if (each.piece !== few.piece || few.count > each.count) return null;
  const total = { piece: each.piece, count: each.count * full.strips + few.count };
  const share = words.cutting.eachAndLast(each.count, full.strips, few.count);
  return [words.cutting.subcut([itemWords(total, 1, table, words)]) + share, ...slants([each], table, words)];
}
