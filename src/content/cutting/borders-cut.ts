import type { Plan } from "../../plan/types.ts";
import { bagsForUse } from "./bags.ts";

/** Letters of the bags whose lengths wait until the top is measured: strips of plain borders. */
export function borderLetters(plan: Plan): ReadonlySet<string> {
  const rounds = plan.making?.borders ?? [];
  const strips = rounds.flatMap((round) => (round.pieced ? [] : round.strips));
  return new Set(
    strips.flatMap(({ fabric, use }) => bagsForUse(plan, fabric, use).map(({ letter }) => letter)),
  );
}
