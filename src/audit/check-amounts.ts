import type { CutPiece } from "../cutlist/types.ts";
import type { FabricPlan, Lay, Plan } from "../plan/types.ts";

const TICKS = { mm: 640, cm: 6400, in: 16256, yd: 585216, m: 640000 } as const;
const MEASURES = ["mm", "cm", "in", "yd", "m"] as const;

/** What is bought is enough, said rightly and no more than needed; nothing is called proved that is not. */
export function checkAmounts(fabric: FabricPlan, plan: Plan): string[] {
  const faults: string[] = [];
  const { lays, purchase, bound, sturdiness } = fabric;
  const usable = washed(fabric.width - 2 * fabric.selvage, fabric.shrinkAcross);
  if (fabric.usable !== usable) faults.push(`usable width ${fabric.usable}, expected ${usable}`);
  const bolts = lays.filter(({ source }) => source === "bolt");
  const [bolt] = bolts;
  const lengths = purchase === null ? [] : (purchase.lengths ?? [purchase]);
  if (bolts.length !== lengths.length || purchase?.lengths?.length === 1)
    faults.push("what is bought and what is cut do not agree");

  let used = 0;
  let uncut = 0;
  bolts.forEach((one, i) => {
    const own = { used: 0, uncut: 0 };
    for (const part of one.root.parts) {
      if (part.role === "uncut-end") own.uncut += part.along;
      else if (part.role !== "straightening") own.used += part.along;
    }
    used += own.used;
    uncut += own.uncut;
    if (one.across !== usable) faults.push(`the ${one.name} is laid ${one.across} wide, expected ${usable}`);
    const spare = i === bolts.length - 1 ? fabric.spare : 0;
    if (own.uncut < spare) faults.push(`${own.uncut} is spare, wanted ${spare}`);
    faults.push(...checkLength({ ...fabric, spare }, one, lengths[i], own.used));
  });
  if (bound.used !== used) faults.push(`length used ${bound.used}, the strips take ${used}`);
  if (sturdiness.spareLength !== uncut)
    faults.push(`spare length ${sturdiness.spareLength}, expected ${uncut}`);
  if (purchase !== null && bolt !== undefined) {
    for (const what of ["length", "needed"] as const) {
      const sum = lengths.reduce((total, one) => total + one[what], 0);
      if (purchase[what] !== sum) faults.push(`${what} ${purchase[what]}, the bolts make ${sum}`);
    }
    if (lengthSaid(purchase.text) !== purchase.length)
      faults.push(`"${purchase.text}" is not what is bought`);
    if (purchase.cost !== costOf(fabric, purchase.length)) faults.push(`cost ${purchase.cost} is wrong`);
  }

  faults.push(...checkMistakes(fabric));
  if (lengths.length < 2) faults.push(...checkStacked(fabric));
  else if (fabric.stacked !== undefined)
    faults.push("stacked subcuts are told of where several bolts are cut");
  return [...faults, ...checkBound(fabric, plan, used), ...checkNarrowest(fabric)];
}

/** Nothing is called the least, or proved, that is not. */
function checkBound(fabric: FabricPlan, plan: Plan, used: number): string[] {
  const { bound, purchase } = fabric;
  const faults: string[] = [];
  if (bound.style !== plan.style) faults.push(`the bound speaks of ${bound.style}`);
  if (!(bound.least >= 0 && bound.least <= used))
    faults.push(`least length ${bound.least} passes ${used} used`);
  if (bound.least > bound.ruleOfThumb) faults.push("the rule of thumb beats what is called the least");
  if (bound.lengthProven !== (bound.least === used)) faults.push("length wrongly called proved or not");
  const least = leastOf(fabric, bound.least);
  if (bound.purchaseProven !== (purchase === null || least === purchase.length))
    faults.push("purchase wrongly called proved or not");
  return faults;
}

/** The narrowest fabric that would do is told: no narrower than any piece, no wider than what is cut. */
function checkNarrowest({ sturdiness, pieces, usable }: FabricPlan): string[] {
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
  if (narrowest === null || (narrowest > 0 && narrowest >= widest && narrowest <= usable)) return [];
  return [`narrowest width ${narrowest} is not between ${widest} and ${usable}`];
}

/** One length is laid as it is bought: enough for what is cut of it, no more than that takes, and no more than a bolt has. */
function checkLength(
  fabric: FabricPlan,
  lay: Lay,
  said: { length: number; needed: number; text: string } | undefined,
  used: number,
): string[] {
  if (said === undefined) return [];
  const faults: string[] = [];
  const right = purchaseOf(fabric, used);
  if (said.needed !== right.needed) faults.push(`needed ${said.needed}, expected ${right.needed}`);
  if (said.length !== right.length) faults.push(`bought ${said.length}, expected ${right.length}`);
  if (said.length < said.needed) faults.push("less is bought than is needed");
  if (lay.along !== washed(said.length, fabric.shrinkAlong))
    faults.push(`the ${lay.name} is laid ${lay.along} long, which is not what was bought`);
  if (lengthSaid(said.text) !== said.length) faults.push(`"${said.text}" is not what is bought`);
  if (fabric.bolt !== undefined && said.length > fabric.bolt)
    faults.push(`${said.length} is bought of a bolt of ${fabric.bolt}`);
  return faults;
}

/** The least that can be bought for so much to be cut: of as few bolts as hold it, each with its end straightened. */
function leastOf(fabric: FabricPlan, used: number): number {
  const { straighten, spare, shrinkAlong, sold, bolt } = fabric;
  const one = purchaseOf(fabric, used).length;
  const longest = bolt === undefined ? one : bolt - (bolt % sold.step);
  const most = washed(longest, shrinkAlong) - straighten;
  if (one <= longest || most <= 0) return one;
  const bolts = Math.ceil((used + spare) / most);
  const all = purchaseOf({ ...fabric, straighten: bolts * straighten }, used).length;
  return Math.max(all, bolts * Math.ceil(sold.least / sold.step) * sold.step);
}

function sidesOf({ shape }: CutPiece): [number, number] {
  const cut = shape?.cut ?? [];
  return [Math.max(0, ...cut.map(({ x }) => x)), Math.max(0, ...cut.map(({ y }) => y))];
}

/**
 * What one strip cut wrongly costs: its width once more, taken from the spare before any is bought, of the bolt that has
 * most room for it or of a further one.
 */
function checkMistakes(fabric: FabricPlan): string[] {
  const { purchase, sturdiness, sold, bolt: end } = fabric;
  const { mistakes } = sturdiness;
  const bolts = fabric.lays.filter(({ source }) => source === "bolt").map(({ root }) => root.parts);
  const cutFrom = (parts: Lay["root"]["parts"]) => parts.filter(({ cause }) => cause === null);
  const widths = bolts.flatMap(cutFrom).map(({ along }) => along);
  if (mistakes === undefined) return widths.length === 0 ? [] : ["nothing says what a spoiled strip costs"];
  if (purchase === null || widths.length === 0) return ["a strip is spoiled where none is cut"];
  const often = new Map<number, number>();
  for (const width of widths) often.set(width, (often.get(width) ?? 0) + 1);
  const most = Math.max(...often.values());
  const usual = Math.max(...[...often].filter(([, times]) => times === most).map(([width]) => width));
  const expected = { usual, worst: Math.max(...widths) };
  return (["usual", "worst"] as const).flatMap((which) => {
    const { width, more, cost } = mistakes[which];
    const lengths = purchase.lengths?.map((one) => one.length) ?? [purchase.length];
    const longest = end === undefined ? Infinity : end - (end % sold.step);
    const beyond = [...bolts, []].map((parts, i) => {
      const taken = cutFrom(parts).reduce((sum, { along }) => sum + along, width);
      const asked = purchaseOf({ ...fabric, spare: 0 }, taken).length;
      if (i === bolts.length) return asked;
      return asked > longest ? Infinity : Math.max(0, asked - (lengths[i] ?? 0));
    });
    const length = purchase.length + Math.min(...beyond);
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
  const [, whole = "0", top, bottom, decimal = "0", named] = found;
  const unit = MEASURES.find((each) => each === named) ?? "mm";
  const fraction = top === undefined ? 0 : Number(top) / Number(bottom);
  return Math.round((Number(whole) + fraction + Number(decimal)) * TICKS[unit]);
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
