import { type KitList, letterClass, piecesOfKit, waysForClass } from "../../cutlist/index.ts";
import type { Joining } from "../../cutlist/joins.ts";
import type { CutPiece } from "../../cutlist/types.ts";
import type { Diagnostic, Outcome } from "../../diagnostics/types.ts";
import {
  assertSewn,
  assertSound,
  assumedFor,
  clothFor,
  type Listed,
  listAll,
  type PlanOptions,
  planListed,
  searchWith,
  settle,
} from "../../pipeline.ts";
import { planCutLists, type Solve } from "../../plan/index.ts";
import type { KitSort } from "../../plan/kit-types.ts";
import type { Plan } from "../../plan/types.ts";
import { exactToNumber } from "../../quilt/index.ts";
import { onBoltsOf, type QuiltSpec } from "../../spec/index.ts";
import { usableWidth } from "../../stock/index.ts";
import { quickSolve, withoutEasing } from "../quick-solve.ts";
import { inColourway } from "../recolour.ts";
import { saySize, settled } from "../sizes/several-sizes.ts";
import type { KitsAsked } from "./read-kits.ts";

/** Kits that are alike, laid out and listed, with the letters that the bags of the class have. */
interface SortOfKit {
  sort: KitSort;
  spec: QuiltSpec;
  listed: Listed;
}

/** A class of several sorts of kits, cut together. */
export interface ClassPlanned {
  /** Everything that is cut; it tells no sewing, which each sort of kit has for itself. */
  batch: Plan;
  sorts: SortOfKit[];
}

/** What would be told of every sort of kit again, or of fabrics that another sort uses. */
const TOLD_OF_ONE = new Set(["FABRIC-UNUSED", "KITS-IN-FILE"]);

/**
 * Plans kits of several sizes and colourways as one purchase: pieces that are cut alike lie in one bag, whoever they
 * are for, and all is cut from the least fabric for the whole class.
 */
export async function planClass(
  spec: QuiltSpec,
  asked: readonly KitsAsked[],
  options: PlanOptions,
  solve: Solve,
): Promise<Outcome<ClassPlanned>> {
  const { value: sorts, diagnostics } = sortsOfKits(spec, asked, options);
  if (sorts === null) return { value: null, diagnostics };
  const fabrics = sorts[0]?.spec.fabrics ?? [];
  const used = fabrics.filter(({ name }) => sorts.some(({ listed }) => listOf(listed, name) !== null));
  const each = used.map(({ name }): KitList[] =>
    sorts.map(({ sort, listed }) => ({ kits: sort.kits, cutList: listOf(listed, name) })),
  );
  const cutLists = used.map((fabric, i) => {
    const [way] = waysForClass(each[i] ?? [], usableWidth(fabric), spec).ways;
    if (way === undefined) throw new Error("a fabric of the class that nobody cuts");
    return way.cutList;
  });
  const kits = sorts.reduce((sum, { sort }) => sum + sort.kits, 0);
  const [main] = sorts;
  const planned = await planCutLists({
    spec: {
      ...settle(spec, { ...options, kits }),
      assumptions: assumedFor(main?.spec ?? spec, main?.listed.making ?? null),
    },
    cutLists,
    sorts: each,
    ...clothFor(cutLists, options),
    ...searchWith(cutLists, options, solve),
    diagnostics: toldOnce(diagnostics),
  });
  if (planned.value === null) return { value: null, diagnostics: planned.diagnostics };
  const batch: Plan = { ...planned.value, sorts: sorts.map(({ sort }) => sort) };
  assertSound(batch);
  return { value: { batch, sorts }, diagnostics: planned.diagnostics };
}

/** Every sort of kit laid out in its size and colourway and listed, bags of pieces cut alike under one letter. */
function sortsOfKits(
  spec: QuiltSpec,
  asked: readonly KitsAsked[],
  options: PlanOptions,
): Outcome<SortOfKit[]> {
  const diagnostics: Diagnostic[] = [];
  const sized = asked.map(({ kits, size, colourway }) => {
    const way = spec.class.colourways.find(({ name }) => name === colourway);
    const own = way === undefined ? spec : inColourway(spec, way);
    const fit = size === null ? own : settled(own, size, diagnostics)?.spec;
    return { kits, colourway, heading: size?.asked ?? "", spec: fit };
  });
  if (diagnostics.some(({ severity }) => severity === "error")) return { value: null, diagnostics };
  const first = sized.map((one) => {
    const onBolts = onBoltsOf(options, one.spec ?? spec);
    const listed = listAll(onBolts);
    diagnostics.push(...listed.diagnostics.filter(({ code }) => !TOLD_OF_ONE.has(code)));
    return { ...one, spec: onBolts, listed: listed.value };
  });
  if (first.some(({ listed }) => listed === null)) return { value: null, diagnostics: toldOnce(diagnostics) };
  const known = letterClass(
    first.map(({ kits, listed }) => ({ kits, cutLists: listed?.cutLists ?? [] })),
    first[0]?.spec.fabrics ?? [],
    usableWidth,
  );
  const value = first.map(({ kits, heading, colourway, spec: own }, i): SortOfKit => {
    const listed = listAll(own, known[i] ?? null).value;
    if (listed === null || listed.top === null) throw new Error("a kit that was listed is not listed again");
    const { across, down } = listed.top;
    const finished = saySize(exactToNumber(across), exactToNumber(down), own);
    return { sort: { kits, heading, finished, colourway }, spec: own, listed };
  });
  return { value, diagnostics };
}

const listOf = ({ cutLists }: Listed, name: string) =>
  cutLists.find(({ fabric }) => fabric.name === name) ?? null;

/** What several sorts of kits have in common is told once. */
function toldOnce(diagnostics: readonly Diagnostic[]): Diagnostic[] {
  return [...new Map(diagnostics.map((found) => [JSON.stringify(found), found])).values()];
}

/** One kit of each sort: planned by itself, as it would be bought, and as it is dealt out of what was cut together. */
export interface KitPlanned {
  sort: KitSort;
  spec: QuiltSpec;
  alone: Plan;
  dealt: Plan;
}

/** What one kit of each sort holds and would be without the others. */
export async function planKits(
  { batch, sorts }: ClassPlanned,
  options: PlanOptions,
  solve: Solve,
): Promise<Outcome<KitPlanned[]>> {
  const quick = withoutEasing(quickSolve(solve));
  const found: KitPlanned[] = [];
  for (const [i, { sort, spec, listed }] of sorts.entries()) {
    // Each maker for herself would have to buy: the cloth to hand is the teacher's.
    const own = { ...options, kits: 1, toHand: [], notBought: [] };
    const bought = boughtAnew(listed);
    const outcome = await planListed(spec, bought, [], own, quick);
    if (outcome.value === null) return { value: null, diagnostics: outcome.diagnostics };
    const alone = outcome.value;
    const fabrics = alone.fabrics.map((fabric) => ({
      ...fabric,
      pieces: kitPieces(fabric.name, batch, listed, i, spec),
    }));
    const { making } = listed;
    const dealt = { ...alone, fabrics, ...(making === null ? {} : { making }) };
    assertSewn(dealt);
    found.push({ sort, spec, alone, dealt });
  }
  return { value: found, diagnostics: [] };
}

/** The lists of a kit without what is to hand, wherever the fabric can be bought. */
function boughtAnew(listed: Listed): Listed {
  const cutLists = listed.cutLists.map(({ fabric, pieces }) => ({
    fabric: fabric.yardage || fabric.readyCut.length > 0 ? { ...fabric, have: [] } : fabric,
    pieces,
  }));
  return { ...listed, cutLists };
}

function kitPieces(
  name: string,
  { fabrics }: Plan,
  listed: Listed,
  sort: number,
  joining: Joining,
): CutPiece[] {
  const list = listOf(listed, name);
  const cut = fabrics.find((fabric) => fabric.name === name);
  if (list === null || cut === undefined) return [];
  return piecesOfKit(cut.pieces, list, sort, usableWidth(list.fabric), joining);
}
