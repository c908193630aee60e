import { lostInRun, runNotes } from "../cutlist/joins.ts";
import type { CutList, CutPiece } from "../cutlist/types.ts";
import { together } from "../diagnostics/purposes.ts";
import type { PackingResult, Section, SegmentUse, StockLayout } from "../engine/types.ts";
import { nth } from "../length/nth.ts";
import type { Ticks } from "../length/types.ts";

/** A cut list whose runs are told as the strips and ends that make them, and the packing of those. */
export interface Settled {
  cutList: CutList;
  layouts: StockLayout[];
}

/** A source of a run: which, how long, how many, and whether it is a whole strip of the bolt. */
export interface Source {
  item: number;
  across: Ticks;
  count: number;
  whole: boolean;
}

/**
 * Puts the strips and ends that feed each run in place of the run, as pieces of their own sizes: from here on they are
 * pieces like all others. Null when nothing is joined.
 * @param mark of the ruler that ends of strips are cut by
 */
export function settleRuns(
  cutList: CutList,
  usable: Ticks,
  found: PackingResult,
  mark: Ticks,
): Settled | null {
  const isOpen = ({ joined }: CutPiece) =>
    joined !== undefined && joined.run === undefined && joined.perKit !== true;
  if (!cutList.pieces.some(isOpen)) return null;
  const result = { ...found, layouts: endsOnMarks(found.layouts, cutList, usable, mark) };
  const sources = neededOf(sourcesIn(result.layouts, usable), cutList);
  /** New pieces, each with the item it came from and its length; null for what was no run. */
  const made = cutList.pieces.flatMap(
    (piece, item): { piece: CutPiece; item: number; across: Ticks | null }[] => {
      if (!isOpen(piece)) return [{ piece, item, across: null }];
      const own = sources.filter((source) => source.item === item);
      return own.map((source, s) => ({ piece: asSource(piece, item, own, s), item, across: source.across }));
    },
  );
  const indexOf = (item: number, across: Ticks | null): number | null => {
    const index = made.findIndex((one) => one.item === item && one.across === across);
    return index < 0 ? null : index;
  };
  return {
    cutList: { fabric: cutList.fabric, pieces: made.map(({ piece }) => piece) },
    layouts: result.layouts.flatMap((layout) => {
      const sections = layout.sections.map((section) => withSources(section, indexOf));
      if (layout.stock === "roll") return [{ ...layout, sections }];
      // A piece of cloth that gave nothing but an end nobody needs stays whole.
      const useful = sections.filter(
        (section) => section.kind === "bands" || section.column.segments.length > 0,
      );
      return useful.length === 0 ? [] : [{ ...layout, sections: useful }];
    }),
  };
}

/**
 * The layouts with the ends of strips that are joined cut at the mark below, where their run is long enough all the
 * same: behind a slanting cut what is left of a strip is no length a ruler shows.
 */
function endsOnMarks(
  layouts: readonly StockLayout[],
  { pieces }: CutList,
  usable: Ticks,
  mark: Ticks,
): StockLayout[] {
  const sources = sourcesIn(layouts, usable);
  const down = ({ across, whole }: Pick<Source, "across" | "whole">): Ticks =>
    whole ? across : across - (across % mark);
  const lasts = (item: number): boolean => {
    const own = sources.filter((source) => source.item === item);
    return reaches(
      own.map((source) => ({ ...source, across: down(source) })),
      pieces[item],
    );
  };
  const items = new Set(sources.map(({ item }) => item).filter(lasts));
  const marked = <S extends Section>(section: S): S => {
    if (section.kind === "bands") return { ...section, rest: section.rest.map(marked) };
    const { end } = section.column;
    if (end === undefined || !items.has(end.item)) return section;
    const across = down({ across: end.across, whole: end.across === usable });
    return { ...section, column: { ...section.column, end: { ...end, across } } };
  };
  return layouts.map((layout) => ({ ...layout, sections: layout.sections.map(marked) }));
}

/** All sources of all runs, equal ones together: whole strips first, then ends, longest first. */
function sourcesIn(layouts: readonly StockLayout[], usable: Ticks): Source[] {
  const found: Source[] = [];
  const visit = (sections: readonly Section[], times: number): void => {
    for (const section of sections) {
      if (section.kind === "bands") {
        visit(section.rest, times * section.count);
        continue;
      }
      const { end } = section.column;
      if (end === undefined) continue;
      const known = found.find(({ item, across }) => item === end.item && across === end.across);
      const count = times * section.count;
      if (known !== undefined) known.count += count;
      else found.push({ ...end, count, whole: end.across === usable });
    }
  };
  for (const layout of layouts) visit(layout.sections, layout.count);
  return found.sort((a, b) => a.item - b.item || b.across - a.across);
}

/**
 * The sources without those that a run does not need: ends of strips cost no cloth, but every one is a cut and a join
 * more. The shortest go first.
 */
function neededOf(sources: readonly Source[], { pieces }: CutList): Source[] {
  let kept = [...sources];
  const ends = sources.filter(({ whole }) => !whole).sort((a, b) => a.across - b.across);
  for (const end of ends) {
    const others = kept.filter((source) => source.item === end.item && source !== end);
    if (reaches(others, pieces[end.item])) kept = kept.filter((source) => source !== end);
  }
  return kept;
}

/** Whether sources joined end to end are as long as the run of a piece. */
function reaches(sources: readonly Source[], piece: CutPiece | undefined): boolean {
  const run = piece?.joined;
  if (run === undefined || sources.length === 0) return false;
  const strips = sources.reduce((sum, { count }) => sum + count, 0);
  const length = sources.reduce((sum, { across, count }) => sum + across * count, 0);
  return length - (strips - 1) * run.loss >= run.length;
}

/** A source as a piece of its own. */
export function asSource(piece: CutPiece, item: number, sources: readonly Source[], index: number): CutPiece {
  const source = nth(sources, index);
  const wholes = sources.reduce((sum, { whole, count }) => sum + (whole ? count : 0), 0);
  const ends = sources.reduce((sum, { whole, count }) => sum + (whole ? 0 : count), 0);
  const purpose = together(piece.uses.map((use) => use.purpose));
  const { joined, along } = piece;
  const { corners: _c, seams: _s, ...plain } = piece;
  const area = sources.reduce((sum, { across, count }) => sum + across * along * count, 0);
  return {
    ...plain,
    // Letters are the quilt's and stay: a further length of the same run is its second, its third.
    letter: index === 0 ? plain.letter : `${plain.letter}${index + 1}`,
    across: source.across,
    fullWidth: source.whole,
    count: source.count,
    // Where the run is told as so many shorter strips, the bag need not say it as well.
    uses: [
      {
        purpose: source.whole || (index === 0 && ends > 1) ? purpose : { for: "shorter-strip", of: purpose },
        count: source.count,
      },
    ],
    // The whole run is told once, with its first source.
    notes: index === 0 ? runNotes(joined!, wholes, ends) : [],
    joined: { ...joined!, run: item },
    ...(index === 0
      ? lostInRun(joined!, along, area)
      : joined!.finished === undefined
        ? {}
        : { corners: 0, seams: 0 }),
  };
}

function withSources<S extends Section>(
  section: S,
  indexOf: (item: number, across: Ticks | null) => number | null,
): S {
  const segment = (use: SegmentUse): SegmentUse => ({
    ...use,
    stack: use.stack.map((each) => ({ ...each, item: indexOf(each.item, null) ?? each.item })),
  });
  if (section.kind === "bands")
    return {
      ...section,
      bands: section.bands.map(segment),
      rest: section.rest.map((strip) => withSources(strip, indexOf)),
    };
  const { end, ...column } = section.column;
  const segments = column.segments.map(segment);
  const item = end === undefined ? null : indexOf(end.item, end.across);
  if (end !== undefined && item !== null) {
    segments.push({ across: end.across, count: 1, stack: [{ item, turned: false, count: 1 }] });
  }
  return { ...section, column: { ...column, segments } };
}
