import { type Known, unknown } from "../audit/sewing/known.ts";
import { faultsByUnit, sewingOf } from "../audit/sewing/sewn.ts";
import { randomQuilt } from "./random-quilts.ts";
import { UNIT_SIZES, unitFaults } from "./unit-quilts.ts";

/** Of so many cut lists asked for, a fifth as many quilts: 10,000 make 2,000. */
const QUILTS_IN = 5;

/** What is wrong with the quilt of a seed once it is sewn on paper; empty too where the file is declined. */
function faultsOfQuilt(seed: number): string[] {
  try {
    const sewing = sewingOf(randomQuilt(seed));
    return sewing === null ? [] : unknown(faultsByUnit(sewing));
  } catch (error) {
    return [
      `crashed: ${error instanceof Error ? (error.stack ?? error.message).slice(0, 600) : String(error)}`,
    ];
  }
}

/** Sews random quilts, and every unit by every method at every size; returns how many are wrong. */
export function fuzzSewing(count: number, first: number, log: (line: string) => void): number {
  let wrong = 0;
  const quilts = Math.ceil(count / QUILTS_IN);
  for (let seed = first; seed < first + quilts; seed += 1) {
    const faults = faultsOfQuilt(seed);
    if (faults.length === 0) continue;
    wrong += 1;
    log(`WRONG quilt of seed ${seed}: ${faults.join("; ")}\n${randomQuilt(seed)}`);
  }
  const hit = new Set<Known>();
  const units = UNIT_SIZES.flatMap((_, size) => unitFaults(size, 6, hit));
  for (const fault of units) log(`WRONG unit: ${fault}`);
  log(
    `${quilts} random quilts sewn from seed ${first}, and every unit at ${UNIT_SIZES.length} sizes: ${wrong + units.length} wrong`,
  );
  return wrong + units.length;
}
