import { beforeAll, describe, expect, test } from "vitest";
import { auditPlan } from "../../src/audit/index.ts";
import { listCuts } from "../../src/cutlist/list-cuts.ts";
import { everyPart } from "../../src/plan/lays/parts.ts";
import { planCutLists } from "../../src/plan/plan-cut-lists.ts";
import type { CuttingStep, FabricPlan, Part, Plan } from "../../src/plan/types.ts";
import { cutListSpec, fabric, piece, solveHere } from "../support/cut-list-spec.ts";
import { goodPlan } from "../support/good-plan.ts";
import { borders } from "../support/hand-made-packings.ts";

let sound: Plan;

beforeAll(async () => {
  sound = await goodPlan();
});

function parts(fabric: FabricPlan): Part[] {
  return fabric.lays.flatMap(({ root }) => [...everyPart(root)]);
}

function strips(fabric: FabricPlan): Part[] {
  return parts(fabric).filter(({ role }) => role === "strip");
}

function piecesCut(fabric: FabricPlan): Part[] {
  return parts(fabric).filter(({ piece }) => piece !== null);
}

function find<T>(list: readonly T[], wanted: (item: T) => boolean): T {
  const found = list.find(wanted);
  if (found === undefined) throw new Error("the sample plan lacks what this test corrupts");
  return found;
}

function stripStep(fabric: FabricPlan): CuttingStep {
  return find(fabric.steps, ({ kind, subcuts }) => kind === "strips" && subcuts.length > 0);
}

/** Each spoils one thing in a copy of a sound plan, as a fault in building or a hand in the file would. */
const CORRUPTIONS: Readonly<Record<string, (fabric: FabricPlan, plan: Plan) => void>> = {
  "a piece is a tick too small": (f) => {
    find(piecesCut(f), () => true).across -= 1;
  },
  "a piece is a tick too long for its strip": (f) => {
    find(piecesCut(f), () => true).along += 1;
  },
  "a piece overlaps its neighbour": (f) => {
    const row = find(strips(f), ({ parts }) => parts.length > 2);
    row.parts[1]!.x -= 8;
  },
  "a piece lies outside the usable width": (f) => {
    const strip = find(strips(f), () => true);
    strip.parts.at(-1)!.x += strip.across;
  },
  "a strip is moved down": (f) => {
    find(strips(f), () => true).y += 16;
  },
  "a strip is left out": (f) => {
    const root = f.lays[0]!.root;
    root.parts.splice(
      root.parts.findIndex(({ role }) => role === "strip"),
      1,
    );
  },
  "two strips change places": (f) => {
    const { parts: held } = f.lays[0]!.root;
    const i = held.findIndex(({ role }) => role === "strip");
    [held[i], held[i + 1]] = [held[i + 1]!, held[i]!];
  },
  "a piece becomes another piece": (f) => {
    const leaf = find(piecesCut(f), () => true);
    leaf.piece = ((leaf.piece ?? 0) + 1) % f.pieces.length;
  },
  "a piece is not in the cut list": (f) => {
    find(piecesCut(f), () => true).piece = 99;
  },
  "a fixed piece is said to lie turned": (f) => {
    find(piecesCut(f), ({ piece }) => !f.pieces[piece ?? 0]!.turnable).turned = true;
  },
  "a turnable piece becomes fixed after it was turned": (f) => {
    const leaf = find(piecesCut(f), ({ turned }) => turned);
    f.pieces[leaf.piece ?? 0]!.turnable = false;
  },
  "waste is called a piece": (f) => {
    const waste = find(parts(f), ({ cause }) => cause === "strip-end");
    Object.assign(waste, { role: "piece", piece: 0, cause: null });
  },
  "a piece is called waste": (f) => {
    Object.assign(
      find(piecesCut(f), () => true),
      { role: "waste", piece: null, cause: "trimming" },
    );
  },
  "one piece more is wanted than cut": (f) => {
    f.pieces[0]!.count += 1;
  },
  "one piece less is wanted than cut": (f) => {
    f.pieces.at(-1)!.count -= 1;
  },
  "a full-width strip is narrower than the fabric": (f) => {
    find(f.pieces, ({ fullWidth }) => fullWidth).across -= 2032;
  },
  "a cut runs the wrong way": (f) => {
    const strip = find(strips(f), () => true);
    strip.cut = "across";
  },
  "a part is cut that should be whole": (f) => {
    find(piecesCut(f), () => true).cut = "along";
  },
  "a strip end is called a trimming": (f) => {
    find(parts(f), ({ cause }) => cause === "strip-end").cause = "trimming";
  },
  "a trimming is called a strip end": (f) => {
    find(parts(f), ({ cause }) => cause === "trimming").cause = "strip-end";
  },
  "the straightened end is not straightened": (f) => {
    find(parts(f), ({ role }) => role === "straightening").role = "waste";
  },
  "a length is not a whole number of ticks": (f) => {
    find(strips(f), () => true).along += 0.5;
  },
  "a strip has the number of another": (f) => {
    strips(f)[1]!.number = 1;
  },
  "strips cut differently are said to be alike": (f) => {
    const [first] = strips(f);
    find(strips(f), ({ kind }) => kind !== first!.kind).kind = first!.kind;
  },
  "strips cut alike are said to differ": (f) => {
    const twins = find(strips(f), ({ kind }) => strips(f).filter((other) => other.kind === kind).length > 1);
    twins.kind = 77;
  },
  "a cut is missing": (f) => {
    f.cuts.splice(3, 1);
  },
  "a cut is listed twice": (f) => {
    f.cuts.push({ ...f.cuts[3]!, number: f.cuts.length + 1 });
  },
  "a cut is off by a tick": (f) => {
    const cut = f.cuts[2]!;
    cut.y1 += 1;
    cut.y2 += 1;
  },
  "the ruler is set to the wrong size": (f) => {
    f.cuts[1]!.setting -= 2032;
  },
  "a subcut comes before its strip is cut off": (f) => {
    const i = f.cuts.findIndex(({ direction }) => direction === "along");
    const [cut] = f.cuts.splice(i, 1);
    f.cuts.unshift(cut!);
    f.cuts.forEach((one, index) => {
      one.number = index + 1;
    });
  },
  "two cuts have one number": (f) => {
    f.cuts[4]!.number = f.cuts[3]!.number;
  },
  "a step cuts a strip too many": (f) => {
    stripStep(f).count += 1;
  },
  "a step has the wrong width": (f) => {
    stripStep(f).width += 2032;
  },
  "a step has the wrong run": (f) => {
    stripStep(f).run -= 2032;
  },
  "a step cuts a strip that is not there": (f) => {
    stripStep(f).strips[0] = 999;
  },
  "a step subcuts one too many": (f) => {
    stripStep(f).subcuts[0]!.perStrip += 1;
  },
  "a step's total is wrong": (f) => {
    stripStep(f).subcuts[0]!.count += 1;
  },
  "a step subcuts another piece": (f) => {
    const subcut = stripStep(f).subcuts[0]!;
    subcut.piece = (subcut.piece + 1) % f.pieces.length;
  },
  "a step trims where nothing is to trim": (f) => {
    const { subcuts } = stripStep(f);
    find(subcuts, ({ how }) => how === "whole").how = "trimmed";
  },
  "a step is left out": (f) => {
    f.steps.pop();
  },
  "steps are out of order": (f) => {
    const [a, b] = f.steps.splice(-2);
    f.steps.push({ ...b!, number: a!.number }, { ...a!, number: b!.number });
  },
  "a step warns of nothing where it should": (f) => {
    f.steps.at(-1)!.flags = f.steps.at(-1)!.flags.length > 0 ? [] : ["longer-than-ruler"];
  },
  "the maker's ruler is shorter than the plan thinks": (_, plan) => {
    plan.rulerLength = 16 * 16256;
  },
  "waste does not add up": (f) => {
    f.waste.lines[3]!.area += 1;
  },
  "waste is moved from one cause to another": (f) => {
    f.waste.lines[4]!.area -= 100;
    f.waste.lines[3]!.area += 100;
  },
  "a cause of waste is missing": (f) => {
    f.waste.lines.splice(3, 1);
  },
  "a cause that nothing was lost to is left out": (f) => {
    f.waste.lines.splice(
      f.waste.lines.findIndex(({ area }) => area === 0),
      1,
    );
  },
  "more is bought than the waste knows": (f) => {
    f.waste.bought += f.width;
    f.waste.lines[5]!.area += f.width;
  },
  "an offcut to keep is forgotten": (f) => {
    f.leftovers.pop();
  },
  "an offcut to keep is bigger than it is": (f) => {
    f.leftovers[0]!.across += 2032;
  },
  "an offcut to keep is counted twice": (f) => {
    f.leftovers[0]!.count += 1;
  },
  "a scrap is kept": (f) => {
    find(parts(f), ({ cause, keep }) => cause !== null && !keep).keep = true;
  },
  "a step less of fabric is bought": (f) => {
    f.purchase!.length -= f.sold.step;
  },
  "a step more of fabric is bought": (f) => {
    f.purchase!.length += f.sold.step;
  },
  "the shop is asked for another amount": (f) => {
    f.purchase!.text = "1 yd";
  },
  "less is needed than said": (f) => {
    f.purchase!.needed -= 1;
  },
  "the price is wrong": (f) => {
    f.purchase!.cost = (f.purchase!.cost ?? 0) + 1;
  },
  "nothing is bought": (f) => {
    f.purchase = null;
  },
  "the fabric is wider than it is": (f) => {
    f.width += 2032;
  },
  "the fabric shrinks more than planned": (f) => {
    f.shrinkAlong += 10;
  },
  "the maker wants more to spare": (f) => {
    f.spare += f.sold.step;
  },
  "the length used is wrong": (f) => {
    f.bound.used -= 1;
  },
  "a shorter plan is known, and this one called proved": (f) => {
    f.bound.least -= 1;
    f.bound.lengthProven = true;
  },
  "the bound passes what was used": (f) => {
    f.bound.least += 1;
  },
  "a smaller purchase might do, and this one is called proved": (f) => {
    f.bound.least = 0;
    f.bound.lengthProven = false;
    f.bound.purchaseProven = true;
  },
  "the bound speaks of another style": (f) => {
    f.bound.style = "strips-3";
  },
  "the rule of thumb beats the least": (f) => {
    f.bound.ruleOfThumb = f.bound.least - 1;
  },
  "spare length is wrong": (f) => {
    f.sturdiness.spareLength += 1;
  },
  "the narrowest width is wider than the fabric": (f) => {
    f.sturdiness.narrowestUsable = f.usable + 1;
  },
  "two pieces share a letter": (f) => {
    f.pieces[1]!.letter = f.pieces[0]!.letter;
  },
  "two fabrics share a name": (f, plan) => {
    f.name = plan.fabrics[1]!.name;
  },
  "the plan is of another version": (_, plan) => {
    Object.assign(plan, { version: 2 });
  },
};

test("the plan that is corrupted below is sound", () => {
  expect(auditPlan(sound)).toEqual([]);
});

describe("the audit notices when", () => {
  test.each(Object.keys(CORRUPTIONS))("%s", (name) => {
    const plan = structuredClone(sound);
    CORRUPTIONS[name]!(plan.fabrics[0]!, plan);
    expect(plan).not.toEqual(sound);
    expect(auditPlan(plan).length).toBeGreaterThan(0);
  });
});

test("the audit notices a stacked subcut in a style that has none", async () => {
  // Three 4 x 3 in stacked twice beside 6 in pieces: only strips-3 gets both from one strip.
  const spec = cutListSpec([fabric("Sea", [piece("tall", 6, 6, 5), piece("low", 4, 3, 6)])], {
    style: "strips-3",
  });
  const { value } = await planCutLists({ spec, cutLists: listCuts(spec).value ?? [], solve: solveHere });
  expect(auditPlan(value!)).toEqual([]);
  expect(value!.fabrics[0]!.steps.some(({ subcuts }) => subcuts.some(({ how }) => how === "stacked"))).toBe(
    true,
  );
  const claimed = structuredClone(value!);
  claimed.style = "strips-2";
  claimed.fabrics[0]!.bound.style = "strips-2";
  expect(auditPlan(claimed).join()).toContain("stacked");
});

/** Spoils a plan with lengthwise bands. */
const IN_BANDS: Readonly<Record<string, (fabric: FabricPlan) => void>> = {
  "a lengthwise piece may only come from strips": (f) => {
    f.pieces[0]!.cut = "strips";
  },
  "a piece from a strip must lie lengthwise": (f) => {
    f.pieces[1]!.cut = "lengthwise";
  },
  "a band has no number": (f) => {
    find(parts(f), ({ role }) => role === "band").number = 0;
  },
  "a band is called a strip": (f) => {
    find(parts(f), ({ role }) => role === "band").role = "strip";
  },
  "strips beside the bands run over their edge": (f) => {
    find(parts(f), ({ role }) => role === "rest").across += 16;
  },
  "the step for the bands speaks of strips": (f) => {
    find(f.steps, ({ kind }) => kind === "bands").kind = "strips";
  },
  "a band too long for the ruler is not flagged": (f) => {
    find(f.steps, ({ kind }) => kind === "bands").flags = [];
  },
  "the strips beside are cut before the bands": (f) => {
    const i = f.cuts.findIndex(({ direction }) => direction === "along");
    const [cut] = f.cuts.splice(i, 1);
    f.cuts.splice(i + 3, 0, cut!);
    f.cuts.forEach((one, index) => {
      one.number = index + 1;
    });
  },
};

describe("with lengthwise bands the audit notices when", () => {
  test.each(Object.keys(IN_BANDS))("%s", async (name) => {
    const { spec, solve } = borders();
    const { value } = await planCutLists({ spec, cutLists: listCuts(spec).value ?? [], solve });
    expect(auditPlan(value!)).toEqual([]);
    IN_BANDS[name]!(value!.fabrics[0]!);
    expect(auditPlan(value!).length).toBeGreaterThan(0);
  });
});
