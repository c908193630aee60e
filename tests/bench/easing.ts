import { placeAt, spotsOf } from "../../src/engine/easing/places.ts";
import { WORK_WEIGHTS, workOf } from "../../src/engine/easing/work-measure.ts";
import { paidFor } from "../../src/engine/easing/work-program.ts";
import { lessenWork, pack } from "../../src/engine/index.ts";
import { highsSolver } from "../../src/engine/solver/highs.ts";
import type { BenchCase } from "./cases.ts";
import { leastWork } from "./work-bound.ts";

/** The ruler on the table, a shop's step and the straightened end, in eighths of an inch as the corpus has them. */
const TABLE = { across: 384, inside: 192, narrow: 8 } as const;
const STEP = 36;
const STRAIGHTEN = 8;
/** Counted work for a plan, and milliseconds for the yardstick. */
const EFFORT = 600;
const YARDSTICK = 1000;

const PARTS = ["strips", "settings", "kinds", "turns", "trims", "subcuts"] as const;

function line(name: string, cells: readonly (string | number)[]): string {
  return `${name.padEnd(24)}${cells.map((cell) => String(cell).padStart(10)).join("")}`;
}

const parts = (work: Record<(typeof PARTS)[number], number>) => PARTS.map((part) => work[part]);

/**
 * How much work easing leaves within the same purchase, beside what no plan can do with less of: the plans of the
 * shortest length first, then those eased, then how far these may be above the least.
 */
export async function easing(cases: readonly BenchCase[], log: (text: string) => void): Promise<number> {
  const solver = await highsSolver();
  const before = Object.fromEntries(PARTS.map((part) => [part, 0])) as Record<(typeof PARTS)[number], number>;
  const after = { ...before };
  let [total, least, reached, asked] = [0, 0, 0, 0];
  log(line("case", [...PARTS, "work", "least", "gap %"]));
  for (const { name, problem } of cases) {
    const found = await pack(problem, { effort: EFFORT });
    const limit = Math.ceil((found.rollLength + STRAIGHTEN) / STEP) * STEP - STRAIGHTEN;
    const eased = await lessenWork(problem, found, limit, { effort: EFFORT }, TABLE);
    const [was, is] = [workOf(problem, found, TABLE), workOf(problem, eased, TABLE)];
    for (const part of PARTS) {
      before[part] += was[part];
      after[part] += is[part];
    }
    const [place] = spotsOf(problem, eased, limit).flatMap((spot) => placeAt(problem, spot, TABLE) ?? []);
    if (place === undefined) continue;
    const { kinds, run, demand, room, beside } = place;
    const paid = paidFor(beside);
    const bound = leastWork({ kinds, run, demand, limit: room, paid }, solver, YARDSTICK);
    if (bound === null) continue;
    // What the strips of the whole width take is the same in every plan.
    const same = wholeStrips(
      beside.reduce((sum, { count }) => sum + count, 0),
      paid.widths.size,
    );
    const bar = Math.min(is.total, same + bound);
    asked += 1;
    total += is.total;
    least += bar;
    if (is.total - bar < 1) reached += 1;
    log(line(name, [...parts(is), is.total, Math.round(bar), ((100 * (is.total - bar)) / bar).toFixed(1)]));
  }
  log(line("shortest, together", parts(before)));
  log(line("eased, together", parts(after)));
  log(
    `${asked} cases: ${total} against at least ${Math.round(least)}, a gap of ${((100 * (total - least)) / least).toFixed(1)} %; ${reached} are the least`,
  );
  return 0;
}

function wholeStrips(strips: number, widths: number): number {
  const { strips: each, settings, kinds } = WORK_WEIGHTS;
  return each * strips + (settings + kinds) * widths;
}
