import { borderDoesNotFit } from "../../diagnostics/quilts/quilt.ts";
import { TICKS_PER } from "../../length/measures.ts";
import { add, compare, fromInteger, type Rational, rational, ZERO } from "../../length/rational.ts";
import { addSurd, compareSurd, type Surd, scaleSurd, signOfSurd, subSurd, surd } from "../../length/surd.ts";
import type { BorderSpec, DrawnCell } from "../../spec/quilt-types.ts";
import { exactOfFraction, exactOfSurd, rationalOfFraction, surdOfExact, ZERO_EXACT } from "../exact.ts";
import type { LaidBlock } from "../laid-types.ts";
import type { Builder } from "../layout/builder.ts";
import type { Exact } from "../types.ts";

/** Finished widths of a border: of the sides, and of top and bottom. */
export interface BorderWidths {
  side: Exact;
  end: Exact;
}

/** A plain border narrower than this, finished, is hard to sew straight. Common practice, no source. */
const NARROWEST = { in: TICKS_PER.in / 2, cm: TICKS_PER.cm, mm: TICKS_PER.cm } as const;
/** Widths looked at before sides and ends are let differ, in rounds of the pieced border. */
const ROUNDS = 4;
const HALF = rational(1n, 2n);

/**
 * Widths of a plain border between a centre and a pieced border that make the pieced border come out: each side of
 * it is a whole number of blocks long.
 *
 *     derived geometry: side width = (n blocks - inner length across) / 2, likewise for top and bottom
 *
 * The least width that serves both ways, when there is one within a few rounds; else the least for each.
 * @param blocks lengths of the blocks along the border, in their order, again and again
 * @param inner what the plain border goes round, as the pieced border would measure it
 * @param least narrowest finished width allowed
 */
export function copingWidths(
  blocks: readonly Rational[],
  inner: { across: Surd; down: Surd },
  least: Rational,
): BorderWidths | null {
  const sides = widthsFor(blocks, inner.across, least);
  const ends = widthsFor(blocks, inner.down, least);
  for (const side of sides) {
    if (ends.some((end) => compareSurd(side, end) === 0)) {
      const both = exactOfSurd(side);
      return { side: both, end: both };
    }
  }
  const [side, end] = [sides[0], ends[0]];
  return side === undefined || end === undefined ? null : { side: exactOfSurd(side), end: exactOfSurd(end) };
}

/** Widths at which a length and twice the width is a whole number of blocks, narrowest first. */
function widthsFor(blocks: readonly Rational[], length: Surd, least: Rational): Surd[] {
  if (blocks.length === 0 || blocks.some((block) => compare(block, ZERO) <= 0)) return [];
  const found: Surd[] = [];
  const narrow = surd(least);
  let reach = ZERO;
  for (let i = 0; found.length < ROUNDS * blocks.length && i < 100_000; i += 1) {
    reach = add(reach, blocks[i % blocks.length] ?? ZERO);
    const width = scaleSurd(subSurd(surd(reach), length), HALF);
    if (signOfSurd(subSurd(width, narrow)) >= 0) found.push(width);
  }
  return found;
}

/** Lengths along the border of the blocks of its drawing; null when one is not known. */
function blockLengths(
  row: readonly DrawnCell[],
  blocks: ReadonlyMap<string, LaidBlock | null>,
): Rational[] | null {
  const lengths = row.map(({ code, turn }) => {
    const block = blocks.get(code);
    return block == null ? null : turn % 180 === 0 ? block.across : block.down;
  });
  const known = lengths.filter((length) => length !== null);
  return known.length === lengths.length ? known : null;
}

/** What a plain border just inside `pieced` would have to measure; null when nothing serves. */
export function copingFor(
  builder: Builder,
  blocks: ReadonlyMap<string, LaidBlock | null>,
  pieced: BorderSpec,
  inner: { across: Exact; down: Exact },
): BorderWidths | null {
  const lengths = pieced.row === null ? null : blockLengths(pieced.row, blocks);
  if (lengths === null) return null;
  const corner = (runs: boolean, width: BorderSpec["side"]): Surd =>
    surd(runs ? add(rationalOfFraction(width), rationalOfFraction(width)) : ZERO);
  const across = addSurd(surdOfExact(inner.across), corner(pieced.corners === "sides-first", pieced.side));
  const down = addSurd(surdOfExact(inner.down), corner(pieced.corners === "tops-first", pieced.end));
  return copingWidths(lengths, { across, down }, fromInteger(NARROWEST[builder.spec.ruler.unit]));
}

/** Widths of all borders, those that are to fit worked out from the next pieced one. */
export function borderWidths(
  builder: Builder,
  blocks: ReadonlyMap<string, LaidBlock | null>,
  centre: { across: Exact; down: Exact },
): BorderWidths[] {
  const { borders } = builder.spec;
  let inner = { across: surdOfExact(centre.across), down: surdOfExact(centre.down) };
  const wider = (by: BorderWidths): void => {
    const twice = (width: Exact): Surd => scaleSurd(surdOfExact(width), fromInteger(2));
    inner = { across: addSurd(inner.across, twice(by.side)), down: addSurd(inner.down, twice(by.end)) };
  };
  return borders.map((border, index) => {
    const next = borders.slice(index + 1).find(({ row }) => row !== null);
    let own: BorderWidths | null = { side: exactOfFraction(border.side), end: exactOfFraction(border.end) };
    if (border.fit) {
      const between = borders.slice(index + 1, next === undefined ? undefined : borders.indexOf(next));
      own =
        next === undefined || border.row !== null || between.some(({ fit }) => fit)
          ? null
          : copingFor(builder, blocks, next, {
              across: exactOfSurd(addSurd(inner.across, surd(sumOf(between, "side")))),
              down: exactOfSurd(addSurd(inner.down, surd(sumOf(between, "end")))),
            });
      if (own === null) builder.diagnostics.push(nothingToFit(border));
    }
    const widths = own ?? { side: ZERO_EXACT, end: ZERO_EXACT };
    wider(widths);
    return widths;
  });
}

/** Twice the widths of borders between, which the fitted one need not bridge. */
function sumOf(borders: readonly BorderSpec[], which: "side" | "end"): Rational {
  return borders.reduce((sum, border) => {
    const width = rationalOfFraction(border[which]);
    return add(sum, add(width, width));
  }, ZERO);
}

function nothingToFit(border: BorderSpec) {
  return borderDoesNotFit(border, { why: "nothing-to-fit", border: border.name });
}
