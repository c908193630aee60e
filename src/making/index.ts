import type { UnitRecord } from "../cutlist/record/unit-record.ts";
import type { Exact, LaidQuilt, QuiltTop } from "../quilt/index.ts";
import { exactToNumber } from "../quilt/index.ts";
import type { QuiltSpec } from "../spec/quilt-types.ts";
import { quiltingThread, seamTotals, threadFor } from "./amounts.ts";
import { blockKinds, blockMakings } from "./block-makings.ts";
import { borderFaults, borderRounds } from "./border-rounds.ts";
import { diagonalFaults, diagonalRows } from "./diagonal.ts";
import { planFinishing } from "./finishing.ts";
import { planFoundation, withFixedSeams, withFoundationSeams } from "./foundation.ts";
import { type Joinings, listJoins, sewTogether } from "./joins.ts";
import { choosePressing } from "./press.ts";
import { type ReadTop, readTop } from "./read-top.ts";
import type { Making } from "./types.ts";
import { sewnInColumns, unitPressings } from "./unit-pressing.ts";

export type * from "./types.ts";

/** What is wrong with the joinings against the size of the top, where they end in it. */
function joinFaults(
  top: QuiltTop,
  { joins }: Joinings,
  read: ReadTop | null,
  onFoundation: boolean,
  seam: number,
): string[] {
  const scale = read?.scale ?? 1;
  const mitred = top.borders.at(-1)?.kind === "mitred";
  // On foundation the last joining may be inside a part: then the whole is made of what comes off it.
  const off = !onFoundation || joins.some(({ stage }) => stage === "top" || stage === "border");
  const raw = (size: Exact): number => Math.round((exactToNumber(size) + 2 * seam) * scale);
  const whole =
    read === null || read.tilted || mitred || !off ? null : { across: raw(top.across), down: raw(top.down) };
  return sewTogether(joins, seam, scale, whole);
}

/**
 * From cut pieces to the top: what is sewn in which order, to what size, and which way every seam is pressed.
 * @param units how the units are made, from the pieces cut
 * @param spec the quilt `laid` was laid out from
 * @throws Error when the pieces sewn in this order would not come out at the sizes stated: our fault
 */
export function planMaking({ top, work }: LaidQuilt, units: readonly UnitRecord[], spec: QuiltSpec): Making {
  const { seam } = spec;
  const foundation = planFoundation(work.foundation);
  const gathered = blockMakings(work, units, top);
  const read = withFixedSeams(
    readTop(top, (design, unit) => sewnInColumns(top, units, gathered.blocks, design, unit)),
    foundation,
  );
  const joined =
    read === null ? { joins: [], partial: [] } : listJoins(top, read, seam, foundation, spec.ruler.mark);
  const scale = read?.scale ?? 1;
  const faults = joinFaults(top, joined, read, foundation !== null, seam);
  const raw = (size: Exact): number => Math.round(exactToNumber(size) + 2 * seam);
  const square = { across: raw(top.across), down: raw(top.down) };
  const diagonal = read === null ? [] : diagonalRows(top, read, seam);
  faults.push(...diagonalFaults(diagonal, top, scale));
  const borders = borderRounds(top, work, spec);
  faults.push(...borderFaults(borders, seam, square));
  if (faults.length > 0) throw new Error(`the order of sewing does not come out: ${faults.join("; ")}`);
  const pressing = read === null ? null : choosePressing(top, read, spec.mostLayers);
  const slanting = read?.tilted === true ? (pressing?.seams ?? []) : [];
  const totals = withFoundationSeams(
    // What is pieced on foundation has no steps of its own: its seams are counted with the foundation.
    seamTotals(
      units.filter(({ steps }) => steps.length > 0),
      joined,
      top,
      { seams: slanting, rows: diagonal },
      seam,
    ),
    foundation,
    seam,
  );
  const named = blockKinds(gathered, top, pressing);
  return {
    seam,
    foundation,
    scale,
    units: [...units],
    blocks: gathered.blocks,
    ...named,
    unitPressing: unitPressings(top, units, gathered.blocks, named.kinds, pressing),
    ...joined,
    diagonal,
    borders,
    pressing,
    finishing: planFinishing(work, spec),
    square: { ...square, diagonal: Math.round(Math.hypot(square.across, square.down)) },
    totals,
    thread: threadFor(totals.total),
    quilting: quiltingThread(spec.quilting, square.across, square.down),
  };
}
