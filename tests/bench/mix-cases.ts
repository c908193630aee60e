import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { quickSolve, withoutEasing } from "../../src/choices/quick-solve.ts";
import { listCuts } from "../../src/cutlist/index.ts";
import { runJob } from "../../src/engine/index.ts";
import { planCutLists } from "../../src/plan/index.ts";
import type { CutListSpec, FabricSpec, FixedClothSpec } from "../../src/spec/types.ts";
import type { BenchCase, Outcome } from "./cases.ts";

interface MixInstance {
  name: string;
  step: string;
  bolt: { width: number; sold_by: number; price: number };
  own: { w: number; h: number; count: number; class: string }[];
  ready_cut: { w: number; h: number; price: number; limit: number; what: string }[];
  pieces: { w: number; h: number; count: number; turn: boolean; place?: "bands" }[];
}

interface MixOptimum {
  mix: { price: number; lower_bound: number; proven: boolean };
  own_area: Record<string, { value: number; proven: boolean } | boolean>;
}

/** Ticks to a step of the data, and the measure its bolts are sold by: an eighth of a yard, or 10 cm. */
const STEPS: Readonly<Record<string, { ticks: number; unit: "yd" | "m"; parts: number }>> = {
  "1/8 in": { ticks: 2032, unit: "yd", parts: 8 },
  "1/2 cm": { ticks: 3200, unit: "m", parts: 10 },
};

/** Own pieces, pieces sold ready cut and a bolt: the least price, its value in hundredths. */
export function mixCases(data: string): BenchCase[] {
  const read = <T>(name: string): T | null => {
    const file = join(data, "corpus", name);
    return existsSync(file) ? (JSON.parse(readFileSync(file, "utf8")) as T) : null;
  };
  const instances = read<{ instances: MixInstance[] }>("mixes.json")?.instances ?? [];
  const optima = read<{ results: Record<string, MixOptimum> }>("optimum2.json")?.results ?? {};
  return instances.map((instance): BenchCase => {
    const price = optima[instance.name]?.mix;
    return {
      ...{ set: "mixes", name: instance.name, style: "strips-2", variant: "least price" },
      problem: { style: "strips-2", items: [], roll: null, sheets: [] },
      known: {
        optimum: price?.proven === true ? price.price : null,
        reached: price?.price ?? null,
        floor: price?.lower_bound ?? 0,
        ruleOfThumb: null,
      },
      run: (limit) => solveMix(instance, limit),
    };
  });
}

async function solveMix(instance: MixInstance, limit: number): Promise<Outcome> {
  const spec = specOf(instance);
  const [list] = listCuts(spec).value ?? [];
  const solve = withoutEasing(quickSolve(async (jobs) => Promise.all(jobs.map(runJob))));
  const cutLists = list === undefined ? [] : [list];
  const { value } = await planCutLists({ spec, cutLists, limits: { effort: Math.min(limit, 2000) }, solve });
  const [one] = value?.fabrics ?? [];
  if (one === undefined) return { value: null, bound: null, proven: false };
  const cost = one.mix?.cost ?? one.purchase?.cost ?? 0;
  const proven = one.mix?.proven ?? one.bound.purchaseProven;
  return { value: cost, bound: proven ? cost : null, proven };
}

function specOf({ name, step, bolt, own, ready_cut, pieces }: MixInstance): CutListSpec {
  const { ticks, unit, parts } = STEPS[step]!;
  const cloth = (w: number, h: number) => ({
    ...{ across: w * ticks, along: h * ticks, fullWidth: false, trim: 0, currency: "$" },
    strip: w === bolt.width && h <= 40,
  });
  const fabric: FabricSpec = {
    ...{ name: "cloth", colour: "#888888", width: bolt.width * ticks, selvage: 0, note: "", at: null },
    print: { kind: "none", axis: "along" },
    ...{ shrinkAcross: 0, shrinkAlong: 0, straighten: 0, spare: 0, yardage: true },
    sold: { unit, step: bolt.sold_by * ticks, least: bolt.sold_by * ticks },
    price: { hundredths: bolt.price * parts, per: unit, currency: "$" },
    have: own.map(
      (piece, i): FixedClothSpec => ({
        ...{ ...cloth(piece.w, piece.h), name: `${piece.class} ${i}`, count: piece.count, price: null },
        strip: false,
      }),
    ),
    readyCut: ready_cut.map(
      (piece, i): FixedClothSpec => ({
        ...{ ...cloth(piece.w, piece.h), name: `${piece.what} ${i}`, count: piece.limit, price: piece.price },
        strip: false,
      }),
    ),
    pieces: pieces.map((piece) => ({
      ...{ label: "", across: piece.w * ticks, along: piece.h * ticks, fullWidth: false, count: piece.count },
      ...{ turn: piece.turn ? "free" : "fixed", cut: piece.place === "bands" ? "lengthwise" : "strips" },
      ...{ join: "no", note: "", at: null },
    })),
  };
  return {
    ...{ kind: "cut-list", name, assumptions: [], fabrics: [fabric] },
    ruler: unit === "yd" ? { unit: "in", mark: 2032 } : { unit: "cm", mark: 3200 },
    ...{
      style: "strips-2",
      prefer: "sparing",
      rulerLength: 400_000,
      folded: true,
      keepFrom: 30_000,
      joinFrom: 16 * 16_256,
    },
    defaultUnit: unit === "yd" ? "in" : "cm",
  } as CutListSpec;
}
