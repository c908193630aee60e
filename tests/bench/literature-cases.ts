import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import type { CuttingStyle, PackingItem, PackingProblem, SheetStock } from "../../src/engine/types.ts";
import { areaFloor, type BenchCase, type KnownValues } from "./cases.ts";

interface KnownEntry {
  variant: string;
  value: number;
  proven: boolean;
  lower?: number;
}

interface Instance {
  name: string;
  width?: number;
  bin?: { w: number; h: number };
  stock?: { w: number; h: number; available: number | null; cost?: number }[];
  items: { w: number; h: number; demand: number }[];
  known?: KnownEntry[];
  bounds?: { variant: string; lower: number }[];
}

interface Reading {
  /** Base of the variant's word, without `-rot`. */
  base: string;
  /** Ending of the case's name; the plain strip has none. */
  suffix: string;
  style: CuttingStyle;
  /** Variants that allow at least what is asked here, whose proven values are floors. */
  wider: readonly string[];
  /** Variants that allow no more than what is asked here, whose values are reached. */
  narrower: readonly string[];
}

const STRIP_2: Reading = {
  base: "strip-2stage",
  suffix: "",
  style: "strips-2",
  wider: ["strip-2stage", "strip-3stage", "strip-guillotine", "strip-free"],
  narrower: ["strip-2stage"],
};

/**
 * The literature's three stages ask that all pieces of a section share its width; ours also trims a
 * narrower one, so its values are reached but may be beaten.
 */
const STRIP_3: Reading = {
  base: "strip-3stage",
  suffix: "",
  style: "strips-3",
  wider: ["strip-guillotine", "strip-free"],
  narrower: ["strip-3stage", "strip-2stage"],
};

const BINS: Reading = {
  base: "bins-2stage",
  suffix: "-bins",
  style: "strips-2",
  wider: ["bins-2stage"],
  narrower: ["bins-2stage"],
};

const STOCK: Reading = {
  base: "stock-2stage",
  suffix: "",
  style: "strips-2",
  wider: ["stock-2stage"],
  narrower: ["stock-2stage"],
};

/** Every case of the literature sets under `data`; empty when the folder is not there. */
export function literatureCases(data: string): BenchCase[] {
  const folder = join(data, "benchmarks");
  if (!existsSync(folder)) return [];
  const files = readdirSync(folder).filter((file) => file.endsWith(".json"));
  return files.sort().flatMap((file) => {
    const content = JSON.parse(readFileSync(join(folder, file), "utf8")) as {
      set: string;
      instances: Instance[];
    };
    return content.instances.flatMap((instance) => casesOf(content.set, instance));
  });
}

function casesOf(set: string, instance: Instance): BenchCase[] {
  const cases: BenchCase[] = [];
  for (const turnable of [false, true]) {
    const rot = turnable ? "-rot" : "";
    const asked = (base: string): boolean =>
      (instance.known ?? []).some((entry) => entry.variant === `${base}${rot}`);
    const add = (reading: Reading, problem: PackingProblem): void => {
      if (!everyPieceFits(problem)) return;
      cases.push({
        set,
        name: `${instance.name}${reading.suffix}${rot}`,
        style: reading.style,
        variant: `${reading.base}${rot}`,
        problem,
        known: knownValues(instance, reading, rot, problem),
      });
    };
    if (instance.width !== undefined) {
      add(STRIP_2, rollProblem(instance, instance.width, turnable, "strips-2"));
      if (asked("strip-3stage")) add(STRIP_3, rollProblem(instance, instance.width, turnable, "strips-3"));
    }
    if (instance.bin !== undefined && asked("bins-2stage")) {
      const { w, h } = instance.bin;
      add(BINS, sheetProblem(instance, [{ w, h, available: null, cost: 1 }], turnable));
    }
    if (instance.stock !== undefined && (asked("stock-2stage") || !turnable)) {
      add(STOCK, sheetProblem(instance, instance.stock, turnable));
    }
  }
  return cases;
}

function itemsOf(instance: Instance, turnable: boolean): PackingItem[] {
  return instance.items.map((item) => ({
    across: item.w,
    along: item.h,
    demand: item.demand,
    turnable,
    place: "strips",
  }));
}

function rollProblem(
  instance: Instance,
  width: number,
  turnable: boolean,
  style: CuttingStyle,
): PackingProblem {
  const roll = { width, available: null, costPerLength: 1 };
  return { style, items: itemsOf(instance, turnable), roll, sheets: [] };
}

function sheetProblem(
  instance: Instance,
  stock: NonNullable<Instance["stock"]>,
  turnable: boolean,
): PackingProblem {
  const sheets = stock.map(
    // Where no cost is given the area of a plate is what it costs.
    ({ w, h, available, cost = w * h }): SheetStock => ({
      ...{ across: w, along: h, available, cost },
      firstCut: "across",
    }),
  );
  return { style: "strips-2", items: itemsOf(instance, turnable), roll: null, sheets };
}

/** A few published sets hold pieces wider than their own plate; they have no plan and are left out. */
function everyPieceFits(problem: PackingProblem): boolean {
  const frames = [
    ...(problem.roll === null ? [] : [{ across: problem.roll.width, along: Number.POSITIVE_INFINITY }]),
    ...problem.sheets,
  ];
  return problem.items.every((item) =>
    frames.some(
      (frame) =>
        (item.across <= frame.across && item.along <= frame.along) ||
        (item.turnable && item.along <= frame.across && item.across <= frame.along),
    ),
  );
}

/**
 * Turning only shortens: what turned pieces need is a floor for fixed ones, and what fixed pieces reach
 * turned ones reach as well.
 */
function knownValues(
  instance: Instance,
  reading: Reading,
  rot: string,
  problem: PackingProblem,
): KnownValues {
  const entries = instance.known ?? [];
  const lowerOf = (entry: KnownEntry): number => (entry.proven ? entry.value : (entry.lower ?? 0));
  const isOneOf = (variant: string, bases: readonly string[], endings: readonly string[]): boolean =>
    bases.some((base) => endings.some((ending) => variant === `${base}${ending}`));
  const isFloor = (variant: string): boolean =>
    isOneOf(variant, reading.wider, rot === "" ? ["", "-rot"] : ["-rot"]);
  const isReached = (variant: string): boolean =>
    isOneOf(variant, reading.narrower, rot === "" ? [""] : ["", "-rot"]);
  const own = entries.find((entry) => entry.variant === `${reading.base}${rot}`);
  // The literature's three stages are not ours, so nothing there is an optimum of strips-3.
  const optimum = reading.style === "strips-2" && own?.proven === true ? own.value : null;
  const floors = [
    ...entries.filter((entry) => isFloor(entry.variant)).map(lowerOf),
    ...(instance.bounds ?? []).filter((bound) => isFloor(bound.variant)).map((bound) => bound.lower),
  ];
  const reached = entries.filter((entry) => isReached(entry.variant)).map((entry) => entry.value);
  return {
    optimum,
    reached: reached.length === 0 ? null : Math.min(...reached),
    floor: Math.max(areaFloor(problem), ...floors),
    ruleOfThumb: null,
  };
}
