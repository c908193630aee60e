import type { Ticks } from "../length/types.ts";
import type { Part } from "../plan/types.ts";

/** A rectangle of cloth, as it lies with its selvage upright. */
export interface Rectangle {
  across: Ticks;
  along: Ticks;
  /** It ends where the fabric does. */
  atEdge?: true;
}

/** What decides how a part is cut apart. */
export interface Cutting {
  /** The piece leaves that are cut. */
  told: ReadonlySet<Part>;
  /** Strips that cannot be used. */
  spoiled: ReadonlySet<Part>;
  /** Strips that are cut off and not cut up. */
  off: ReadonlySet<Part>;
  /** The size of the cloth as planned, and where it really ends: narrower or wider cloth, edges not squared yet. */
  planned: Rectangle;
  ends: Rectangle;
  /** The cloth ends on its right where the fabric does. */
  atEdge: boolean;
}

/** Where a part that begins at `from` ends: what reaches the planned end reaches the real one, which may lie farther out. */
function endOf(from: Ticks, size: Ticks, planned: Ticks, ends: Ticks): Ticks {
  return from + size === planned ? ends : Math.min(ends, from + size);
}

/**
 * The cloth that a part leaves when it is cut as far as its pieces are told. What holds none of them stays in one piece;
 * neighbours of such a kind stay together. On cloth that is narrower than planned nothing beyond its end is there.
 */
export function restsOf(part: Part, { told, spoiled, off, planned, ends, atEdge }: Cutting): Rectangle[] {
  const apart = (inner: Part): boolean => off.has(inner) || holds(inner);
  const holds = (inner: Part): boolean => told.has(inner) || spoiled.has(inner) || inner.parts.some(apart);
  const cloth: Rectangle[] = [];
  const keep = ({ x, y }: Part, across: Ticks, along: Ticks): void => {
    const right = endOf(x, across, planned.across, ends.across);
    const lower = endOf(y, along, planned.along, ends.along);
    const edge = atEdge && x + across === planned.across ? { atEdge: true as const } : {};
    if (right > x && lower > y) cloth.push({ across: right - x, along: lower - y, ...edge });
  };
  const visit = (inner: Part): void => {
    if (spoiled.has(inner)) return;
    if (told.has(inner)) {
      // Wider cloth leaves more beside a piece that lies last.
      if (inner.x + inner.across === planned.across && ends.across > planned.across)
        cloth.push({
          across: ends.across - planned.across,
          along: inner.along,
          ...(atEdge ? { atEdge } : {}),
        });
      return;
    }
    let run: Part[] = [];
    const flush = (): void => {
      const [first] = run;
      if (first === undefined) return;
      const sum = (side: "across" | "along") => run.reduce((total, one) => total + one[side], 0);
      if (inner.cut === "along") keep(first, sum("across"), first.along);
      else keep(first, first.across, sum("along"));
      run = [];
    };
    for (const each of inner.parts) {
      if (holds(each)) {
        flush();
        visit(each);
      } else if (off.has(each)) {
        flush();
        keep(each, each.across, each.along);
      } else run.push(each);
    }
    flush();
  };
  if (holds(part)) visit(part);
  else keep(part, part.across, part.along);
  return cloth;
}
