import type { FabricPlan, Leftover, Plan, WasteCause } from "../plan/types.ts";
import { areaOf } from "./shapes.ts";
import { leaves } from "./walk.ts";

/** Every cause, in the order of a plan; the compiler asks here for one that is new. */
const CAUSES = Object.keys({
  shrinkage: true,
  selvage: true,
  straightening: true,
  trimming: true,
  "strip-end": true,
  "uncut-end": true,
} satisfies Record<WasteCause, true>);

/** Every square tick bought is in a piece or under one cause, and the offcuts to keep are really there. */
export function checkWaste(fabric: FabricPlan, plan: Plan): string[] {
  const { keepFrom } = plan;
  const { waste, lays, purchase, width, selvage, leftovers } = fabric;
  const faults: string[] = [];
  const areas = new Map<WasteCause, number>();
  let pieces = 0;
  let bought = 0;
  const kept = new Map<string, number>();
  const bolts = purchase === null ? [] : (purchase.lengths ?? [purchase]).map(({ length }) => length);
  lays.forEach((lay, index) => {
    for (const leaf of leaves(lay.root)) {
      const area = leaf.across * leaf.along;
      if (leaf.shapes !== undefined) {
        // What lies between shapes is trimmed off; a half square tick counts with the shapes.
        const cut = fabric.pieces[leaf.piece ?? -1]?.shape?.cut ?? [];
        const inShapes = Math.ceil(leaf.shapes.length * areaOf(cut));
        pieces += inShapes;
        areas.set("trimming", (areas.get("trimming") ?? 0) + area - inShapes);
      } else if (leaf.cause === null) pieces += area;
      else areas.set(leaf.cause, (areas.get(leaf.cause) ?? 0) + area);
      const big = leaf.across >= keepFrom && leaf.along >= keepFrom;
      const keep = leaf.cause !== null && leaf.cause !== "straightening" && big;
      if (keep !== leaf.keep)
        faults.push(`an offcut of ${leaf.across} x ${leaf.along} is wrongly kept or not`);
      if (!keep || leaf.cause === null) continue;
      const key = keyOf({ lay: index, across: leaf.across, along: leaf.along, cause: leaf.cause });
      kept.set(key, (kept.get(key) ?? 0) + 1);
    }
    if (lay.source === "fixed") {
      bought += lay.across * lay.along;
      return;
    }
    const whole = width * (bolts.shift() ?? 0);
    const selvages = 2 * selvage * lay.along;
    bought += whole;
    areas.set("selvage", (areas.get("selvage") ?? 0) + selvages);
    areas.set("shrinkage", (areas.get("shrinkage") ?? 0) + whole - selvages - lay.across * lay.along);
  });
  for (const rest of sewnRests(fabric, plan)) {
    if (Math.min(rest.across, rest.along) < keepFrom) continue;
    kept.set(keyOf(rest), (kept.get(keyOf(rest)) ?? 0) + rest.count);
  }
  if (waste.bought !== bought) faults.push(`bought area ${waste.bought}, expected ${bought}`);
  if (waste.pieces !== pieces) faults.push(`area in pieces ${waste.pieces}, expected ${pieces}`);
  if (waste.lines.map(({ cause }) => cause).join() !== CAUSES.join())
    faults.push("a cause of waste is missing");
  for (const { cause, area } of waste.lines) {
    if (area !== (areas.get(cause) ?? 0)) faults.push(`${cause} ${area}, expected ${areas.get(cause) ?? 0}`);
    if (area < 0) faults.push(`${cause} is less than nothing`);
  }
  const sum = waste.lines.reduce((total, { area }) => total + area, waste.pieces);
  if (sum !== waste.bought) faults.push(`pieces and waste are ${sum}, bought ${waste.bought}`);
  return [...faults, ...checkLeftovers(leftovers, kept)];
}

/**
 * What sewing leaves of pieces: a run of joined strips beyond its length, and panels beyond the backing or wadding they
 * make, half on each side.
 */
function sewnRests({ name, pieces }: FabricPlan, { making, kits = 1 }: Plan): Leftover[] {
  const rests: Leftover[] = [];
  const runs = new Map<string, { made: number; along: number; count: number }>();
  for (const { across, along, count, joined, letter, inKits } of pieces) {
    // Whoever sews a kit of a mixed class keeps what that leaves.
    if (joined === undefined || inKits !== undefined) continue;
    const key = joined.run === undefined ? letter : `run ${joined.run}`;
    const times = joined.perKit === true ? kits : 1;
    // Every strip but the first loses a join.
    const before = runs.get(key) ?? { made: joined.loss - joined.length, along, count: times };
    runs.set(key, { ...before, made: before.made + (count / times) * (across - joined.loss) });
  }
  for (const { made, along, count } of runs.values())
    if (made > 0) rests.push({ lay: -1, across: made, along, count, cause: "run-end" });
  for (const { across, along, count, fullWidth, joined, uses } of pieces) {
    const { backing, wadding } = making?.finishing ?? { backing: null, wadding: null };
    const isBacking =
      backing?.fabric === name && uses.some(({ purpose }) => purpose.for === "backing-panels");
    const isWadding = uses.some(({ purpose }) => purpose.for === "wadding");
    const made = isBacking ? backing : isWadding ? wadding : null;
    if (!fullWidth || joined !== undefined || made === null || making === undefined) continue;
    const panels = count / kits;
    const wide = panels * across - (isBacking ? (panels - 1) * 2 * making.seam : 0);
    const side = Math.floor((wide - (along === made.down ? made.across : made.down)) / 2);
    if (side > 0) rests.push({ lay: -1, across: side, along, count: 2 * kits, cause: "panel-side" });
  }
  // A strip longer than the set it is sewn into is cut to the set's length.
  for (const { strips, fullSets, fullLength } of (making?.units ?? []).flatMap(({ stripSets }) => stripSets))
    for (const { fabric, letter } of strips) {
      const cut = fabric === name ? pieces.find((piece) => piece.letter === letter) : undefined;
      if (cut === undefined || fullSets === 0 || cut.across <= fullLength) continue;
      const rest = { across: cut.across - fullLength, along: cut.along, count: fullSets * kits };
      rests.push({ lay: -1, ...rest, cause: "set-end" });
    }
  return rests;
}

function checkLeftovers(leftovers: readonly Leftover[], kept: Map<string, number>): string[] {
  const faults: string[] = [];
  for (const leftover of leftovers) {
    const key = keyOf(leftover);
    if (kept.get(key) !== leftover.count) faults.push(`leftover ${key} is not there ${leftover.count} times`);
    kept.delete(key);
  }
  if (kept.size > 0) faults.push("an offcut worth keeping is not listed");
  return faults;
}

function keyOf({ lay, across, along, cause }: Omit<Leftover, "count">): string {
  return `${lay}: ${across} x ${along} ${cause}`;
}
