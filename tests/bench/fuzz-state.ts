import { auditPlan } from "../../src/audit/index.ts";
import type { EngineJob } from "../../src/engine/index.ts";
import { goOn, quickSolve, solveHere, USUAL_OPTIONS } from "../../src/index.ts";
import { planSpec } from "../../src/pipeline.ts";
import { planCutLists, type Solve } from "../../src/plan/index.ts";
import type { FabricPlan, Lay, Part, Plan } from "../../src/plan/types.ts";
import { beginWork, readSpecFile, type Spec, USUALLY_PLANNED } from "../../src/spec/index.ts";
import { Dice } from "../engine/exact/random-problems.ts";
import { allSaid } from "../support/in-words.ts";
import { randomFile } from "./random-files.ts";

/** Codes of answers that say truly that a mishap cannot be mended. */
const DECLINED = [
  "STOCK-SHORT",
  "PIECE-TOO-WIDE",
  "NONE-FOUND",
  "WORK-MEASURE-WRONG",
  "CANNOT-BE-CUT",
  "STRIP-TOO-SHORT",
];

/** Searches of at most so much counted work each; one that was done before is not done again. */
function within(effort: number): Solve {
  const held = (job: EngineJob): EngineJob => ({ ...job, limits: { ...job.limits, effort } });
  return quickSolve((jobs) => solveHere(jobs.map(held)));
}

/** What was said of one fabric, and what lies cut by it, counted from the diagram. */
interface Told {
  words: string[];
  fabric: string;
  /** By letter; null where the width or a spoiled bag makes it another sum. */
  cut: Map<string, number> | null;
  /** Length of the bolt that is left by the diagram; null where there is none or it is told otherwise. */
  left: number | null;
}

function strips(part: Part): Part[] {
  return part.number > 0 ? [part] : part.parts.flatMap(strips);
}

function piecesIn(part: Part): number[] {
  return part.parts.length === 0 ? (part.piece === null ? [] : [part.piece]) : part.parts.flatMap(piecesIn);
}

function tally(letters: readonly string[]): Map<string, number> {
  const counts = new Map<string, number>();
  for (const letter of letters) counts.set(letter, (counts.get(letter) ?? 0) + 1);
  return counts;
}

/** How a lay is told of; null for the one that is meant where none is named. */
function nameOf(fabric: FabricPlan, lay: Lay): string | null {
  const isRoll = (one: Lay) => one.source === "bolt" || one.name === "rest of the bolt";
  const rolls = fabric.lays.filter(isRoll);
  if (rolls.length === 1 && isRoll(lay)) return null;
  const same = fabric.lays.filter(({ name }) => name === lay.name);
  return same.length === 1 ? lay.name : `${lay.name} ${same.indexOf(lay) + 1}`;
}

const inches = (ticks: number): string => `${(ticks / 640).toFixed(7)} mm`;

/** A random stop in a plan, with a random mishap. */
function mishap(plan: Plan, dice: Dice): Told | null {
  const open = plan.fabrics.filter(({ lays }) => lays.some(({ root }) => strips(root).length > 0));
  if (open.length === 0) return null;
  const fabric = open[dice.between(0, open.length - 1)]!;
  const lays = fabric.lays.filter(({ root }) => strips(root).length > 0);
  const lay = lays[dice.between(0, lays.length - 1)]!;
  const name = nameOf(fabric, lay);
  const of = name === null ? "" : ` of ${name}`;
  const all = strips(lay.root);
  const last = dice.between(0, all.length);
  const words = last === 0 ? [] : [`cut to strip ${last}${of}`];
  const cut = all.slice(0, last).flatMap(piecesIn);
  const before = fabric.pieces.flatMap(({ letter }, i) =>
    Array.from({ length: fabric.done?.cut[i] ?? 0 }, () => letter),
  );
  const lettersOf = (pieces: readonly number[]) => pieces.map((piece) => fabric.pieces[piece]!.letter);
  const isBolt = lay.source === "bolt" || lay.name === "rest of the bolt";
  const straighten = lay.root.parts.find(({ role }) => role === "straightening")?.along ?? 0;
  const leftAfter = (number: number): number | null => {
    const top = lay.root.parts.filter((part) => strips(part).some((strip) => strip.number <= number));
    const used = top.reduce((sum, part) => sum + part.along, 0);
    return isBolt && lay.root.cut === "across" ? lay.along - straighten - used : null;
  };
  let left = leftAfter(last);
  let known: Map<string, number> | null = tally([...before, ...lettersOf(cut)]);
  const kind = dice.between(0, 7);
  if (kind === 1) {
    const spoiled = dice.between(1, all.length);
    words.push(`strip ${spoiled}${of} spoiled`);
    // Where nothing else is said, those before it count as cut.
    const through = last === 0 ? spoiled : last;
    const kept = all.filter(({ number }) => number <= through && number !== spoiled).flatMap(piecesIn);
    known = tally([...before, ...lettersOf(kept)]);
    left = leftAfter(Math.max(last, spoiled));
  } else if (kind === 2 && known.size > 0) {
    const [letter, count] = [...known][dice.between(0, known.size - 1)]!;
    const lost = dice.between(1, count);
    words.push(`${lost} of ${letter} spoiled`);
    known.set(letter, count - lost);
  } else if (kind === 3) {
    words.push(`${inches(fabric.usable - dice.between(1, 24) * 2032)} wide`);
    [known, left] = [null, null];
  } else if (kind === 4) {
    words.push(`${inches(fabric.usable + dice.between(1, 4) * 2032)} wide`);
    [known, left] = [null, null];
  } else if (kind === 5 && left !== null) {
    left = dice.between(0, left);
    words.push(left === 0 ? "nothing left" : `${inches(left)} left`);
    if (last === 0) left = Math.max(0, left - straighten);
  } else if (kind === 6) {
    words.push(`${inches(dice.between(2, 30) * 16256)} x ${inches(dice.between(2, 30) * 16256)} in hand`);
  } else if (kind === 7 && last < all.length) {
    words.push(`strip ${last + 1}${of} cut off`);
    left = leftAfter(last + 1);
  }
  if (words.length === 0) return null;
  words[0] = `${fabric.name}: ${words[0]}`;
  return { words, fabric: fabric.name, cut: known, left };
}

/** What is wrong with a plan that was gone on with. */
async function faultsAfter(
  before: Plan,
  after: Plan,
  told: Told,
  spec: Spec,
  solve: Solve,
): Promise<string[]> {
  const faults = auditPlan(JSON.parse(JSON.stringify(after))).map((fault) => `audit: ${fault}`);
  const old = before.fabrics.find(({ name }) => name === told.fabric)!;
  const now = after.fabrics.find(({ name }) => name === told.fabric)!;
  const cutOf = (letter: string): number => {
    const index = now.pieces.findIndex((piece) => piece.letter === letter);
    return now.done?.cut[index] ?? 0;
  };
  if (now.done === undefined) return [...faults, "nothing is told of what is done"];
  for (const { name } of before.fabrics)
    if (name !== told.fabric && told.cut !== null) {
      const [was, is] = [before, after].map((plan) => plan.fabrics.find((fabric) => fabric.name === name));
      if (JSON.stringify(was) !== JSON.stringify(is))
        faults.push(`${name} has changed, though nothing is said of it`);
    }
  // Pieces that lie cut are in their bag, or in another of their size, as far as any is wanted.
  const key = ({ across, along, turnable }: FabricPlan["pieces"][number]) => `${across} ${along} ${turnable}`;
  const plain = (pieces: FabricPlan["pieces"]) =>
    pieces.filter((piece) => !piece.fullWidth && piece.joined === undefined);
  if (told.cut !== null) {
    const lying = new Map<string, number>();
    for (const piece of plain(old.pieces))
      lying.set(key(piece), (lying.get(key(piece)) ?? 0) + (told.cut.get(piece.letter) ?? 0));
    for (const [size, count] of lying) {
      const alike = plain(now.pieces).filter((piece) => key(piece) === size);
      const wanted = alike.reduce((sum, piece) => sum + piece.count, 0);
      const used = alike.reduce((sum, piece) => sum + cutOf(piece.letter), 0);
      if (used !== Math.min(wanted, count))
        faults.push(`${count} of ${size} lie cut, ${used} of ${wanted} are told`);
    }
    for (const piece of old.pieces)
      if (
        !now.pieces.some(({ letter, along }) => letter === piece.letter && along === piece.along) &&
        piece.joined === undefined
      )
        faults.push(`bag ${piece.letter} has lost its letter`);
  }
  faults.push(...(await moreThanAfresh(now, told, spec, solve)));
  return faults;
}

/** Whether more is bought than when all that is still to cut is planned afresh. */
async function moreThanAfresh(now: FabricPlan, { left }: Told, spec: Spec, solve: Solve): Promise<string[]> {
  if (now.purchase === null || now.mix !== undefined) return [];
  const own = spec.fabrics.find(({ name }) => name === now.name)!;
  const selvages = now.width - 2 * now.selvage;
  const pieces = now.pieces
    .map((piece, i) => ({ ...piece, count: piece.count - (now.done?.cut[i] ?? 0) }))
    .filter(({ count }) => count > 0);
  if (selvages <= 0 || pieces.length === 0) return ["something is bought though nothing is to cut"];
  const { name, ruler, style, prefer, rulerLength, folded, keepFrom, joinFrom } = spec;
  const { value } = await planCutLists({
    spec: { ...{ name, ruler, style, prefer, rulerLength, folded, keepFrom, joinFrom }, assumptions: [] },
    cutLists: [{ fabric: { ...own, width: now.width, have: [], readyCut: [] }, pieces }],
    solve,
  });
  const fresh = value?.fabrics[0];
  if (fresh?.purchase == null) return [];
  const faults: string[] = [];
  if (now.purchase.length > fresh.purchase.length)
    faults.push(`${now.purchase.text} is bought, and afresh ${fresh.purchase.text} would do`);
  if (left !== null && fresh.bound.used <= left)
    faults.push(`${now.purchase.text} is bought, and ${left} is left where ${fresh.bound.used} would do`);
  return faults;
}

/** Stops the plan of a seed at a random strip with a random mishap, goes on, and perhaps once more; what goes wrong. */
export async function faultsOfState(seed: number, effort: number): Promise<string[]> {
  const dice = new Dice(Math.imul(seed, 374761393));
  const solve = within(effort);
  const quilt = { text: randomFile(seed), name: `random-${seed}.yaml` };
  const read = readSpecFile(quilt.text, quilt.name).value;
  if (read === null) return [];
  try {
    const first = await planSpec(read, USUAL_OPTIONS, solve);
    if (first.value === null) return [];
    let plan = first.value;
    let text = beginWork(USUALLY_PLANNED);
    const faults: string[] = [];
    for (let time = 1; time <= 2 && faults.length === 0; time++) {
      const told = mishap(plan, dice);
      if (told === null) break;
      const made = time === 1 ? { plan: JSON.parse(JSON.stringify(plan)) as Plan, folder: "out" } : null;
      const work = { text, name: "work.yaml" };
      const gone = await goOn({ quilt, work, words: told.words, again: true, made }, solve);
      if (gone.value === null) {
        const errors = gone.diagnostics.filter(({ severity }) => severity === "error");
        const codes = errors.map(({ code }) => code);
        if (codes.length === 0 || codes.some((code) => !DECLINED.includes(code)))
          faults.push(
            `${told.words.join("; ")}: ${codes.join()} ${allSaid(errors)
              .map(({ message }) => message)
              .join("; ")}`,
          );
        break;
      }
      const found = await faultsAfter(plan, gone.value.plan, told, read, solve);
      faults.push(...found.map((fault) => `${told.words.join("; ")}: ${fault}`));
      plan = gone.value.plan;
      text = gone.value.workText;
    }
    if (dice.chance(1, 4)) {
      const again = await goOn(
        { quilt, work: { text, name: "work.yaml" }, words: [], again: false, made: null },
        solve,
      );
      const same = (one: Plan | undefined) => JSON.stringify({ ...one, diagnostics: [] });
      if (same(again.value?.plan) !== same(plan)) faults.push("read back, the same work gives another plan");
    }
    return faults;
  } catch (error) {
    return [
      `crashed: ${error instanceof Error ? (error.stack ?? error.message).slice(0, 900) : String(error)}`,
    ];
  }
}

/** Counted work of one search. */
const EFFORT = 100;

/** Goes on with the plans of `count` seeds; tells of those that go wrong. 1 when any does. */
export async function fuzzState(count: number, first: number, log: (line: string) => void): Promise<number> {
  let wrong = 0;
  const start = performance.now();
  for (let seed = first; seed < first + count; seed++) {
    const faults = await faultsOfState(seed, EFFORT);
    if (faults.length === 0) continue;
    wrong += 1;
    log(`WRONG plan ${seed} gone on with: ${faults.join("; ")}`);
  }
  const seconds = Math.round((performance.now() - start) / 1000);
  log(`${count} random plans gone on with from seed ${first}: ${wrong} wrong, ${seconds} s`);
  return wrong > 0 ? 1 : 0;
}
