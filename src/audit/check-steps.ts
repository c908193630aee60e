import type { CuttingStep, FabricPlan, Lay, Part, Plan, StepFlag } from "../plan/types.ts";
import { isStripOrBand, leaves, piecesIn, walk } from "./walk.ts";

/** Parts narrower than this under the ruler are flagged: 1 in. Common practice, no source. */
const NARROW = 16256;

/** The written steps say what the parts say: every strip in one step, its sizes, counts and warnings. */
export function checkSteps(fabric: FabricPlan, plan: Plan): string[] {
  const { lays, steps, pieces, done } = fabric;
  const faults: string[] = [];
  steps.forEach(({ number }, index) => {
    if (number !== index + 1) faults.push(`step ${number} is the ${index + 1}. in the list`);
  });
  lays.forEach((lay, index) => {
    const own = steps.filter((step) => step.lay === index);
    faults.push(...checkStraightening(lay, own), ...checkStrips(lay, own, plan));
  });
  steps.forEach((step, index) => {
    if (lays[step.lay] === undefined) faults.push(`step ${step.number} speaks of no cloth`);
    const before = steps[index - 1];
    if (before === undefined) return;
    const later =
      step.lay > before.lay || (step.lay === before.lay && (step.strips[0] ?? 0) > (before.strips[0] ?? 0));
    if (!later) faults.push(`step ${step.number} comes too late`);
  });
  pieces.forEach(({ letter, count }, index) => {
    const subcuts = steps.flatMap((step) => step.subcuts).filter(({ piece }) => piece === index);
    const told = subcuts.reduce((sum, subcut) => sum + subcut.count, 0);
    const still = count - (done?.cut[index] ?? 0);
    if (told !== still) faults.push(`the steps cut ${told} of ${letter}, wanted ${still}`);
  });
  return faults;
}

function checkStraightening({ root }: Lay, steps: readonly CuttingStep[]): string[] {
  const part = root.parts.find(({ role }) => role === "straightening");
  const told = steps.filter(({ kind }) => kind === "straighten");
  if (told.length !== (part === undefined ? 0 : 1)) return ["the straightened end is not told of once"];
  const [step] = told;
  if (part === undefined || step === undefined) return [];
  const [width, run] = root.cut === "along" ? [part.across, part.along] : [part.along, part.across];
  const right = step.width === width && step.run === run && step.count === 1 && step.strips.length === 0;
  return right && step === steps[0] ? [] : ["the step that straightens the end is wrong"];
}

function checkStrips({ root }: Lay, steps: readonly CuttingStep[], plan: Plan): string[] {
  const faults: string[] = [];
  const strips = new Map<number, Part>();
  for (const { part } of walk(root)) if (isStripOrBand(part)) strips.set(part.number, part);
  const told = new Set<number>();
  for (const step of steps) {
    if (step.kind === "straighten") continue;
    const where = `step ${step.number}`;
    if (step.count !== step.strips.length || step.count === 0)
      faults.push(`${where} does not count its strips`);
    for (const number of step.strips) {
      const strip = strips.get(number);
      if (strip === undefined) faults.push(`${where} cuts strip ${number}, which is not there`);
      else faults.push(...checkStrip(strip, step, plan).map((fault) => `${where}: ${fault}`));
      if (told.has(number)) faults.push(`${where} cuts strip ${number} again`);
      told.add(number);
    }
    if (step.subcuts.some(({ count, perStrip }) => count !== perStrip * step.count))
      faults.push(`${where}: its totals are not its strips times what each holds`);
  }
  if (told.size !== strips.size) faults.push(`${told.size} of ${strips.size} strips are told of`);
  return faults;
}

function checkStrip(strip: Part, step: CuttingStep, plan: Plan): string[] {
  const faults: string[] = [];
  // A strip's subcuts go square to its run.
  const lying = strip.cut === "along";
  const width = lying ? strip.along : strip.across;
  const run = lying ? strip.across : strip.along;
  if (step.width !== width || step.run !== run) faults.push(`its strips are ${width} x ${run}`);
  if ((step.kind === "bands") !== (strip.role === "band")) faults.push("it takes a strip for a band");
  const held = new Map<string, number>();
  for (const segment of strip.parts) {
    const rows = segment.parts.filter((part) => part.cause === null).length;
    const how = segment.parts.length === 0 ? "whole" : rows > 1 ? "stacked" : "trimmed";
    const segmentAcross = lying ? segment.across : segment.along;
    for (const leaf of leaves(segment)) {
      if (leaf.piece === null) continue;
      const key = [
        leaf.piece,
        leaf.turned,
        leaf.across,
        leaf.along,
        how,
        segmentAcross,
        leaf.shapes?.length,
      ].join(" ");
      held.set(key, (held.get(key) ?? 0) + piecesIn(leaf));
    }
  }
  for (const { piece, turned, across, along, how, segmentAcross, perStrip, run } of step.subcuts) {
    const key = [piece, turned, across, along, how, segmentAcross, run].join(" ");
    if (held.get(key) !== perStrip)
      faults.push(`strip ${strip.number} does not hold ${perStrip} of piece ${piece} so`);
    held.delete(key);
  }
  if (held.size > 0) faults.push(`strip ${strip.number} holds pieces it does not tell of`);
  const flags = flagsOf(strip, width, run, plan);
  if (flags.join() !== [...step.flags].sort().join())
    faults.push(`its warnings should be: ${flags.join() || "none"}`);
  return faults;
}

/** The warnings a strip calls for, in alphabetical order. */
function flagsOf(strip: Part, width: number, run: number, { rulerLength, folded }: Plan): StepFlag[] {
  const reach = folded && strip.role === "strip" ? 2 * rulerLength : rulerLength;
  const parts = [...walk(strip)].map(({ part }) => part);
  const narrow =
    width < NARROW ||
    parts.some((part) => part !== strip && part.cause === null && Math.min(part.across, part.along) < NARROW);
  const cuts = parts.flatMap((part) =>
    part.parts.length > 1 ? [part.cut === "across" ? part.across : part.along] : [],
  );
  const flags: StepFlag[] = [];
  if (cuts.some((length) => length > rulerLength)) flags.push("long-subcut");
  if (run > 2 * reach) flags.push("longer-than-ruler");
  if (narrow) flags.push("narrow-segment");
  if (run > reach && run <= 2 * reach) flags.push("refold");
  if (width > rulerLength) flags.push("wide-strip");
  return flags;
}
