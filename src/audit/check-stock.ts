import type { FabricPlan, FixedStock, Lay, Mix } from "../plan/types.ts";

/** Cloth in fixed sizes is what it was said to be, no more of it than there is, and paid for rightly. */
export function checkStock(fabric: FabricPlan): string[] {
  const { lays, stock = [], mix } = fabric;
  const faults: string[] = [];
  const kinds = new Map(stock.map((kind) => [kind.name, kind]));
  if (kinds.size < stock.length) faults.push("two kinds of cloth have one name");
  const used = new Map<string, number>();
  for (const lay of lays) {
    if (lay.source !== "fixed") continue;
    const kind = kinds.get(lay.name);
    used.set(lay.name, (used.get(lay.name) ?? 0) + 1);
    if (kind === undefined) faults.push(`${lay.name} is cut, but there is none`);
    else faults.push(...checkCloth(lay, kind));
  }
  for (const kind of stock) {
    const { name, available, trim, price, from } = kind;
    const count = used.get(name) ?? 0;
    if (kind.used !== count) faults.push(`${kind.used} of ${name} are said to be used, ${count} are cut`);
    if (count > available) faults.push(`${count} of ${name} are cut, there are ${available}`);
    const lost = kind.squareUp ?? { across: 0, along: 0 };
    if (
      ![lost.across, lost.along].every((side) => Number.isSafeInteger(side) && side >= 0) ||
      (kind.strip && lost.along > 0)
    )
      faults.push(`${lost.across} x ${lost.along} is lost in squaring ${name}`);
    if (!(Number.isSafeInteger(trim) && trim >= 0)) faults.push(`${trim} is trimmed off ${name}`);
    if (from !== "shop" && price !== null) faults.push(`${name} is there already, and has a price`);
  }
  const bought = stock.some(({ from }) => from === "shop");
  if (mix === undefined)
    return bought ? [...faults, "cloth is bought ready cut, and nothing says why"] : faults;
  return [...faults, ...checkMix(fabric, stock, mix)];
}

function checkCloth(lay: Lay, { name, across, along, strip }: FixedStock): string[] {
  const faults: string[] = [];
  if (lay.across !== across || lay.along !== along)
    faults.push(`${name} is laid ${lay.across} x ${lay.along}, it is ${across} x ${along}`);
  if (!strip) return faults;
  const { root } = lay;
  const [only, another] = root.parts;
  const whole = only?.role === "strip" && only.across === across && only.along === along;
  if (root.cut !== "across" || !whole || another !== undefined)
    faults.push(`${name} is a strip already, and is cut into strips`);
  return faults;
}

function checkMix({ purchase }: FabricPlan, stock: readonly FixedStock[], mix: Mix): string[] {
  const faults: string[] = [];
  const paid = stock.filter(({ from, used }) => from === "shop" && used > 0);
  const unpriced = paid.some(({ price }) => price === null);
  const yardage = purchase === null ? 0 : purchase.cost;
  const cost = paid.reduce((sum, { price, used }) => sum + (price ?? 0) * used, yardage ?? 0);
  const right = unpriced || yardage === null ? null : cost;
  if (mix.cost !== right) faults.push(`everything bought costs ${mix.cost}, expected ${right}`);
  if (mix.cost === null)
    return mix.choices.length === 0 ? faults : [...faults, "what has no price is weighed"];
  const [taken, ...others] = mix.choices;
  const counts = (choice: Mix["choices"][number]) =>
    choice.bought
      .map(({ name, count }) => `${count} ${name}`)
      .sort()
      .join();
  const told = taken !== undefined && taken.cost === mix.cost && taken.yardage === (purchase?.text ?? null);
  const bought = paid
    .map(({ name, used }) => `${used} ${name}`)
    .sort()
    .join();
  if (!told || counts(taken) !== bought) faults.push("what is told as taken is not what is bought");
  if (others.some((other) => other.cost < mix.cost!)) faults.push("a cheaper choice is told and not taken");
  return faults;
}
