import type { CutPiece } from "../cutlist/types.ts";
import type { FabricPlan, Lay, Plan } from "../plan/types.ts";

const TICKS = { mm: 640, cm: 6400, in: 16256, yd: 585216, m: 640000 } as const;

/** What is bought is enough, said rightly and no more than needed; nothing is called proved that is not. */
export function checkAmounts(fabric: FabricPlan, plan: Plan): string[] {
  const faults: string[] = [];
  const { lays, purchase, bound, sturdiness, pieces } = fabric;
  const usable = washed(fabric.width - 2 * fabric.selvage, fabric.shrinkAcross);
  if (fabric.usable !== usable) faults.push(`usable width ${fabric.usable}, expected ${usable}`);
  const bolts = lays.filter(({ source }) => source === "bolt");
  const [bolt] = bolts;
  if (bolts.length !== (purchase === null ? 0 : 1))
    faults.push("what is bought and what is cut do not agree");

  let used = 0;
  let uncut = 0;
  if (bolt !== undefined) {
    for (const part of bolt.root.parts) {
      if (part.role === "uncut-end") uncut += part.along;
      else if (part.role !== "straightening") used += part.along;
    }
    if (bolt.across !== usable) faults.push(`the bolt is laid ${bolt.across} wide, expected ${usable}`);
    if (uncut < fabric.spare) faults.push(`${uncut} is spare, wanted ${fabric.spare}`);
  }
  if (bound.used !== used) faults.push(`length used ${bound.used}, the strips take ${used}`);
  if (sturdiness.spareLength !== uncut)
    faults.push(`spare length ${sturdiness.spareLength}, expected ${uncut}`);
  if (purchase !== null && bolt !== undefined) {
    const right = purchaseOf(fabric, used);
    if (purchase.needed !== right.needed) faults.push(`needed ${purchase.needed}, expected ${right.needed}`);
    if (purchase.length !== right.length) faults.push(`bought ${purchase.length}, expected ${right.length}`);
    if (purchase.length < purchase.needed) faults.push("less is bought than is needed");
    if (bolt.along !== washed(purchase.length, fabric.shrinkAlong))
      faults.push(`the bolt is laid ${bolt.along} long, which is not what was bought`);
    if (lengthSaid(purchase.text) !== purchase.length)
      faults.push(`"${purchase.text}" is not what is bought`);
    if (purchase.cost !== costOf(fabric, purchase.length)) faults.push(`cost ${purchase.cost} is wrong`);
  }

  faults.push(...checkMistakes(fabric, bolt, used), ...checkStacked(fabric));

  if (bound.style !== plan.style) faults.push(`the bound speaks of ${bound.style}`);
  if (!(bound.least >= 0 && bound.least <= used))
    faults.push(`least length ${bound.least} passes ${used} used`);
  if (bound.least > bound.ruleOfThumb) faults.push("the rule of thumb beats what is called the least");
  if (bound.lengthProven !== (bound.least === used)) faults.push("length wrongly called proved or not");
  const least = purchaseOf(fabric, bound.least).length;
  if (bound.purchaseProven !== (purchase === null || least === purchase.length))
    faults.push("purchase wrongly called proved or not");
  const narrowest = sturdiness.narrowestUsable;
  const widest = Math.max(
    0,
    // Of a shape the box round it is meant: its rectangle is larger by what rounds it to the marks.
    ...pieces.map((p) =>
      p.nest !== undefined
        ? Math.min(...sidesOf(p))
        : p.fullWidth
          ? 0
          : p.turnable
            ? Math.min(p.across, p.along)
            : p.across,
    ),
  );
  if (narrowest !== null && !(narrowest > 0 && narrowest >= widest && narrowest <= usable))
    faults.push(`narrowest width ${narrowest} is not between ${widest} and ${usable}`);
  return faults;
}

function sidesOf({ shape }: CutPiece): [number, number] {
  const cut = shape?.cut ?? [];
  return [Math.max(0, ...cut.map(({ x }) => x)), Math.max(0, ...cut.map(({ y }) => y))];
}

/** What one strip cut wrongly costs: its width once more, taken from the spare before any is bought. */
function checkMistakes(fabric: FabricPlan, bolt: Lay | undefined, used: number): string[] {
  const { purchase, sturdiness } = fabric;
  const { mistakes } = sturdiness;
  const widths = (bolt?.root.parts ?? []).filter(({ cause }) => cause === null).map(({ along }) => along);
  if (mistakes === undefined) return widths.length === 0 ? [] : ["nothing says what a spoiled strip costs"];
  if (purchase === null || widths.length === 0) return ["a strip is spoiled where none is cut"];
  const often = new Map<number, number>();
  for (const width of widths) often.set(width, (often.get(width) ?? 0) + 1);
  const most = Math.max(...often.values());
  const usual = Math.max(...[...often].filter(([, times]) => times === most).map(([width]) => width));
  const expected = { usual, worst: Math.max(...widths) };
  return (["usual", "worst"] as const).flatMap((which) => {
    const { width, more, cost } = mistakes[which];
    const length = Math.max(purchase.length, purchaseOf({ ...fabric, spare: 0 }, used + width).length);
    const dearer = costOf(fabric, length);
    const right =
      width === expected[which] &&
      more === length - purchase.length &&
      cost === (dearer === null ? null : dearer - (costOf(fabric, purchase.length) ?? 0));
    return right ? [] : [`the ${which} spoiled strip is told wrongly`];
  });
}

/** Thousandths of a length left after washing, to the tick below. */
function washed(length: number, shrink: number): number {
  return Number((BigInt(Math.max(0, length)) * BigInt(1000 - shrink)) / 1000n);
}

function purchaseOf({ straighten, spare, shrinkAlong, sold }: FabricPlan, used: number) {
  const kept = BigInt(1000 - shrinkAlong);
  const needed = Number((BigInt(used + straighten + spare) * 1000n + kept - 1n) / kept);
  const steps = Math.ceil(Math.max(needed, sold.least) / sold.step);
  return { needed, length: steps * sold.step };
}

/** Price in hundredths, a half rounded up. */
function costOf({ price }: FabricPlan, length: number): number | null {
  if (price === null) return null;
  const per = BigInt(TICKS[price.per]);
  return Number((2n * BigInt(length) * BigInt(price.hundredths) + per) / (2n * per));
}

/** Reads an amount back: `1 3/8 yd`, `0.75 m`. NaN when it is not one. */
function lengthSaid(text: string): number {
  const found = /^(?:(\d+) )?(?:(\d+)\/(\d+)|(\d+(?:\.\d+)?)) (mm|cm|in|yd|m)$/.exec(text);
  if (found === null) return Number.NaN;
  const [, whole = "0", top, bottom, decimal = "0", unit = "mm"] = found;
  const fraction = top === undefined ? 0 : Number(top) / Number(bottom);
  return Math.round((Number(whole) + fraction + Number(decimal)) * TICKS[unit as keyof typeof TICKS]);
}

/** What is said to save does save, in a style that was not asked for. */
function checkStacked(fabric: FabricPlan): string[] {
  const { stacked, purchase, bound, sold } = fabric;
  if (stacked === undefined) return [];
  const { length, needed, cost, text } = stacked.purchase;
  const faults: string[] = [];
  if (purchase === null || length >= purchase.length || stacked.strips < 1 || bound.style !== "strips-2")
    faults.push("stacked subcuts are said to save what they do not");
  if (length < needed || length % sold.step !== 0 || lengthSaid(text) !== length)
    faults.push(`"${text}" is not what stacked subcuts would take`);
  if (cost !== costOf(fabric, length)) faults.push(`cost ${cost} with stacked subcuts is wrong`);
  return faults;
}
