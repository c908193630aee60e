import { auditPlan } from "../../src/audit/index.ts";
import { planQuilt, solveHere, USUAL_OPTIONS } from "../../src/index.ts";
import { Dice } from "../engine/exact/random-problems.ts";
import { randomFile } from "./random-files.ts";

/**
 * Most engine searches one file asks for: three fabrics or more, ways of joining, narrower widths, pieces ready cut
 * (which get three times the search), groups of kits.
 */
export const SEARCHES = 80;

/**
 * Plans the random file of a seed from its text to the audited plan. Returns what is wrong; a file that
 * the program declines with an error of its own is not wrong.
 */
export async function faultsOfFile(seed: number, effort: number): Promise<string[]> {
  const dice = new Dice(seed);
  try {
    const outcome = await planQuilt(
      randomFile(seed),
      `random-${seed}.yaml`,
      {
        ...USUAL_OPTIONS,
        style: dice.chance(1, 2) ? "strips-2" : "strips-3",
        kits: dice.chance(1, 12) ? dice.between(2, 4) : 1,
        prefer: dice.chance(1, 2) ? "sparing" : "simple",
        effort,
      },
      solveHere,
    );
    const faults: string[] = [];
    const plan = outcome.value;
    if (plan === null) {
      const declined = outcome.diagnostics.some(({ severity }) => severity === "error");
      return declined ? faults : [...faults, "no plan, and no word why"];
    }
    faults.push(...auditPlan(JSON.parse(JSON.stringify(plan))).map((fault) => `audit: ${fault}`));
    return faults;
  } catch (error) {
    return [
      `crashed: ${error instanceof Error ? (error.stack ?? error.message).slice(0, 900) : String(error)}`,
    ];
  }
}
