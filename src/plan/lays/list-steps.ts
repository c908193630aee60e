import { nth } from "../../length/nth.ts";
import type { Ticks } from "../../length/types.ts";
import type { CuttingStep, Lay, Part, SubcutStep } from "../types.ts";
import { flagsFor, type Table } from "./flag-steps.ts";
import { everyPart, piecesIn, stripsAndBands } from "./parts.ts";

/**
 * The numbered instructions for all lays: straighten the end, then one step for each kind of strip or
 * band, in the order their first one is cut.
 */
export function listSteps(lays: readonly Lay[], table: Table): CuttingStep[] {
  const steps: CuttingStep[] = [];
  lays.forEach(({ root }, lay) => {
    const kinds = new Map<number, Part[]>();
    for (const part of root.parts)
      if (part.role === "straightening")
        steps.push(straightenStep(part, root.cut === "along", lay, steps.length + 1));
    for (const part of stripsAndBands(root)) {
      const alike = kinds.get(part.kind);
      if (alike === undefined) kinds.set(part.kind, [part]);
      else alike.push(part);
    }
    for (const alike of kinds.values()) steps.push(cutStep(alike, lay, steps.length + 1, table));
  });
  return steps;
}

function straightenStep(part: Part, upright: boolean, lay: number, number: number): CuttingStep {
  const [width, run] = upright ? [part.across, part.along] : [part.along, part.across];
  return { number, lay, kind: "straighten", count: 1, width, run, strips: [], subcuts: [], flags: [] };
}

function cutStep(alike: readonly Part[], lay: number, number: number, table: Table): CuttingStep {
  const part = nth(alike, 0);
  const [width, run] = widthAndRun(part);
  return {
    number,
    lay,
    kind: part.role === "band" ? "bands" : "strips",
    count: alike.length,
    width,
    run,
    strips: alike.map((strip) => strip.number),
    subcuts: listSubcuts(part, alike.length),
    flags: flagsFor(part, width, run, table),
  };
}

/** A strip's width and run. Its subcuts go square to its run, wherever the strip lies. */
function widthAndRun(strip: Part): [width: Ticks, run: Ticks] {
  return strip.cut === "along" ? [strip.along, strip.across] : [strip.across, strip.along];
}

/** What is cut from one strip, in the order it lies there; equal pieces cut the same way gathered. */
function listSubcuts(strip: Part, strips: number): SubcutStep[] {
  const byKey = new Map<string, SubcutStep>();
  for (const segment of strip.parts) {
    const rows = segment.parts.filter((part) => part.cause === null).length;
    const how = segment.parts.length === 0 ? "whole" : rows > 1 ? "stacked" : "trimmed";
    const segmentAcross = strip.cut === "along" ? segment.across : segment.along;
    for (const part of everyPart(segment)) {
      const { piece, turned, across, along, shapes } = part;
      if (piece === null) continue;
      const key = `${piece} ${turned} ${how} ${segmentAcross} ${shapes?.length}`;
      const before = byKey.get(key)?.perStrip ?? 0;
      const perStrip = before + piecesIn(part);
      byKey.set(key, {
        piece,
        turned,
        count: perStrip * strips,
        perStrip,
        ...(shapes === undefined ? {} : { run: shapes.length }),
        segmentAcross,
        across,
        along,
        how,
      });
    }
  }
  return [...byKey.values()];
}
