import { type Lacking, stashLacks } from "../diagnostics/stash.ts";
import type { Outcome } from "../diagnostics/types.ts";
import { formatSize, roomToMark } from "../length/index.ts";
import type { FixedStock, Plan } from "../plan/types.ts";
import { addCloth, removeCloth } from "./change-stash.ts";
import type { Stash, StashCloth } from "./types.ts";

/** What a plan takes out of the drawer and what it puts back. */
export interface Taken {
  stash: Stash;
  used: StashCloth[];
  kept: StashCloth[];
}

function gathered(cloths: readonly StashCloth[]): StashCloth[] {
  const found = new Map<string, StashCloth>();
  for (const cloth of cloths) {
    const key = JSON.stringify([cloth.fabric, cloth.across, cloth.along]);
    found.set(key, { ...cloth, count: cloth.count + (found.get(key)?.count ?? 0) });
  }
  return [...found.values()];
}

/** Rests of what was cut before that nothing more is cut from, large enough to keep. */
function restsPutBy(
  stock: readonly FixedStock[],
  { keepFrom }: Plan,
): Pick<StashCloth, "across" | "along" | "count">[] {
  return stock.flatMap(({ across, along, available, used, begun }) =>
    begun === true && available > used && Math.min(across, along) >= keepFrom
      ? [{ across, along, count: available - used }]
      : [],
  );
}

/** Whether a lay is a piece of the drawer: its kind says where it came from. */
function isOfStash(stock: readonly FixedStock[], name: string): boolean {
  return stock.some((kind) => kind.name === name && kind.from === "stash");
}

/**
 * The table after a plan has been cut: the pieces of cloth it lays out are gone, the offcuts worth keeping are
 * added, those of what was bought too. All of it or nothing.
 * @param note what is written beside what is left
 */
export function takePlan(stash: Stash, plan: Plan, file: string, note: string): Outcome<Taken> {
  const used = gathered(
    plan.fabrics.flatMap(({ name, lays, stock = [], done }) => [
      ...(done?.took ?? []).map((size) => ({ fabric: name, ...size, note: "" })),
      ...lays
        .filter((lay) => lay.source === "fixed" && isOfStash(stock, lay.name))
        .map(({ across, along }) => ({ fabric: name, across, along, count: 1, note: "" })),
    ]),
  );
  const kept = gathered(
    plan.fabrics.flatMap(({ name, leftovers, stock = [], done }) =>
      [...leftovers, ...restsPutBy([...stock, ...(done?.kept ?? [])], plan)].map(
        ({ across, along, count }) => {
          const room = (length: number) => roomToMark(length, plan.ruler);
          return { fabric: name, across: room(across), along: room(along), count, note };
        },
      ),
    ),
  );
  let left = stash;
  const lacking: Lacking[] = [];
  for (const cloth of used) {
    const fewer = removeCloth(left, cloth);
    if (fewer !== null) left = fewer;
    else
      lacking.push({
        count: cloth.count,
        fabric: cloth.fabric,
        size: formatSize(cloth.across, cloth.along, plan.ruler),
      });
  }
  if (lacking.length > 0) return { value: null, diagnostics: [stashLacks(file, lacking)] };
  for (const cloth of kept) left = addCloth(left, cloth, plan.ruler.unit);
  return { value: { stash: left, used, kept }, diagnostics: [] };
}
