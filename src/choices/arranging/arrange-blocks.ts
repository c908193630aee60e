import { noMotifs, nothingToTurn } from "../../diagnostics/choices.ts";
import type { Diagnostic, Outcome } from "../../diagnostics/types.ts";
import { formatSize } from "../../length/index.ts";
import { listAll, type PlanOptions, planSpec } from "../../pipeline.ts";
import type { Solve } from "../../plan/index.ts";
import { exactToNumber, layOutQuilt, type Motifs, motifsOf, turnMotifs } from "../../quilt/index.ts";
import type { QuiltSpec, Spec } from "../../spec/index.ts";
import { quickSolve, withoutEasing } from "../quick-solve.ts";
import { faultAmong, type WhyNot } from "../why-not.ts";
import { type Nesting, nestingOf, nestsBetter, pictureOf, type Taken, takenBy } from "./arranged-figures.ts";
import { type MotifTurning, type MotifTurningKey, motifTurnings, suits } from "./motif-turnings.ts";
import {
  type Mirrors,
  mirrorsOf,
  turnBlocks,
  turnsAQuarter,
  unseenTurns,
  type WrittenGrid,
  writtenGrid,
  writtenRows,
} from "./turned-spec.ts";
import { type TurningKey, turnings } from "./turnings.ts";

/** The blocks of a quilt and their motifs turned one way, and what that takes. */
export interface Arrangement {
  /** As named on the command line, blocks first, then motifs; `file` for the file's own. */
  key: string;
  /** The turnings of blocks and of motifs; `file` where they lie as in the file. */
  blocks: TurningKey | "file";
  motifs: MotifTurningKey | "file";
  /** Others that come out the same to the eye, and so are not planned again. */
  same: Pick<Arrangement, "key" | "blocks" | "motifs">[];
  /** The rows of the setting as a file has them. */
  rows: string[];
  /** Drawings of the blocks whose motifs lie otherwise than in the file, as a file has them. */
  grids: WrittenGrid[];
  /** Null when the quilt cannot be set so; `why` then says why not. */
  planned: Taken | null;
  why: WhyNot | null;
}

/** The motifs of one block, for telling of them. */
interface TurnedMotifs {
  block: string;
  count: number;
  /** Finished, across x down. */
  size: string;
  /** Turned by quarters; else by halves only. */
  square: boolean;
}

/** Arrangements side by side. Plain data. */
export interface Arrangements {
  name: string;
  seed: number;
  currency: string;
  /** No two of them look the same. */
  arrangements: Arrangement[];
  motifs: TurnedMotifs[];
  /** All of them buy and cut the same. */
  alike: boolean;
  /** Blocks that no turn shows as their mirror image: in pairs they are only turned to face one another. */
  noMirror: string[];
}

/** Keys of the turnings wanted besides the file's own; null for all there are. */
export interface Wanted {
  /** Null for all, unless only motifs are asked for. */
  blocks: readonly string[] | null;
  /** Null for all, unless only blocks are asked for. */
  motifs: readonly string[] | null;
}

/** Told what is being planned, of how much. */
type Told = (done: number, of: number) => void;

/** One arrangement to be tried. */
interface Tried {
  key: string;
  blocks: Arrangement["blocks"];
  motifs: Arrangement["motifs"];
  asked: QuiltSpec;
  grids: WrittenGrid[];
  mirrors: Mirrors;
  /** What stands in the way before anything is laid out. */
  why: WhyNot | null;
}

/** A quilt with the motifs of its blocks turned. */
function withMotifs(
  spec: QuiltSpec,
  turning: MotifTurning,
  all: readonly Motifs[],
): Pick<Tried, "asked" | "grids" | "why"> {
  const grids: WrittenGrid[] = [];
  let suited = false;
  const blocks = spec.blocks.map((block) => {
    const motifs = all.find((each) => each.block === block.key);
    if (motifs === undefined || !suits(turning, motifs)) return block;
    suited = true;
    const turns = motifs.places.map((place) => turning.turn(place, motifs));
    if (turns.every((turn, i) => turn === motifs.places[i]?.turn)) return block;
    const turned = turnMotifs(block, spec, turns);
    grids.push(writtenGrid(turned, spec));
    return turned.block;
  });
  const why: WhyNot | null = suited
    ? null
    : { because: "motifs-not-square", blocks: all.map(({ name }) => name) };
  return { asked: { ...spec, blocks }, grids, why };
}

/** Everything that is to be tried: the file's own, its blocks turned, its motifs turned, or both. */
function tries(spec: QuiltSpec, seed: number, wanted: Wanted, all: readonly Motifs[]): Tried[] {
  const [blocks, motifs] = [turnings(seed), motifTurnings(seed)];
  const both = (wanted.blocks ?? []).length > 0 && (wanted.motifs ?? []).length > 0;
  const ofBlocks = blocks.filter(({ key }) =>
    wanted.blocks === null ? wanted.motifs === null : wanted.blocks.includes(key),
  );
  const ofMotifs = motifs.filter((turning) =>
    wanted.motifs === null
      ? wanted.blocks === null && all.some((each) => suits(turning, each))
      : wanted.motifs.includes(turning.key),
  );
  const own = { key: "file", blocks: "file", motifs: "file" } as const;
  const inFile: Tried = { ...own, asked: spec, grids: [], mirrors: mirrorsOf(spec), why: null };
  const turnedMotifs = ofMotifs.map((turning): Tried => {
    const turned = withMotifs(spec, turning, all);
    const key = `motifs ${turning.key}`;
    return {
      ...inFile,
      ...turned,
      key,
      motifs: turning.key,
      mirrors: mirrorsOf(turned.asked),
    };
  });
  const turnedBlocks = (from: Tried): Tried[] =>
    ofBlocks.map(({ key, turn }) => {
      const keys = from.motifs === "file" ? [key] : [key, from.key];
      const asked = turnBlocks(from.asked, { turn }, from.mirrors.of);
      return { ...from, key: keys.join(" + "), blocks: key, asked };
    });
  if (both) return [inFile, ...turnedMotifs.flatMap(turnedBlocks)];
  return [inFile, ...turnedBlocks(inFile), ...turnedMotifs];
}

/**
 * The arrangements of the blocks of a quilt and of their motifs, each planned: as the file has it; blocks all one way
 * in the four ways, left and right by turns, about the centre, in mirrored pairs, and by chance; motifs likewise, in
 * facing pairs, back to back and running round. What looks the same is planned and shown once.
 * @param asked.seed what the turnings by chance come from
 * @param asked.blocks, asked.motifs keys of those wanted besides the file's own; null for all. Turnings of blocks and of
 *   motifs are put together when both are asked for
 */
export async function arrangeBlocks(
  spec: Spec,
  { seed, ...wanted }: Wanted & { seed: number },
  options: PlanOptions,
  solve: Solve,
  told: Told = () => {},
): Promise<Outcome<Arrangements>> {
  if (spec.kind === "cut-list") return { value: null, diagnostics: [nothingToTurn()] };
  const quick = withoutEasing(quickSolve(solve));
  const motifs = spec.blocks.flatMap((block) => motifsOf(block, spec) ?? []);
  if (motifs.length === 0 && wanted.motifs !== null) {
    const { value, diagnostics } = layOutQuilt(spec);
    return { value: null, diagnostics: value === null ? diagnostics : [noMotifs()] };
  }
  const all = tries(spec, seed, wanted, motifs);
  const arrangements: Arrangement[] = [];
  const seen = new Map<string, Arrangement>();
  for (const [done, { key, blocks, motifs: turned, asked, grids, mirrors, why: before }] of all.entries()) {
    told(done, all.length);
    const laid = before === null ? layOutQuilt(asked).value : null;
    const picture = laid === null ? null : pictureOf(laid.top, spec);
    const like = picture === null ? undefined : seen.get(picture);
    if (like !== undefined) {
      like.same.push({ key, blocks, motifs: turned });
      continue;
    }
    const { value, diagnostics } =
      before === null ? await planSpec(asked, options, quick) : { value: null, diagnostics: [] };
    if (done === 0 && value === null) return { value: null, diagnostics };
    const best =
      value === null || laid === null
        ? null
        : await nestedBest(takenBy(value, laid.top), asked, options, quick);
    const planned = best?.taken ?? null;
    const why = planned === null ? (before ?? faultOf(asked, mirrors, diagnostics)) : null;
    const same: Arrangement["same"] = [];
    const rows = best?.rows ?? writtenRows(asked);
    const found = { key, blocks, motifs: turned, same, rows, grids, planned, why };
    arrangements.push(found);
    if (picture !== null && planned !== null) seen.set(picture, found);
  }
  const figures = arrangements.flatMap(({ planned }) =>
    planned === null ? [] : [JSON.stringify(planned.fabrics)],
  );
  const currency = spec.fabrics.find(({ price }) => price !== null)?.price?.currency ?? "";
  const noMirror = all.some(({ blocks }) => blocks === "pairs") ? (all[0]?.mirrors.none ?? []) : [];
  const said = motifs.map(({ name, places, across, down, square }): TurnedMotifs => {
    const [wide, high] = [across, down].map((size) => Math.round(exactToNumber(size)));
    return { block: name, count: places.length, size: formatSize(wide ?? 0, high ?? 0, spec.ruler), square };
  });
  const alike = new Set(figures).size === 1;
  return {
    value: { name: spec.name, seed, currency, arrangements, motifs: said, alike, noMirror },
    diagnostics: [],
  };
}

/**
 * Of the ways of laying blocks that the eye cannot tell apart, the one in which most seams nest, and then the one in
 * which a block is pressed in one way: what looks the same is told of alike, however its rows were written.
 */
async function nestedBest(
  taken: Taken,
  asked: QuiltSpec,
  options: PlanOptions,
  solve: Solve,
): Promise<{ taken: Taken; rows: string[] }> {
  const own = { taken, rows: writtenRows(asked) };
  if (taken.nesting === null || !nestsBetter({ unNested: 0, ways: 1 }, taken.nesting)) return own;
  const { unNested, ways } = taken.nesting;
  let best: { spec: QuiltSpec; nesting: Nesting } | null = null;
  for (const spec of unseenTurns(asked)) {
    const { value } = listAll(spec);
    const nesting = value === null ? null : nestingOf(value);
    if (nesting !== null && nestsBetter(nesting, best?.nesting ?? taken.nesting)) best = { spec, nesting };
  }
  if (best === null) return own;
  const laid = layOutQuilt(best.spec).value;
  const { value } = await planSpec(best.spec, options, solve);
  if (laid === null || value === null) return own;
  const nesting = { ...best.nesting, otherwise: { unNested, ways } };
  return { taken: { ...takenBy(value, laid.top), nesting }, rows: writtenRows(best.spec) };
}

function faultOf(asked: QuiltSpec, { oblong }: Mirrors, diagnostics: readonly Diagnostic[]): WhyNot {
  if (oblong.length > 0 && turnsAQuarter(asked)) return { because: "blocks-not-square", blocks: oblong };
  return faultAmong(diagnostics);
}
