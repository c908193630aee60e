import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import type { CuttingStyle, PackingItem, PackingProblem } from "../../src/engine/types.ts";
import { areaFloor, type BenchCase, type KnownValues } from "./cases.ts";

interface CorpusPiece {
  w: number;
  h: number;
  count: number;
  turn: boolean;
  place?: "bands";
}

interface CorpusInstance {
  name: string;
  kind?: string;
  width?: number;
  stock?: { w: number; h: number; available: number | null }[];
  pieces: CorpusPiece[];
}

interface StyleOptimum {
  value: number;
  lower_bound?: number;
  proven: boolean;
}

type Optimum = Partial<Record<CuttingStyle, StyleOptimum | undefined>> & {
  rule_of_thumb?: number | undefined;
};

type Optima = Record<string, Optimum>;

const STYLES: readonly CuttingStyle[] = ["strips-2", "strips-3"];

/** Sets of the corpus folder and the file each is kept in. */
const FILES = { bolts: "yardage.json", fixed: "fixed-pieces.json" } as const;

/** Every corpus case under `data`, both styles; empty when the folder is not there. */
export function corpusCases(data: string): BenchCase[] {
  const folder = join(data, "corpus");
  const optima = readJson<{ results: Optima }>(join(folder, "optimum.json"))?.results ?? {};
  const cases: BenchCase[] = [];
  for (const [set, file] of Object.entries(FILES)) {
    const instances = readJson<{ instances: CorpusInstance[] }>(join(folder, file))?.instances ?? [];
    for (const instance of instances) {
      for (const style of STYLES) {
        const problem = problemOf(instance, style);
        const known = knownValues(problem, optima[instance.name], style);
        cases.push({ set, name: instance.name, style, variant: style, problem, known });
      }
    }
  }
  return [...cases, ...bandCases(folder), ...joinedCases(folder)];
}

interface BandOptimum {
  "strips-2+bands": StyleOptimum;
  rule_of_thumb: number;
}

/** Long pieces cut lengthwise beside strips: a band may hold pieces of several widths. */
function bandCases(folder: string): BenchCase[] {
  const instances = readJson<{ instances: CorpusInstance[] }>(join(folder, "bands.json"))?.instances ?? [];
  const optima = readJson<{ results: Record<string, BandOptimum> }>(join(folder, "optimum2.json"))?.results;
  return instances.map((instance): BenchCase => {
    const problem = problemOf(instance, "strips-2");
    const entry = optima?.[instance.name];
    const known = { "strips-2": entry?.["strips-2+bands"], rule_of_thumb: entry?.rule_of_thumb };
    return {
      ...{ set: "bands", name: instance.name, style: "strips-2", variant: "strips-2 and bands", problem },
      known: knownValues(problem, entry === undefined ? undefined : known, "strips-2"),
    };
  });
}

interface JoinedInstance extends CorpusInstance {
  runs: {
    h: number;
    lengths: { length: number; count: number }[];
    join_loss: number;
    least_end: number;
  }[];
}

interface JoinedOptimum {
  "strips-2+joined": StyleOptimum;
  rule_of_thumb: number;
}

/** Borders and bindings joined from strips and from the ends of strips, one chain for each run. */
function joinedCases(folder: string): BenchCase[] {
  const instances = readJson<{ instances: JoinedInstance[] }>(join(folder, "joined.json"))?.instances ?? [];
  const optima = readJson<{ results: Record<string, JoinedOptimum> }>(join(folder, "optimum2.json"))?.results;
  return instances.map((instance): BenchCase => {
    const plain = problemOf(instance, "strips-2");
    const runs = instance.runs.map(({ h, lengths, join_loss, least_end }): PackingItem => {
      const length = lengths.reduce((sum, each) => sum + each.length * each.count, 0);
      const run = { length, loss: join_loss, leastEnd: least_end };
      return { across: instance.width!, along: h, demand: 1, turnable: false, place: "strips", run };
    });
    const problem = { ...plain, items: [...plain.items, ...runs] };
    const entry = optima?.[instance.name];
    const known = { "strips-2": entry?.["strips-2+joined"], rule_of_thumb: entry?.rule_of_thumb };
    return {
      ...{
        set: "joined",
        name: instance.name,
        style: "strips-2",
        variant: "strips-2 and joined runs",
        problem,
      },
      known: knownValues(problem, entry === undefined ? undefined : known, "strips-2"),
    };
  });
}

function readJson<T>(file: string): T | null {
  return existsSync(file) ? (JSON.parse(readFileSync(file, "utf8")) as T) : null;
}

function problemOf(instance: CorpusInstance, style: CuttingStyle): PackingProblem {
  const items = instance.pieces.map(
    (piece): PackingItem => ({
      across: piece.w,
      along: piece.h,
      demand: piece.count,
      turnable: piece.turn,
      place: piece.place ?? "strips",
    }),
  );
  if (instance.stock === undefined) {
    return { style, items, roll: { width: instance.width!, available: null, costPerLength: 1 }, sheets: [] };
  }
  const byArea = instance.kind === "scraps";
  const sheets = instance.stock.map((piece) => ({
    across: piece.w,
    along: piece.h,
    available: piece.available,
    cost: byArea ? piece.w * piece.h : 1,
    firstCut: "either" as const,
  }));
  return { style, items, roll: null, sheets };
}

/** Stacking only adds ways of cutting, so the strips-2 value can be reached in strips-3 too. */
function knownValues(problem: PackingProblem, entry: Optimum | undefined, style: CuttingStyle): KnownValues {
  const own = entry?.[style];
  const reached = own?.value ?? entry?.["strips-2"]?.value ?? null;
  const optimum = own?.proven === true ? own.value : null;
  return {
    optimum,
    reached,
    floor: Math.max(areaFloor(problem), optimum ?? own?.lower_bound ?? 0),
    ruleOfThumb: entry?.rule_of_thumb ?? null,
  };
}
