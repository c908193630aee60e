import type { Ticks } from "../length/types.ts";
import type { Part } from "../plan/types.ts";

/** A rectangle of cloth, as it lies with its selvage upright. */
export interface Rectangle {
  across: Ticks;
  along: Ticks;
}

/** What comes of a part that is cut: pieces into their bags, and cloth in hand. */
export interface CutApart {
  /** Indices of pieces. */
  pieces: number[];
  cloth: Rectangle[];
}

/** What decides how a part is cut apart. */
export interface Cutting {
  /** The piece leaves that are cut. */
  told: ReadonlySet<Part>;
  /** Where the cloth really ends on its right, and where the plan has it end. */
  ends: Ticks;
  planned: Ticks;
}

/**
 * Cuts a part as far as its pieces are told. What holds none of them stays in one piece; neighbours of such a kind stay
 * together. On cloth that is narrower than planned nothing beyond its end is there.
 */
export function cutApart(part: Part, cutting: Cutting): CutApart {
  const { told, ends, planned } = cutting;
  const holds = (inner: Part): boolean => told.has(inner) || inner.parts.some(holds);
  const pieces: number[] = [];
  const cloth: Rectangle[] = [];
  const keep = (x: Ticks, across: Ticks, along: Ticks): void => {
    // Cloth that reaches the planned end reaches the real one, which may lie farther out.
    const right = x + across === planned ? ends : Math.min(ends, x + across);
    if (right > x && along > 0) cloth.push({ across: right - x, along });
  };
  const visit = (inner: Part): void => {
    if (told.has(inner) && inner.piece !== null) {
      pieces.push(inner.piece);
      // A full strip of wider cloth leaves more beside it.
      if (inner.x + inner.across === planned && ends > planned)
        cloth.push({ across: ends - planned, along: inner.along });
      return;
    }
    if (!holds(inner)) {
      keep(inner.x, inner.across, inner.along);
      return;
    }
    let run: Part[] = [];
    const flush = (): void => {
      const [first] = run;
      if (first === undefined) return;
      const sum = (side: "across" | "along") => run.reduce((total, one) => total + one[side], 0);
      if (inner.cut === "along") keep(first.x, sum("across"), first.along);
      else keep(first.x, first.across, sum("along"));
      run = [];
    };
    for (const each of inner.parts) {
      if (holds(each)) {
        flush();
        visit(each);
      } else run.push(each);
    }
    flush();
  };
  visit(part);
  return { pieces, cloth };
}
