import type { LaidQuilt } from "../quilt/index.ts";
import { exactToNumber } from "../quilt/index.ts";
import type { QuiltSpec } from "../spec/quilt-types.ts";
import { seamTotals, threadFor, unitBatches } from "./amounts.ts";
import { planFinishing } from "./finishing.ts";
import { listJoins, sewTogether } from "./joins.ts";
import { choosePressing } from "./press.ts";
import { readTop } from "./read-top.ts";
import type { Making } from "./types.ts";

export type * from "./types.ts";

/**
 * From cut pieces to the top: what is sewn in which order, to what size, and which way every seam is pressed.
 * @param spec the quilt `laid` was laid out from
 * @throws Error when the pieces sewn in this order would not come out at the sizes stated: our fault
 */
export function planMaking({ top, work }: LaidQuilt, spec: QuiltSpec): Making {
  const { seam } = spec;
  const units = unitBatches(work);
  const read = readTop(top);
  const { joins, partial } = read === null ? { joins: [], partial: [] } : listJoins(top, read, seam);
  const scale = read?.scale ?? 1;
  const mitred = top.borders.at(-1)?.kind === "mitred";
  const whole =
    read === null || read.tilted || mitred
      ? null
      : {
          across: Math.round((exactToNumber(top.across) + 2 * seam) * scale),
          down: Math.round((exactToNumber(top.down) + 2 * seam) * scale),
        };
  const faults = sewTogether(joins, seam, scale, whole);
  if (faults.length > 0) throw new Error(`the order of sewing does not come out: ${faults.join("; ")}`);
  const pressing = read === null ? null : choosePressing(top, read);
  const diagonal = read?.tilted === true ? (pressing?.seams ?? []) : [];
  const totals = seamTotals(units, joins, top, diagonal, seam);
  return {
    seam,
    scale,
    units,
    joins,
    partial,
    pressing,
    finishing: planFinishing(work, spec),
    totals,
    thread: threadFor(totals.total),
  };
}
