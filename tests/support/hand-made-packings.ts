import type { PackingResult, StockLayout, StripSection } from "../../src/engine/types.ts";
import type { Solve } from "../../src/plan/request.ts";
import type { CutListSpec } from "../../src/spec/types.ts";
import { cutListSpec, fabric, IN, piece } from "./cut-list-spec.ts";

/** An engine that knows one answer, written out by hand; no narrower cloth works for it. */
export function answering(
  layouts: StockLayout[],
  rollLength: number,
  more: Partial<PackingResult> = {},
): Solve {
  const result: PackingResult = {
    status: "proven",
    objective: rollLength,
    rollLength,
    bound: { value: rollLength, kind: "exhausted", style: "strips-2" },
    layouts,
    missing: [],
    stats: { milliseconds: 0, cutShort: null },
    ...more,
  };
  return async (jobs) =>
    jobs.map((job) => (job.limits.target === undefined ? result : { ...result, status: "infeasible" }));
}

/** `count` strips `along` inches wide, each with `segments` segments `across` inches of one item. */
export function strips(
  count: number,
  along: number,
  item: number,
  across: number,
  segments: number,
): StripSection {
  const stack = [{ item, turned: false, count: 1 }];
  return {
    kind: "strips",
    count,
    column: { along: along * IN, segments: [{ across: across * IN, count: segments, stack }] },
  };
}

/** Two 60 in borders cut lengthwise, and twelve blocks from strips of the 30 in beside them. */
export function borders(): { spec: CutListSpec; solve: Solve } {
  const pieces = [
    piece("border", 6, 60, 2, { cut: "lengthwise" }),
    piece("block", 9, 12, 12, { turn: "fixed" }),
  ];
  const layout: StockLayout = {
    stock: "roll",
    sheet: -1,
    count: 1,
    firstCut: "across",
    sections: [
      {
        kind: "bands",
        along: 60 * IN,
        count: 1,
        bands: [{ across: 6 * IN, count: 2, stack: [{ item: 0, turned: false, count: 1 }] }],
        restAcross: 30 * IN,
        rest: [strips(4, 12, 1, 9, 3)],
      },
    ],
  };
  return {
    spec: cutListSpec([fabric("Sea", pieces, { straighten: IN / 2 })]),
    solve: answering([layout], 60 * IN),
  };
}
